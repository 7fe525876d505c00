/** Where lines and words of the drawings stand, worked out by hand for bays and nights of round numbers. */
import { describe, expect, it } from 'vitest'
import { drawingToSvg } from '../../../shared/cards/index.ts'
import type { Block, Drawing, Shape } from '../../../shared/cards/index.ts'
import { bayDrawings } from '../../../shared/cards/bay-drawing.ts'
import { boxOnPaper, obstacleShapes, outlineWithGaps, slopeShapes } from '../../../shared/cards/bay-frame.ts'
import type { Frame } from '../../../shared/cards/bay-frame.ts'
import { chartDrawing } from '../../../shared/cards/chart-drawing.ts'
import type { ChartInput } from '../../../shared/cards/chart-drawing.ts'
import { layersOf, restsOn } from '../../../shared/cards/layers.ts'
import { wordsWidthMm, wrapWords } from '../../../shared/cards/lettering.ts'
import { blocksToHtml } from '../../../shared/cards/pocket/blocks-html.ts'
import type { Bay } from '../../../shared/document/index.ts'
import { createText } from '../../../shared/text/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsTrip } from '../../support/cards-plan.ts'

const text = createText('en', 'metric')
const labelsOf = (shapes: readonly Shape[]) => shapes.filter((shape) => shape.kind === 'label')
const linesOf = (shapes: readonly Shape[]) => shapes.filter((shape) => shape.kind === 'line')
const near = (value: number) => expect.closeTo(value, 6)

describe('the width of words', () => {
  it('is the sum of narrow, plain and wide letters, a twentieth more in bold', () => {
    expect(wordsWidthMm('', 3)).toBe(0)
    expect(wordsWidthMm('aaaa', 10)).toBeCloseTo(22, 9)
    expect(wordsWidthMm('il 1', 10)).toBeCloseTo(3.3 * 3 + 5.5, 9)
    expect(wordsWidthMm('AMwm\u00dc', 10)).toBeCloseTo(33, 9)
    expect(wordsWidthMm('aa', 10, true)).toBeCloseTo(11.55, 9)
  })

  it('decides where a line is broken, and what is cut', () => {
    // At 1 mm a letter is 0.55 mm wide, a space 0.33: two words of four are 4.73 mm.
    expect(wrapWords('aaaa aaaa aaaa', 5, 1, 3)).toEqual(['aaaa aaaa', 'aaaa'])
    expect(wrapWords('aaaa  aaaa', 4.73, 1, 1)).toEqual(['aaaa aaaa'])
    expect(wrapWords('aaaa aaaa', 4.7, 1, 2)).toEqual(['aaaa', 'aaaa'])
    expect(wrapWords('aaaa aaaa aaaa', 5, 1, 1)).toEqual(['aaaa aaa…'])
    expect(wrapWords('aaaa aaaa aaaa', 3, 1, 2)).toEqual(['aaaa', 'aaaa…'])
    expect(wrapWords('aaaaaaaaaa', 2, 1, 3)).toEqual(['aa…'])
    expect(wrapWords('aaaaaaaaaa aa', 2, 1, 3)).toEqual(['aa…', 'aa'])
    expect(wrapWords('aaa', 0.1, 1, 1)).toEqual(['a…'])
    expect(wrapWords('', 5, 1, 2)).toEqual([])
  })
})

const chart = (over: Partial<ChartInput> = {}): Drawing =>
  chartDrawing({
    title: 'Air',
    atUtc: [0, 3600, 7200].map((at) => at as Utc),
    zone: 'UTC',
    lines: [{ name: 'inside', values: [0, 10, 6], weightMm: 0.5 }],
    moments: [],
    say: String,
    steps: [1, 5, 10, 20],
    leastSpan: 8,
    widthMm: 180,
    heightMm: 60,
    text,
    ...over,
  })
/** Labels of the scale end left of the ruled field, which begins 14 mm from the left. */
const scaleOf = (drawing: Drawing): readonly string[] =>
  labelsOf(drawing.shapes).flatMap((label) => (label.anchor === 'end' && label.atMm[0] < 14 ? [label.text] : []))
const hoursOf = (drawing: Drawing): readonly string[] =>
  labelsOf(drawing.shapes).flatMap((label) => (label.anchor === 'middle' ? [label.text] : []))
const line = (...values: readonly number[]): Partial<ChartInput> => ({ lines: [{ name: 'l', values, weightMm: 0.5 }] })

describe('a chart', () => {
  // The field: 14 to 146 mm across (34 mm for names), 6.5 to 54 mm down (6 mm for the hours).
  it('puts time across and value upwards', () => {
    const { shapes, description } = chart()
    expect(description).toBe('Air: inside')
    expect(shapes.filter((shape) => shape.kind === 'polyline')).toEqual([
      {
        kind: 'polyline',
        weightMm: 0.5,
        pointsMm: [
          [near(14), near(54)],
          [near(80), near(6.5)],
          [near(146), near(25.5)],
        ],
      },
    ])
  })

  it('rules the scale in the first step that needs no more than six, with a label to each line', () => {
    const drawing = chart()
    expect(scaleOf(drawing)).toEqual(['0', '5', '10'])
    const ruled = linesOf(drawing.shapes).filter((shape) => shape.weightMm === 0.1 && shape.fromMm[0] === 14)
    expect(ruled.map((shape) => [shape.fromMm, shape.toMm])).toEqual(
      [54, 30.25, 6.5].map((y) => [
        [14, near(y)],
        [146, near(y)],
      ]),
    )
    expect(scaleOf(chart(line(0, 6)))).toEqual(['-5', '0', '5', '10'])
    expect(scaleOf(chart({ ...line(0, 6), leastSpan: 6 }))).toEqual(['0', '1', '2', '3', '4', '5', '6'])
    expect(scaleOf(chart({ ...line(0, 6.2), leastSpan: 6 }))).toEqual(['0', '5', '10'])
    expect(scaleOf(chart(line(-60, 59)))).toEqual(['-60', '-40', '-20', '0', '20', '40', '60'])
    expect(scaleOf(chart(line(0, 200)))).toEqual([
      '0',
      '20',
      '40',
      '60',
      '80',
      '100',
      '120',
      '140',
      '160',
      '180',
      '200',
    ])
  })

  it('keeps a flat night flat, in the middle of the least span', () => {
    const drawing = chart(line(3, 3, 3))
    expect(scaleOf(drawing)).toEqual(['-5', '0', '5', '10'])
    const [flat] = drawing.shapes.filter((shape) => shape.kind === 'polyline')
    // 3 lies 8/15 up from -5 to 10.
    expect(flat?.pointsMm.map(([, y]) => y)).toEqual([1, 2, 3].map(() => near(54 - (8 / 15) * 47.5)))
  })

  it('never leaves floor and ceiling, nor do the lines', () => {
    const bounded = { steps: [0.1, 0.25], leastSpan: 0.5, floor: 0, ceiling: 1 }
    const drawing = chart({ ...line(-0.3, 1.2, 0.5), ...bounded })
    expect(scaleOf(drawing)).toEqual(['0', '0.25', '0.5', '0.75', '1'])
    const [drawn] = drawing.shapes.filter((shape) => shape.kind === 'polyline')
    expect(drawn?.pointsMm.map(([, y]) => y)).toEqual([near(54), near(6.5), near(30.25)])
    const eighths = { steps: [0.125, 0.25], leastSpan: 0.5, ceiling: 1 }
    expect(scaleOf(chart({ ...line(0.875, 1), ...eighths }))).toEqual(['0.625', '0.75', '0.875', '1'])
  })

  it('marks each whole hour of the place, every third of a long stretch', () => {
    expect(hoursOf(chart())).toEqual(['00', '01', '02'])
    expect(hoursOf(chart({ zone: 'Asia/Kolkata' }))).toEqual(['05', '06', '07'])
    const marks = linesOf(chart().shapes).filter((shape) => shape.weightMm === 0.2)
    expect(marks.map((mark) => [mark.fromMm, mark.toMm])).toEqual(
      [14, 80, 146].map((x) => [
        [near(x), 54],
        [near(x), 55.2],
      ]),
    )
    const long = (hours: number) => chart({ atUtc: [600, 600 + hours * 3600].map((at) => at as Utc), ...line(0, 1) })
    expect(hoursOf(long(16))).toHaveLength(16)
    expect(hoursOf(long(17))).toEqual(['02', '04', '06', '08', '10', '12', '14', '16'])
    expect(hoursOf(long(40)).slice(0, 9)).toEqual(['03', '06', '09', '12', '15', '18', '21', '00', '03'])
    expect(new Set(hoursOf(long(90)))).toEqual(new Set(['00', '06', '12', '18']))
    expect(new Set(hoursOf(long(200)))).toEqual(new Set(['00', '12']))
  })

  it('names moments beside their line, left of it at the right edge, in rows that do not touch', () => {
    const moments = [
      { name: 'late', atUtc: 7200 as Utc },
      { name: 'bedtime', atUtc: 1800 as Utc },
      { name: 'quiet hours', atUtc: 1860 as Utc },
      { name: 'before', atUtc: -1 as Utc },
      { name: 'after', atUtc: 7201 as Utc },
    ]
    const labels = labelsOf(chart({ moments }).shapes).filter((label) => label.halo === true)
    // Half an hour of two is a quarter of 132 mm from 14; rows are 3.2 mm apart, the first base line at 7.3.
    expect(labels.map(({ text: name, anchor, atMm }) => [name, anchor, atMm])).toEqual([
      ['bedtime', 'start', [near(47.6), near(7.3)]],
      ['quiet hours', 'start', [near(14 + 132 * (1860 / 7200) + 0.6), near(10.5)]],
      ['late', 'end', [near(145.4), near(7.3)]],
    ])
    // Two rows of names push the field down to 5 + 2 * 3.2 mm.
    const tops = linesOf(chart({ moments }).shapes).filter((shape) => shape.weightMm === 0.1 && shape.fromMm[0] === 14)
    expect(Math.min(...tops.map((shape) => shape.fromMm[1]))).toBeCloseTo(11.4, 9)
    const dashed = linesOf(chart({ moments }).shapes).filter((shape) => shape.dashMm !== undefined)
    expect(dashed.map((shape) => [shape.fromMm, shape.toMm])).toContainEqual([
      [near(47), near(5.3)],
      [near(47), near(54)],
    ])
  })

  it('names lines at their right end, apart from each other and above the hours', () => {
    const lines = [
      { name: 'b', values: [0, 0], weightMm: 0.5 },
      { name: 'a', values: [0, 0], weightMm: 0.3, dashMm: [1, 1] },
      { name: 'top', values: [0, 10], weightMm: 0.4 },
    ]
    const drawing = chart({ lines, atUtc: [0, 7200].map((at) => at as Utc) })
    const names = labelsOf(drawing.shapes).filter((label) => label.atMm[0] === 155.5)
    expect(names.map((label) => [label.text, label.atMm[1]])).toEqual([
      ['top', near(6.5 + 0.9 - 3.375)],
      ['b', near(54 + 0.9 - 3.375)],
      ['a', near(54 + 0.9)],
    ])
    const samples = linesOf(drawing.shapes).filter((shape) => shape.fromMm[0] === 150)
    expect(samples.map((shape) => [shape.weightMm, shape.dashMm])).toEqual([
      [0.4, undefined],
      [0.5, undefined],
      [0.3, [1, 1]],
    ])
  })

  it('draws no more points than can be seen, and always the first and the last', () => {
    for (const [count, drawn] of [
      [300, 300],
      [301, 151],
      [1000, 251],
    ] as const) {
      const atUtc = Array.from({ length: count }, (_, index) => (index * 60) as Utc)
      const [thinned] = chart({ atUtc, ...line(...atUtc) }).shapes.filter((shape) => shape.kind === 'polyline')
      expect(thinned?.pointsMm).toHaveLength(drawn)
      expect(thinned?.pointsMm[0]?.[0]).toBeCloseTo(14, 9)
      expect(thinned?.pointsMm.at(-1)?.[0]).toBeCloseTo(146, 9)
    }
  })
})

const someBay = cardsTrip().vehicle.bays[0]
if (someBay === undefined) throw new Error('the trip has a bay')
const bay = (over: Partial<Bay> = {}): Bay => ({
  ...someBay,
  sizeMm: [1000, 800, 600],
  obstacles: [],
  slopes: [],
  openings: [],
  ...over,
})
const opening = (face: Bay['openings'][number]['face'], fromMm: [number, number], toMm: [number, number]) => ({
  id: 'o',
  name: 'o',
  face,
  fromMm,
  toMm,
  door: 'lid',
  opensFromInside: false,
})
/** One to ten, ten from the left and twenty down: the bay is 100 mm wide, 80 deep from above, 60 high from the side. */
const above = (over: Partial<Bay> = {}): Frame => ({
  originMm: [10, 20],
  scale: 0.1,
  view: { right: 0, down: 1, flip: false, title: '' },
  bay: bay(over),
})
const side = (over: Partial<Bay> = {}): Frame => ({
  ...above(over),
  view: { right: 0, down: 2, flip: true, title: '' },
})
const ends = (shapes: readonly Shape[]) =>
  linesOf(shapes).map(({ fromMm, toMm }) => [...fromMm, ...toMm].map((value) => Math.round(value * 1e6) / 1e6))

describe('a bay on paper', () => {
  it('lies with its floor at the bottom from the side, with its left wall at the top from above', () => {
    expect(boxOnPaper([100, 200, 50], [300, 150, 400], above())).toEqual({ at: [20, 40], size: [30, 15] })
    expect(boxOnPaper([100, 200, 50], [300, 150, 400], side())).toEqual({ at: [20, 35], size: [30, 40] })
  })

  it('has four whole walls where nothing opens', () => {
    expect(ends(outlineWithGaps(above()))).toEqual([
      [10, 20, 10, 100],
      [110, 20, 110, 100],
      [10, 20, 110, 20],
      [10, 100, 110, 100],
    ])
    expect(ends(outlineWithGaps(side()))).toEqual([
      [10, 20, 10, 80],
      [110, 20, 110, 80],
      [10, 20, 110, 20],
      [10, 80, 110, 80],
    ])
  })

  it.each([
    [
      'x-',
      above,
      [100, 0],
      [700, 600],
      [
        [10, 20, 10, 30],
        [10, 90, 10, 100],
      ],
      [8.8, 60],
    ],
    [
      'x-',
      side,
      [100, 100],
      [700, 500],
      [
        [10, 20, 10, 30],
        [10, 70, 10, 80],
      ],
      [8.8, 50],
    ],
    ['x+', above, [0, 0], [700, 600], [[110, 90, 110, 100]], [113, 55]],
    ['x+', side, [0, 200], [700, 600], [[110, 60, 110, 80]], [113, 40]],
    ['y-', above, [200, 0], [1000, 600], [[10, 20, 30, 20]], [70, 18.8]],
    ['y+', above, [0, 0], [600, 600], [[70, 100, 110, 100]], [40, 103]],
    [
      'z+',
      side,
      [300, 0],
      [600, 800],
      [
        [10, 20, 40, 20],
        [70, 20, 110, 20],
      ],
      [55, 18.8],
    ],
  ] as const)('%s opens as a gap with the name of its door in the middle', (face, view, from, to, left, label) => {
    const shapes = outlineWithGaps(view({ openings: [opening(face, [...from], [...to])] }))
    const whole = ends(outlineWithGaps(view())).map(String)
    expect(ends(shapes).filter((one) => !whole.includes(String(one)))).toEqual(left)
    expect(ends(shapes).filter((one) => whole.includes(String(one)))).toHaveLength(3)
    expect(labelsOf(shapes).map(({ atMm, text: name, turnDeg }) => [name, atMm, turnDeg])).toEqual([
      ['lid', label.map(near), face.startsWith('x') ? -90 : undefined],
    ])
  })

  it('shows no gap of a wall that the view looks through, and no name where it would not fit', () => {
    for (const face of ['y-', 'y+'] as const) {
      expect(outlineWithGaps(side({ openings: [opening(face, [0, 0], [500, 500])] }))).toEqual(outlineWithGaps(side()))
    }
    expect(outlineWithGaps(above({ openings: [opening('z+', [0, 0], [500, 500])] }))).toEqual(outlineWithGaps(above()))
    const named = (door: string, toMm: number) =>
      labelsOf(outlineWithGaps(above({ openings: [{ ...opening('y-', [0, 0], [toMm, 9]), door }] }))).length
    // Twelve millimetres are always free; beyond that the gap decides. 'aaaaaaaaa' is 12.4 mm wide.
    expect([named('aaaaaaaa', 10), named('aaaaaaaaa', 100), named('aaaaaaaaa', 130)]).toEqual([1, 0, 1])
    const quiet = outlineWithGaps(above({ openings: [opening('y-', [0, 0], [500, 9])] }), {
      weightMm: 0.2,
      named: false,
    })
    expect(labelsOf(quiet)).toEqual([])
    expect(linesOf(quiet).every((shape) => shape.weightMm === 0.2)).toBe(true)
  })

  it('joins gaps that overlap, in any order', () => {
    const openings = [
      opening('y-', [400, 0], [600, 9]),
      opening('y-', [100, 0], [500, 9]),
      opening('y-', [150, 0], [200, 9]),
    ]
    const top = ends(outlineWithGaps(above({ openings }))).filter((one) => one[1] === 20 && one[3] === 20)
    expect(top).toEqual([
      [10, 20, 20, 20],
      [70, 20, 110, 20],
    ])
  })

  it.each([
    ['x-', above, [[40, 20, 40, 100]]],
    ['x+', above, [[80, 20, 80, 100]]],
    ['y-', above, [[10, 50, 110, 50]]],
    ['y+', above, [[10, 70, 110, 70]]],
    ['x-', side, [[20, 80, 40, 20]]],
    ['x+', side, [[100, 80, 80, 20]]],
    ['y-', side, []],
    ['y+', side, []],
  ] as const)('a wall %s that leans in is drawn where it reaches furthest, or as it leans', (face, view, expected) => {
    const slopes = [{ label: 's', face, insetFloorMm: 100, insetTopMm: 300 }]
    expect(ends(slopeShapes(view({ slopes })))).toEqual(expected)
  })

  it('outlines and hatches what is fixed', () => {
    const shapes = obstacleShapes(above({ obstacles: [{ label: 'arch', atMm: [100, 0, 0], sizeMm: [400, 200, 300] }] }))
    expect(shapes.filter((shape) => shape.kind === 'rect').map((shape) => [shape.atMm, shape.sizeMm])).toEqual([
      [
        [20, 20],
        [40, 20],
      ],
    ])
    expect(linesOf(shapes).length).toBeGreaterThan(10)
  })
})

const unit = (unitId: string, atMm: readonly [number, number, number], sizeMm: readonly [number, number, number]) => ({
  unitId,
  bayId: 'load',
  atMm,
  sizeMm,
  edges: [0, 1, 2] as const,
})
const names = {
  number: (id: string) => Number(id.slice(1)),
  unit: (id: string) => `box ${id}`,
}

describe('the views of a bay', () => {
  const draw = (placements: readonly ReturnType<typeof unit>[], over: Partial<Bay> = {}, widthMm = 180) =>
    bayDrawings({
      bay: bay(over),
      placements,
      // Only these two are asked for here.
      names: names as never,
      text,
      widthMm,
      outlines: [],
    })
  const titles = (drawings: readonly Drawing[]) =>
    drawings.map((drawing) => labelsOf(drawing.shapes).flatMap((label) => (label.heightMm === 3.1 ? [label.text] : [])))

  it('are one from above and one from the side, or one a layer', () => {
    const low = unit('u1', [0, 0, 0], [400, 300, 200])
    const high = unit('u2', [0, 0, 200], [300, 300, 200])
    expect(titles(draw([low]))).toEqual([[text.t('cards.view.plan'), text.t('cards.view.side')]])
    expect(titles(draw([low, high])).flat()).toEqual([
      text.t('cards.view.floor'),
      text.t('cards.view.layer', { layer: 2 }),
      text.t('cards.view.side'),
    ])
    expect(titles(draw([]))).toEqual([[text.t('cards.view.plan')]])
    expect(titles(draw([low], { sizeMm: [1000, 800, 59] }))).toEqual([[text.t('cards.view.plan')]])
    expect(titles(draw([low], { sizeMm: [1000, 800, 60] })).flat()).toHaveLength(2)
  })

  it('share one scale, as large as width, height and one to eight allow', () => {
    const scale = (over: Partial<Bay>, widthMm = 180): number => {
      const [first] = draw([unit('u1', [0, 0, 0], [100, 100, 100])], over, widthMm)
      const box = first?.shapes.find((shape) => shape.kind === 'rect' && shape.fill === 'paper')
      return box?.kind === 'rect' ? box.sizeMm[0] / 100 : Number.NaN
    }
    // Two views in 180 mm: (180 - 4) / 2 - 10 = 78 mm each.
    expect(scale({ sizeMm: [1000, 800, 600] })).toBeCloseTo(78 / 1000, 9)
    expect(scale({ sizeMm: [400, 300, 300] })).toBeCloseTo(1 / 8, 9)
    expect(scale({ sizeMm: [900, 800, 1000] })).toBeCloseTo(68 / 1000, 9)
    expect(scale({ sizeMm: [900, 1000, 800] })).toBeCloseTo(68 / 1000, 9)
    expect(scale({ sizeMm: [1770, 800, 600] })).toBeCloseTo(1 / 14, 9)
    expect(scale({ sizeMm: [1000, 800, 600] }, 110)).toBeCloseTo(68 / 800, 9)
    expect(scale({ sizeMm: [2000, 1500, 600] }, 110)).toBeCloseTo(68 / 1500, 9)
  })

  it('write number and name in the part that nothing nearer hides', () => {
    const placements = [unit('u1', [0, 0, 0], [800, 300, 400]), unit('u2', [0, 500, 0], [300, 300, 400])]
    const drawing = draw(placements)[0]
    const numerals = labelsOf(drawing?.shapes ?? []).filter((label) => label.text === '1')
    // From above u1 is whole: its middle is 400 mm in. From the side u2, nearer, hides the first 300 of its 800 mm.
    const panelMm = 78 + 10 + 4
    expect(numerals.map((label) => label.atMm[0])).toEqual([near(5 + 400 * 0.078), near(5 + panelMm + 550 * 0.078)])
    expect(drawing?.description).toContain('1 box u1, 2 box u2')
  })

  it('mark what lies below in dashes', () => {
    const drawings = draw([unit('u1', [0, 0, 0], [400, 300, 200]), unit('u2', [0, 0, 200], [300, 300, 200])])
    const ghosts = drawings.flatMap(({ shapes }) =>
      shapes.flatMap((shape) => (shape.kind === 'rect' && shape.dashMm !== undefined ? [shape.sizeMm] : [])),
    )
    expect(ghosts).toEqual([[near(400 * 0.078), near(300 * 0.078)]])
  })

  it('keep a small box without words', () => {
    const drawings = draw([unit('u1', [0, 0, 0], [20, 20, 20])])
    expect(drawings.flatMap(({ shapes }) => labelsOf(shapes)).filter((label) => label.text === '1')).toEqual([])
  })
})

describe('layers', () => {
  it('count only what lies under, and in the same place from above', () => {
    const floor = unit('u1', [0, 0, 0], [400, 300, 200])
    const beside = unit('u2', [400, 0, 200], [100, 300, 100])
    const behind = unit('u3', [0, 300, 200], [400, 100, 100])
    const upon = unit('u4', [399, 299, 200], [50, 50, 50])
    const floating = unit('u5', [0, 0, 450], [10, 10, 10])
    expect(layersOf([floating, upon, behind, beside, floor]).map((layer) => layer.map(({ unitId }) => unitId))).toEqual(
      [
        ['u1', 'u3', 'u2'],
        ['u4', 'u5'],
      ],
    )
    const all = [floor, beside, behind, upon, floating, { ...floor, unitId: 'u6', bayId: 'other' }]
    expect(all.map((one) => restsOn(one, all).map(({ unitId }) => unitId))).toEqual([[], [], [], ['u1'], [], []])
  })
})

describe('a drawing as SVG', () => {
  const svg = (shapes: readonly Shape[], sizing: 'mm' | 'fluid' = 'mm'): string =>
    drawingToSvg(
      { kind: 'drawing', widthMm: 100.004, heightMm: 50, description: 'a & b', shapes },
      { ink: '#000', paper: '#fff', sizing },
    )
  const inner = (shapes: readonly Shape[], sizing: 'mm' | 'fluid' = 'mm'): string =>
    svg(shapes, sizing)
      .replace(/^<svg[^>]*>(<title>.*<\/title>)?/, '')
      .replace(/<\/svg>$/, '')

  it('has its size in mm on paper, and a title where it fills the width it is given', () => {
    expect(svg([])).toBe(
      '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="50mm" viewBox="0 0 100 50" fill="#000" text-anchor="middle"></svg>',
    )
    expect(svg([], 'fluid')).toBe(
      '<svg width="100%" role="img" viewBox="0 0 100 50" fill="#000" text-anchor="middle"><title>a &amp; b</title></svg>',
    )
  })

  it('draws strokes of one kind that follow each other as one path', () => {
    const stroke = { kind: 'line', fromMm: [1, 2], weightMm: 0.2 } as const
    expect(inner([{ ...stroke, toMm: [1, 9] }])).toBe(
      '<line x1="1" y1="2" x2="1" y2="9" stroke="#000" stroke-width="0.2"/>',
    )
    const open = { kind: 'rect', atMm: [1, 2], sizeMm: [3, 4], weightMm: 0.2, fill: 'none' } as const
    expect(inner([{ ...stroke, toMm: [1, 9] }, { ...stroke, toMm: [9, 2] }, { ...stroke, toMm: [9, 9] }, open])).toBe(
      '<path d="M1 2V9M1 2H9M1 2L9 9M1 2h3v4h-3z" fill="none" stroke="#000" stroke-width="0.2"/>',
    )
    expect(inner([open, { ...open, weightMm: 0.3 }]).match(/<rect/g)).toHaveLength(2)
    expect(inner([open, { ...open, dashMm: [1, 2] }]).match(/<rect/g)).toHaveLength(2)
    expect(
      inner([
        { ...open, dashMm: [1, 2] },
        { ...open, dashMm: [1, 2] },
      ]),
    ).toContain('stroke-dasharray="1 2"')
    expect(
      inner([
        { ...open, fill: 'paper' },
        { ...open, fill: 'paper' },
      ]),
    ).toBe('<rect x="1" y="2" width="3" height="4" fill="#fff" stroke="#000" stroke-width="0.2"/>'.repeat(2))
    expect(inner([{ ...open, fill: 'ink', weightMm: 0 }])).toBe('<rect x="1" y="2" width="3" height="4"/>')
  })

  it('draws polylines, open and closed', () => {
    const points = {
      kind: 'polyline',
      weightMm: 0.456,
      pointsMm: [
        [0, 0],
        [1.234, 5],
      ],
    } as const
    expect(inner([points])).toBe(
      '<polyline points="0,0 1.23,5" fill="none" stroke-linejoin="round" stroke="#000" stroke-width="0.46"/>',
    )
    expect(inner([{ ...points, closed: true, fill: 'paper' }], 'fluid')).toBe(
      '<polygon points="0,0 1.2,5" fill="#fff" stroke-linejoin="round" stroke="#000" stroke-width="0.46"/>',
    )
  })

  it('writes labels with anchor, weight, turn and halo', () => {
    const label = { kind: 'label', atMm: [1.26, 2], text: 'a<b', heightMm: 3, anchor: 'middle' } as const
    expect(inner([label])).toBe('<text x="1.26" y="2" font-size="3">a&lt;b</text>')
    expect(inner([{ ...label, anchor: 'end', bold: true, turnDeg: -90 }], 'fluid')).toBe(
      '<text x="1.3" y="2" font-size="3" text-anchor="end" font-weight="bold" transform="rotate(-90 1.3 2)">a&lt;b</text>',
    )
    expect(inner([{ ...label, halo: true }])).toBe(
      '<text x="1.26" y="2" font-size="3" fill="none" stroke="#fff" stroke-width="0.9">a&lt;b</text><text x="1.26" y="2" font-size="3">a&lt;b</text>',
    )
    expect(inner([{ ...label, halo: true, onInk: true }], 'fluid')).toBe(
      '<text x="1.3" y="2" font-size="3" fill="#fff" stroke="#000" stroke-width="0.9" paint-order="stroke">a&lt;b</text>',
    )
  })
})

describe('blocks of the pocket sheet', () => {
  it.each<[string, Block, string]>([
    ['a heading', { kind: 'heading', level: 1, text: 'a<b' }, '<h3>a&lt;b</h3>'],
    ['a heading below', { kind: 'heading', level: 2, text: 'a' }, '<h4>a</h4>'],
    ['a heading below that', { kind: 'heading', level: 3, text: 'a' }, '<h4>a</h4>'],
    ['words', { kind: 'paragraph', text: 'a&b', tone: 'plain' }, '<p>a&amp;b</p>'],
    ['strong words', { kind: 'paragraph', text: 'a', tone: 'strong' }, '<p><b>a</b></p>'],
    ['small words', { kind: 'paragraph', text: 'a', tone: 'small' }, '<p><small>a</small></p>'],
    ['a page break', { kind: 'page-break' }, ''],
    ['blanks', { kind: 'blanks', labels: ['a'] }, ''],
    [
      'figures',
      {
        kind: 'figures',
        items: [
          { label: 'low', value: '3 °C' },
          { label: 'b', value: 'c' },
        ],
      },
      '<div class="figures"><div><b>3 °C</b><small>low</small></div><div><b>c</b><small>b</small></div></div>',
    ],
    [
      'columns, one below the other',
      {
        kind: 'beside',
        columns: [[{ kind: 'paragraph', text: 'a', tone: 'plain' }], [{ kind: 'heading', level: 1, text: 'b' }]],
      },
      '<p>a</p><h3>b</h3>',
    ],
    [
      'blocks that stay together',
      {
        kind: 'together',
        blocks: [
          { kind: 'paragraph', text: 'a', tone: 'plain' },
          { kind: 'heading', level: 1, text: 'b' },
        ],
      },
      '<p>a</p>\n<h3>b</h3>',
    ],
    [
      'a table',
      {
        kind: 'table',
        columns: [
          { title: 'x<', share: 1, align: 'left', strong: true },
          { title: '', share: 1, align: 'right' },
        ],
        rows: [
          ['1', '2&'],
          ['3', '4'],
        ],
      },
      '<div class="wide" tabindex="0"><table><tr><th>x&lt;</th><th class="right"></th></tr><tr><td class="strong">1</td><td class="right">2&amp;</td></tr>\n<tr><td class="strong">3</td><td class="right">4</td></tr></table></div>',
    ],
    [
      'a table without titles',
      { kind: 'table', columns: [{ title: '', share: 1, align: 'right', strong: true }], rows: [['1']] },
      '<div class="wide" tabindex="0"><table><tr><td class="right strong">1</td></tr></table></div>',
    ],
  ])('%s', (_, block, expected) => {
    expect(blocksToHtml([block])).toBe(expected)
  })

  it('stand one below the other', () => {
    expect(blocksToHtml([{ kind: 'heading', level: 1, text: 'a' }, { kind: 'page-break' }])).toBe('<h3>a</h3>\n')
  })
})
