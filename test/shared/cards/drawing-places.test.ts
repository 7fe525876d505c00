/** Where the parts of the load's drawings stand, in mm on paper, by arithmetic: views of a bay, names in boxes, and steps of loading. */
import { describe, expect, it } from 'vitest'
import { bayDrawings } from '../../../shared/cards/bay-drawing.ts'
import type { BayDrawingInput } from '../../../shared/cards/bay-drawing.ts'
import type { Drawing, Shape } from '../../../shared/cards/index.ts'
import { stepDrawings } from '../../../shared/cards/step-drawing.ts'
import type { StepDrawingInput } from '../../../shared/cards/step-drawing.ts'
import type { Bay } from '../../../shared/document/index.ts'
import { createText } from '../../../shared/text/index.ts'
import { cardsTrip } from '../../support/cards-plan.ts'

type Vec3 = readonly [number, number, number]
const text = createText('en', 'metric')
const near = (value: number) => expect.closeTo(value, 6)
const unit = (unitId: string, atMm: Vec3, sizeMm: Vec3) => ({
  unitId,
  bayId: 'load',
  atMm,
  sizeMm,
  edges: [0, 1, 2] as const,
})
type Unit = ReturnType<typeof unit>
const bayOf = (over: Partial<Bay> = {}): Bay => {
  const [load] = cardsTrip().vehicle.bays
  if (load === undefined) throw new Error('the trip has a bay')
  return { ...load, sizeMm: [1000, 800, 600], obstacles: [], slopes: [], openings: [], ...over }
}
/** Units of the name `u7` bear the number 7. */
const named = (word: string) =>
  ({ number: (id: string) => Number(id.slice(1)), unit: (id: string) => `${word} ${id}` }) as never

const labels = (shapes: readonly Shape[]) => shapes.filter((shape) => shape.kind === 'label')
const rects = (shapes: readonly Shape[]) => shapes.filter((shape) => shape.kind === 'rect')
const lines = (shapes: readonly Shape[]) => shapes.filter((shape) => shape.kind === 'line')
const shapesOf = (drawings: readonly Drawing[]) => drawings.flatMap(({ shapes }) => shapes)

describe('the views of a bay', () => {
  const draw = (placements: readonly Unit[], over: Partial<BayDrawingInput> = {}, bay: Partial<Bay> = {}) =>
    bayDrawings({ bay: bayOf(bay), placements, names: named('box'), text, widthMm: 180, outlines: [], ...over })
  const floor = unit('u1', [0, 0, 0], [400, 300, 200])
  // Two views in 180 mm: (180 - 4) / 2 - 10 = 78 mm of drawing each, for 1000 mm of bay.
  const SCALE = 0.078

  it('stand side by side under their titles, the front named at the right below', () => {
    const [drawing] = draw([floor])
    const found = labels(drawing?.shapes ?? [])
    const title = { kind: 'label', heightMm: 3.1, anchor: 'start', bold: true }
    const front = { kind: 'label', heightMm: 2.7, anchor: 'end', text: text.t('cards.view.front') }
    // The first view begins at 5 mm, the second at 5 + 88 + 4; both below 4.2 mm of title and 5 of edge.
    expect(found.filter((label) => label.heightMm === 3.1)).toEqual([
      { ...title, text: text.t('cards.view.plan'), atMm: [near(5), near(3.8)] },
      { ...title, text: text.t('cards.view.side'), atMm: [near(97), near(3.8)] },
    ])
    // From above 800 mm of width are 62.4 mm, from the side 600 mm of height 46.8.
    expect(found.filter((label) => label.heightMm === 2.7)).toEqual([
      { ...front, atMm: [near(83), near(9.2 + 62.4 + 3.9)] },
      { ...front, atMm: [near(175), near(9.2 + 46.8 + 3.9)] },
    ])
    expect([drawing?.widthMm, drawing?.heightMm]).toEqual([180, near(4.2 + 10 + 62.4)])
    expect(drawing?.description).toBe(text.t('cards.drawing.bay', { bay: 'Load bay', what: '1 box u1' }))
  })

  it('go on in a row below where a third finds no room, as high as that row needs', () => {
    const drawings = draw([floor, unit('u2', [0, 0, 200], [300, 300, 200])])
    expect(drawings.map(({ heightMm }) => heightMm)).toEqual([near(76.6), near(4.2 + 10 + 46.8)])
    expect(drawings.map(({ shapes }) => labels(shapes).filter(({ heightMm }) => heightMm === 3.1).length)).toEqual([
      2, 1,
    ])
  })

  it('of a small bay take the room of their title, three in a row', () => {
    const drawings = draw(
      [unit('u1', [0, 0, 0], [100, 100, 50]), unit('u2', [0, 0, 50], [100, 100, 50])],
      {},
      { sizeMm: [200, 200, 200] },
    )
    // 200 mm at one to eight are 25; a title wants 34, edges 10, and 4 between.
    const titles = labels(shapesOf(drawings)).filter(({ heightMm }) => heightMm === 3.1)
    expect(titles.map(({ atMm }) => atMm[0])).toEqual([5, near(53), near(101)])
    expect(drawings).toHaveLength(1)
  })

  it('stand one above the other on a phone and for a long bay, unless all are wanted in a row', () => {
    const rows = (over: Partial<BayDrawingInput>, bay: Partial<Bay> = {}) => draw([floor], over, bay).length
    expect([rows({ widthMm: 119 }), rows({ widthMm: 120 })]).toEqual([2, 1])
    // Long is more than 2.2 times as long as wide and high.
    const long: Partial<Bay> = { sizeMm: [1761, 800, 600] }
    expect([rows({}, long), rows({}, { sizeMm: [1760, 800, 600] })]).toEqual([2, 1])
    expect(rows({ compact: true }, long)).toBe(1)
    expect(rows({ compact: true, widthMm: 86 })).toBe(1)
  })

  it('draw what is farther first, so that the nearest covers it', () => {
    const order = (...units: readonly Unit[]) =>
      rects(draw(units)[0]?.shapes ?? [])
        .filter(({ fill, atMm }) => fill === 'paper' && atMm[0] >= 97)
        .map(({ atMm }) => Math.round((atMm[0] - 97) / SCALE))
    // From the right: the unit whose right wall is leftmost is farthest.
    const far = unit('u1', [100, 0, 0], [200, 200, 200])
    const middle = unit('u2', [200, 0, 0], [200, 400, 200])
    const close = unit('u3', [300, 700, 0], [200, 100, 200])
    expect(order(close, far, middle)).toEqual([100, 200, 300])
    expect(order(middle, close, far)).toEqual([100, 200, 300])
  })

  it('draw the units of a layer with a plain outline and the made bed in dashes, its name in its corner', () => {
    const outlines = [{ label: 'bed', atMm: [0, 100, 300], sizeMm: [1000, 500, 100] }] as const
    const shapes = draw([floor], { outlines })[0]?.shapes ?? []
    expect(rects(shapes).slice(0, 2)).toEqual([
      { kind: 'rect', atMm: [5, 9.2], sizeMm: [near(31.2), near(23.4)], weightMm: 0.3, fill: 'paper' },
      {
        kind: 'rect',
        atMm: [5, near(9.2 + 7.8)],
        sizeMm: [near(78), near(39)],
        weightMm: 0.45,
        fill: 'none',
        dashMm: [3, 1.2],
      },
    ])
    expect(labels(shapes).find((label) => label.text === 'bed')).toEqual({
      kind: 'label',
      atMm: [near(5 + 78 - 1), near(9.2 + 7.8 + 2.9 + 0.4)],
      text: 'bed',
      heightMm: 2.9,
      anchor: 'end',
      halo: true,
    })
  })

  it('draw thin dashes for what lies below and for walls that lean', () => {
    const slopes = [{ label: 'glass', face: 'x+', insetFloorMm: 0, insetTopMm: 100 }] as const
    const [first] = draw([floor, unit('u2', [0, 0, 200], [300, 300, 200])], {}, { slopes: [...slopes] })
    expect(rects(first?.shapes ?? []).filter(({ dashMm }) => dashMm !== undefined)).toEqual([
      {
        kind: 'rect',
        atMm: [97, 9.2],
        sizeMm: [near(31.2), near(23.4)],
        weightMm: 0.15,
        fill: 'none',
        dashMm: [1.2, 0.9],
      },
    ])
    const leaning = lines(first?.shapes ?? []).filter(({ dashMm }) => dashMm !== undefined)
    expect(leaning[0]).toEqual({
      kind: 'line',
      fromMm: [near(5 + 900 * SCALE), 9.2],
      toMm: [near(5 + 900 * SCALE), near(9.2 + 62.4)],
      weightMm: 0.2,
      dashMm: [2, 0.8],
    })
  })

  describe('number and name in a box', () => {
    /** Of a unit of this size in the corner, as seen from above. */
    const words = (lengthMm: number, widthMm: number, word = 'box', id = 'u1') =>
      labels(draw([unit(id, [0, 0, 0], [lengthMm, widthMm, 100])], { names: named(word) })[0]?.shapes ?? [])
        .filter(({ atMm, anchor }) => anchor === 'middle' && atMm[0] < 90)
        .map(({ kind: _kind, anchor: _anchor, ...rest }) => rest)

    it('stand in its middle, the name below the number', () => {
      // 31.2 by 23.4 mm: the number is 6 mm high at most; its capitals 4.5, and a line of the name 2.9 x 1.15 = 3.335.
      // Both together are 7.835 high: the number's foot lies 4.5 - 3.9175 = 0.5825 below the middle.
      expect(words(400, 300)).toEqual([
        { text: '1', heightMm: 6, bold: true, atMm: [near(20.6), near(20.9 + 0.5825)] },
        { text: 'box u1', heightMm: 2.9, bold: false, atMm: [near(20.6), near(20.9 + 3.9175)] },
      ])
    })

    it('are turned in a box that is tall and narrow', () => {
      // 7.8 by 23.4 mm: the number is 0.45 of 7.8 high, 3.51; one line of the name finds room beside it.
      const foot = 3.51 * 0.75 - (3.51 * 0.75 + 3.335) / 2
      expect(words(100, 300)).toEqual([
        { text: '1', heightMm: near(3.51), bold: true, atMm: [near(8.9 + foot), near(20.9)], turnDeg: -90 },
        { text: 'box u1', heightMm: 2.9, bold: false, atMm: [near(8.9 + foot + 3.335), near(20.9)], turnDeg: -90 },
      ])
      // 15.6 mm wide is narrow, 16.4 is not; and tall is more than 1.6 times as high as wide.
      const turned = (lengthMm: number, widthMm: number) => words(lengthMm, widthMm)[0]?.turnDeg
      expect([turned(200, 400), turned(210, 400), turned(200, 321), turned(200, 319)]).toEqual([
        -90,
        undefined,
        -90,
        undefined,
      ])
    })

    it('are fewer where there is no room: the number alone, then nothing', () => {
      // 7.8 by 4.68 mm: the number shrinks to 2.2 at the least, and 1.9 mm are left for a name of 3.3.
      expect(words(100, 60)).toEqual([
        { text: '1', heightMm: 2.2, bold: true, atMm: [near(8.9), near(9.2 + 2.34 + 0.825)] },
      ])
      // 2.2 mm of paper are 28.2 mm of bay.
      expect([words(100, 29).length, words(100, 28).length, words(29, 100).length, words(28, 100).length]).toEqual([
        1, 0, 1, 0,
      ])
    })

    it('break the name into three lines at most, and leave it out where too little of it could be read', () => {
      // 31.2 mm less 1.4 hold nine letters of 1.595 mm beside an ellipsis and more.
      const long = words(400, 300, 'one long word after another and so on for ever without an end')
      expect(long).toHaveLength(4)
      expect(long.at(-1)?.text.endsWith('…')).toBe(true)
      const steps = long.slice(1).map(({ atMm }) => atMm[1])
      expect(steps.map((y, index) => y - (steps[index - 1] ?? y))).toEqual([0, near(3.335), near(3.335)])
      // 4.68 mm less 1.4 hold one letter and an ellipsis: no name.
      expect(words(60, 95, 'Waterproofs')).toHaveLength(1)
    })

    it('make a number of two digits smaller where the box is short', () => {
      // 3.9 by 7.8 mm, tall enough to be turned: 3.9 x 0.45 = 1.755, so the least. 7.8 by 7.8: 7.8 / (0.75 x 2 + 0.4) = 4.1.
      expect(words(50, 100, 'box', 'u12')[0]?.heightMm).toBe(2.2)
      expect(words(100, 100, 'box', 'u12')[0]?.heightMm).toBeCloseTo(7.8 * 0.45, 6)
      expect(words(100, 150, 'box', 'u12')[0]?.heightMm).toBeCloseTo(7.8 / 1.9, 6)
    })
  })

  it('write the name where the most of a box is seen: left of, right of, above or below what covers it', () => {
    // From the right, u2 is nearer. u1 spans 800 by 400 mm of length and height.
    const at = (cover: Unit) => {
      const shapes = draw([unit('u1', [100, 0, 100], [800, 300, 400]), cover])[0]?.shapes ?? []
      const numeral = labels(shapes).find((label) => label.text === '1' && label.atMm[0] >= 97)
      return (numeral?.atMm[0] ?? 0) - 97
    }
    const mid = (fromMm: number, toMm: number) => ((fromMm + toMm) / 2) * SCALE
    expect(at(unit('u2', [600, 500, 0], [400, 100, 600]))).toBeCloseTo(mid(100, 600), 6)
    expect(at(unit('u2', [0, 500, 0], [400, 100, 600]))).toBeCloseTo(mid(400, 900), 6)
    // One that lies beside it covers nothing.
    expect(at(unit('u2', [900, 500, 0], [100, 100, 600]))).toBeCloseTo(mid(100, 900), 6)
    expect(at(unit('u2', [0, 500, 0], [100, 100, 600]))).toBeCloseTo(mid(100, 900), 6)
    const heights = (cover: Unit) => {
      const shapes = draw([unit('u1', [100, 0, 100], [800, 300, 400]), cover])[0]?.shapes ?? []
      return labels(shapes).find((label) => label.text === '1' && label.atMm[0] >= 97)?.atMm[1] ?? 0
    }
    const free = heights(unit('u2', [900, 500, 0], [100, 100, 600]))
    // Covered below by 100 mm of its 400, its seen middle lies 50 mm higher; covered above, 50 mm lower.
    expect(heights(unit('u2', [0, 500, 0], [1000, 100, 200])) - free).toBeCloseTo(-50 * SCALE, 6)
    expect(heights(unit('u2', [0, 500, 400], [1000, 100, 200])) - free).toBeCloseTo(50 * SCALE, 6)
    expect(heights(unit('u2', [0, 500, 500], [1000, 100, 100])) - free).toBeCloseTo(0, 6)
    expect(heights(unit('u2', [0, 500, 0], [1000, 100, 100])) - free).toBeCloseTo(0, 6)
  })
})

describe('the steps of loading', () => {
  const draw = (placements: readonly Unit[], over: Partial<StepDrawingInput> = {}, bay: Partial<Bay> = {}) =>
    stepDrawings({ bay: bayOf(bay), placements, names: named('box'), text, widthMm: 180, ...over })
  // A step is 44 mm wide at most and a view 34 mm high: 34 / 800 = 0.0425 of 1000 by 800 by 600 mm.
  const SCALE = 0.0425
  const LEFT = 0.6
  const PLAN_TOP = 8
  const SIDE_TOP = 8 + 34 + 2.5
  const crate = unit('u1', [0, 0, 0], [400, 300, 200])

  it('stand three in a row, each with its caption, its plan and its view from the side', () => {
    const [drawing, ...more] = draw([crate])
    expect(more).toEqual([])
    // 8 of caption, 34 and 25.5 of views, 2.5 between, 0.6 at each edge.
    expect([drawing?.widthMm, drawing?.heightMm]).toEqual([180, near(71.2)])
    const shapes = drawing?.shapes ?? []
    expect(labels(shapes)[0]).toEqual({
      kind: 'label',
      atMm: [LEFT, near(2.9)],
      text: '1 box u1',
      heightMm: 2.9,
      anchor: 'start',
      bold: true,
    })
    const ink = { kind: 'rect', sizeMm: [near(17), near(12.75)], weightMm: 0, fill: 'ink' }
    // From the side the floor is below: 600 - 200 mm of air above the crate.
    expect(rects(shapes)).toEqual([
      { ...ink, atMm: [LEFT, PLAN_TOP] },
      { ...ink, atMm: [LEFT, near(SIDE_TOP + 17)], sizeMm: [near(17), near(8.5)] },
    ])
    const number = { kind: 'label', text: '1', heightMm: 3.6, anchor: 'middle', bold: true, halo: true, onInk: true }
    expect(labels(shapes).slice(1)).toEqual([
      { ...number, atMm: [near(LEFT + 8.5), near(PLAN_TOP + 6.375 + 3.6 * 0.36)] },
      { ...number, atMm: [near(LEFT + 8.5), near(SIDE_TOP + 17 + 4.25 + 3.6 * 0.36)] },
    ])
    expect(drawing?.description).toBe(text.t('cards.drawing.steps', { bay: 'Load bay', what: '1 box u1' }))
    const walls = lines(shapes)
    expect(walls).toHaveLength(8)
    expect(new Set(walls.map(({ weightMm }) => weightMm))).toEqual(new Set([0.4]))
  })

  it('go on in the next row after the third, with what stands already', () => {
    const units = [1, 2, 3, 4].map((number) => unit(`u${number}`, [200 * (number - 1), 0, 0], [200, 300, 200]))
    const drawings = draw(units)
    // 42.5 and 1.2 mm of cell, 5 between: the second begins 48.7 mm after the first.
    expect(
      labels(drawings[0]?.shapes ?? [])
        .filter(({ heightMm }) => heightMm === 2.9)
        .map(({ atMm }) => atMm[0]),
    ).toEqual([near(0.6), near(49.3), near(98)])
    expect(drawings.map(({ description }) => description)).toEqual([
      text.t('cards.drawing.steps', { bay: 'Load bay', what: '1 box u1, 2 box u2, 3 box u3' }),
      text.t('cards.drawing.steps', { bay: 'Load bay', what: '4 box u4' }),
    ])
    // Each view of the fourth step shows the three before in thin lines.
    const standing = rects(drawings[1]?.shapes ?? []).filter(({ fill }) => fill === 'none')
    expect(standing).toHaveLength(6)
    expect(new Set(standing.map(({ weightMm }) => weightMm))).toEqual(new Set([0.13]))
    expect(draw([])).toEqual([])
  })

  it('are as large as their cell, the page and one to sixteen allow', () => {
    const perMm = (over: Partial<StepDrawingInput>, bay: Partial<Bay>): number =>
      (rects(shapesOf(draw([unit('u1', [0, 0, 0], [100, 100, 100])], over, bay)))[0]?.sizeMm[0] ?? 0) / 100
    expect(perMm({}, { sizeMm: [300, 200, 200] })).toBeCloseTo(1 / 16, 9)
    expect(perMm({}, { sizeMm: [1000, 300, 300] })).toBeCloseTo(42.8 / 1000, 9)
    expect(perMm({ widthMm: 30 }, { sizeMm: [1000, 300, 300] })).toBeCloseTo(28.8 / 1000, 9)
    expect(perMm({}, { sizeMm: [300, 1000, 300] })).toBeCloseTo(34 / 1000, 9)
    expect(perMm({}, { sizeMm: [300, 300, 1000] })).toBeCloseTo(34 / 1000, 9)
    // A cell is 28 mm wide at least, for its caption: five in a row.
    const small = draw(
      [1, 2, 3, 4, 5, 6].map((number) => unit(`u${number}`, [0, 0, 0], [50, 50, 50])),
      {},
      { sizeMm: [300, 200, 200] },
    )
    expect(small).toHaveLength(2)
    expect(
      labels(small[0]?.shapes ?? [])
        .filter(({ heightMm }) => heightMm === 2.9)
        .map(({ atMm }) => atMm[0]),
    ).toEqual([0, 1, 2, 3, 4].map((column) => near(0.6 + 33 * column)))
  })

  it('break a long caption into two lines', () => {
    const captions = labels(
      shapesOf(draw([crate], { names: named('one long word after another and so on for ever without an end') })),
    ).filter(({ heightMm }) => heightMm === 2.9)
    expect(captions.map(({ atMm }) => atMm)).toEqual([
      [LEFT, near(2.9)],
      [LEFT, near(2.9 * 2.15)],
    ])
    expect(captions[1]?.text.endsWith('…')).toBe(true)
  })

  it('keep the number of a narrow unit on the paper', () => {
    // 20 mm of bay are 0.85 of paper; a digit of 3.6 mm is 2.232 wide, half of it 1.116.
    const number = (id: string) =>
      labels(shapesOf(draw([unit(id, [0, 0, 0], [20, 300, 200])]))).find(({ heightMm }) => heightMm === 3.6)?.atMm[0]
    expect(number('u1')).toBeCloseTo(LEFT + 1.116, 6)
    expect(number('u12')).toBeCloseTo(LEFT + 2.232, 6)
  })

  /** Numbers of the units that stand already in the last step's plan, with their places. */
  const standingNumbers = (...units: readonly Unit[]) => {
    const at = (units.length - 1) * 48.7
    return labels(shapesOf(draw(units)))
      .filter(({ heightMm, atMm }) => heightMm === 2.2 && atMm[0] >= at && atMm[1] < SIDE_TOP)
      .map(({ text: number, atMm }) => [
        number,
        (atMm[0] - at - LEFT) / SCALE,
        (atMm[1] - PLAN_TOP - 2.2 * 0.36) / SCALE,
      ])
  }

  it('number what stands already in its middle', () => {
    expect(standingNumbers(crate, unit('u2', [600, 0, 0], [400, 300, 200]))).toEqual([['1', near(200), near(150)]])
  })

  it('number no box too small for its number', () => {
    // A digit of 2.2 mm wants 1.764 by 2.2 mm: 41.5 by 51.8 mm of bay.
    const beside = unit('u9', [600, 500, 0], [300, 300, 200])
    const seen = (lengthMm: number, widthMm: number, id = 'u1') =>
      standingNumbers(unit(id, [0, 0, 0], [lengthMm, widthMm, 200]), beside).length
    expect([seen(42, 52), seen(41, 52), seen(42, 51)]).toEqual([1, 0, 0])
    // Two digits: 3.128 mm, 73.6 mm of bay.
    expect([seen(74, 52, 'u12'), seen(73, 52, 'u12')]).toEqual([1, 0])
  })

  it('number nothing that the new unit would cover', () => {
    // The number of the crate lies at 200 by 150 mm, half as wide as 20.8 mm and half as high as 25.9.
    const seen = (atMm: Vec3, sizeMm: Vec3 = [300, 300, 100]) => standingNumbers(crate, unit('u2', atMm, sizeMm)).length
    expect([seen([220, 0, 200]), seen([221, 0, 200])]).toEqual([0, 1])
    expect([seen([0, 0, 200], [180, 300, 100]), seen([0, 0, 200], [179, 300, 100])]).toEqual([0, 1])
    expect([seen([0, 175, 200]), seen([0, 176, 200])]).toEqual([0, 1])
    expect([seen([0, 0, 200], [300, 125, 100]), seen([0, 0, 200], [300, 124, 100])]).toEqual([0, 1])
  })

  it('number only the upper of two that stand on one another', () => {
    const upon = unit('u2', [100, 100, 200], [200, 200, 100])
    const beside = unit('u3', [600, 500, 0], [300, 300, 200])
    expect(standingNumbers(crate, upon, beside).map(([number]) => number)).toEqual(['2'])
    // Beside the middle of the lower one, both are numbered.
    const offset = unit('u2', [210, 100, 200], [190, 200, 100])
    expect(standingNumbers(crate, offset, beside).map(([number]) => number)).toEqual(['1', '2'])
    // In whatever order they went in: from above, what is highest covers.
    expect(standingNumbers(upon, crate, beside).map(([number]) => number)).toEqual(['2'])
  })

  it('cross out what is fixed', () => {
    const obstacles = [{ label: 'arch', atMm: [200, 0, 0], sizeMm: [400, 200, 300] }] as const
    const shapes = shapesOf(draw([unit('u1', [0, 500, 0], [100, 100, 100])], {}, { obstacles: [...obstacles] }))
    const [left, top, right, bottom] = [LEFT + 200 * SCALE, PLAN_TOP, LEFT + 600 * SCALE, PLAN_TOP + 200 * SCALE]
    const thin = { kind: 'line', weightMm: 0.13 }
    expect(rects(shapes)[0]).toEqual({
      kind: 'rect',
      atMm: [near(left), near(top)],
      sizeMm: [near(400 * SCALE), near(200 * SCALE)],
      weightMm: 0.13,
      fill: 'none',
    })
    expect(lines(shapes).slice(0, 2)).toEqual([
      { ...thin, fromMm: [near(left), near(top)], toMm: [near(right), near(bottom)] },
      { ...thin, fromMm: [near(left), near(bottom)], toMm: [near(right), near(top)] },
    ])
  })
})
