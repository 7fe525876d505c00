/** Ways to stand, bays cut for the search, and layouts told to the outside: by hand. */
import { describe, expect, it } from 'vitest'
import { bayModelOf } from '../../../shared/packing/bay-model.ts'
import { boxAt, hull, inside, moved, overlaps, sharedFootprint, volumeMm3 } from '../../../shared/packing/geometry.ts'
import type { PackBay, PackBin, PackNight, PackOpening, Placement, Vec3 } from '../../../shared/packing/index.ts'
import { edgesFor, layoutOf, reachOfState, stateFrom, weightedReach } from '../../../shared/packing/layout.ts'
import { poseAllows, posesOf, sizeWithin } from '../../../shared/packing/poses.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import { plainBay, plainBin, plainInput, plainNight, plainPiece } from '../../support/generators/planted-load.ts'

describe('the ways a thing may stand', () => {
  it('are two turns on each edge allowed upright, equal ones told once', () => {
    expect(posesOf([300, 200, 100], [2], false, 1)).toEqual([
      { sizeMm: [300, 200, 100], leastMm: [300, 200, 100], edges: [0, 1, 2] },
      { sizeMm: [200, 300, 100], leastMm: [200, 300, 100], edges: [1, 0, 2] },
    ])
    const sizes = posesOf([300, 200, 100], [0, 1, 2], false, 1).map(({ sizeMm }) => sizeMm.join('x'))
    expect(sizes.toSorted()).toEqual([
      '100x200x300',
      '100x300x200',
      '200x100x300',
      '200x300x100',
      '300x100x200',
      '300x200x100',
    ])
    expect(posesOf([200, 200, 100], [2], false, 1)).toHaveLength(1)
    expect(posesOf([200, 200, 200], [0, 1, 2], false, 1)).toHaveLength(1)
    expect(posesOf([300, 200, 100], [0], false, 1).map(({ edges }) => edges)).toEqual([
      [1, 2, 0],
      [2, 1, 0],
    ])
    expect(posesOf([300, 200, 100], [1], false, 1).map(({ edges }) => edges)).toEqual([
      [0, 2, 1],
      [2, 0, 1],
    ])
  })

  it('yield to a hand only if the thing is soft, to whole millimetres and never to nothing', () => {
    // Half of 301, 200 and 11: 150.5, 100 and 5.5, rounded up.
    expect(posesOf([301, 200, 11], [2], true, 0.5)[1]).toEqual({
      sizeMm: [200, 301, 11],
      leastMm: [100, 151, 6],
      edges: [1, 0, 2],
    })
    expect(posesOf([301, 200, 11], [2], false, 0.5)[0]?.leastMm).toEqual([301, 200, 11])
    expect(posesOf([301, 200, 11], [2], true, 0)[0]?.leastMm).toEqual([1, 1, 1])
  })

  it('are pressed along one edge at most, and only as far as it yields', () => {
    const pose = { sizeMm: [300, 200, 100], leastMm: [150, 100, 50], edges: [0, 1, 2] } as const
    expect(sizeWithin(pose, [300, 200, 100])).toEqual([300, 200, 100])
    expect(sizeWithin(pose, [900, 900, 900])).toEqual([300, 200, 100])
    expect(sizeWithin(pose, [150, 200, 100])).toEqual([150, 200, 100])
    expect(sizeWithin(pose, [149, 200, 100])).toBeNull()
    expect(sizeWithin(pose, [300, 100, 100])).toEqual([300, 100, 100])
    expect(sizeWithin(pose, [300, 99, 100])).toBeNull()
    expect(sizeWithin(pose, [300, 200, 50])).toEqual([300, 200, 50])
    expect(sizeWithin(pose, [300, 200, 49])).toBeNull()
    for (const room of [
      [299, 199, 100],
      [299, 200, 99],
      [300, 199, 99],
      [299, 199, 99],
    ] as const)
      expect(sizeWithin(pose, room)).toBeNull()
    expect(poseAllows(pose, [300, 200, 100])).toBe(true)
    for (const pressed of [
      [150, 200, 100],
      [300, 100, 100],
      [300, 200, 50],
    ] as const)
      expect(poseAllows(pose, pressed)).toBe(true)
    for (const wrong of [
      [149, 200, 100],
      [301, 200, 100],
      [299, 199, 100],
      [300, 199, 99],
      [300, 200, 101],
    ] as const)
      expect(poseAllows(pose, wrong)).toBe(false)
  })
})

describe('boxes', () => {
  const box = boxAt([10, 20, 30], [40, 50, 60])

  it('overlap only where they share volume along all three axes', () => {
    expect(box).toEqual({ x1: 10, y1: 20, z1: 30, x2: 50, y2: 70, z2: 90 })
    for (const axis of [0, 1, 2] as const) {
      const by = (far: number): Vec3 => [axis === 0 ? far : 0, axis === 1 ? far : 0, axis === 2 ? far : 0]
      const size = [40, 50, 60][axis] ?? 0
      expect(overlaps(box, moved(box, by(size - 1)))).toBe(true)
      expect(overlaps(box, moved(box, by(1 - size)))).toBe(true)
      expect(overlaps(box, moved(box, by(size)))).toBe(false)
      expect(overlaps(box, moved(box, by(-size)))).toBe(false)
      expect(inside(box, box)).toBe(true)
      expect(inside(moved(box, by(1)), box)).toBe(false)
      expect(inside(moved(box, by(-1)), box)).toBe(false)
    }
  })

  it('share a footprint whatever their heights, have a hull and a volume', () => {
    expect(sharedFootprint(box, moved(box, [30, 0, 500]))).toBe(10 * 50)
    expect(sharedFootprint(box, moved(box, [-30, 45, 0]))).toBe(10 * 5)
    expect(sharedFootprint(box, moved(box, [40, 0, 0]))).toBe(0)
    expect(sharedFootprint(box, moved(box, [0, 50, 0]))).toBe(0)
    expect(sharedFootprint(box, moved(box, [60, 70, 0]))).toBe(0)
    expect(hull(box, moved(box, [5, -5, 7]))).toEqual({ x1: 10, y1: 15, z1: 30, x2: 55, y2: 70, z2: 97 })
    expect(volumeMm3([2, 3, 4])).toBe(24)
  })
})

const opening = (
  face: PackOpening['face'],
  fromMm: readonly [number, number],
  toMm: readonly [number, number],
): PackOpening => ({
  id: `by ${face}`,
  face,
  fromMm,
  toMm,
  door: 'door',
  opensFromInside: true,
})

describe('a bay made ready for the search', () => {
  it('has its openings as windows on an axis', () => {
    const openings = [opening('x-', [1, 2], [30, 40]), opening('y+', [5, 6], [70, 80]), opening('z+', [9, 8], [90, 70])]
    const { windows } = bayModelOf(plainBay('bay', [0, 0, 0], [100, 90, 80], { openings }), 3)
    const plain = windows.map(({ axis, outward, aLow, aHigh, bLow, bHigh }) => [
      axis,
      outward,
      aLow,
      aHigh,
      bLow,
      bHigh,
    ])
    expect(plain).toEqual([
      [0, -1, 1, 30, 2, 40],
      [1, 1, 5, 70, 6, 80],
      [2, 1, 9, 90, 8, 70],
    ])
    expect(windows[0]).toMatchObject({ id: 'by x-', face: 'x-', door: 'door', opensFromInside: true })
  })

  it('knows where openings begin and end along its floor, once each and not at its own ends', () => {
    const openings = [
      opening('x-', [10, 0], [60, 80]),
      opening('y+', [20, 5], [100, 80]),
      opening('z+', [20, 0], [70, 60]),
    ]
    const bay = bayModelOf(plainBay('bay', [0, 0, 0], [100, 90, 80], { openings }), 0)
    expect(bay.windowXs.toSorted((a, b) => a - b)).toEqual([20, 70])
    expect(bay.windowYs.toSorted((a, b) => a - b)).toEqual([10, 60])
  })

  it('has its leaning walls cut into level steps as deep as the wall anywhere within the step, and counts what is left', () => {
    const lean = (face: 'x-' | 'x+' | 'y-' | 'y+', insetFloorMm: number, insetTopMm: number, heightMm = 120) => {
      const slopes = [{ face, insetFloorMm, insetTopMm }]
      const bay = bayModelOf(plainBay('bay', [0, 0, 0], [300, 200, heightMm], { slopes }), 0)
      const steps = bay.solids.map(({ box: { x1, y1, z1, x2, y2, z2 } }) => [x1, y1, z1, x2, y2, z2])
      return { steps, freeMm3: bay.freeMm3, solids: bay.solids }
    }
    // Two steps of 60 mm; the wall leans in by 0 at the floor, 25 half way, 50 at the top.
    const back = lean('x-', 0, 50)
    expect(back.steps).toEqual([
      [0, 0, 0, 25, 200, 60],
      [0, 0, 60, 50, 200, 120],
    ])
    expect(back.freeMm3).toBe(300 * 200 * 120 - 25 * 200 * 60 - 50 * 200 * 60)
    expect(back.solids.map(({ supports, face }) => [supports, face])).toEqual([
      [false, 'x-'],
      [false, 'x-'],
    ])
    expect(lean('x+', 0, 50).steps).toEqual([
      [275, 0, 0, 300, 200, 60],
      [250, 0, 60, 300, 200, 120],
    ])
    expect(lean('y-', 51, 0).steps).toEqual([
      [0, 0, 0, 300, 51, 60],
      // 25.5 mm half way, rounded up.
      [0, 0, 60, 300, 26, 120],
    ])
    expect(lean('y+', 40, 40).steps).toEqual([[0, 160, 0, 300, 200, 120]])
    expect(lean('x-', 0, 0).steps).toEqual([])
    // 121 mm make three steps that end at 40, 80 and 121 mm.
    expect(lean('x-', 0, 121, 121).steps.map((step) => [step[3], step[5]])).toEqual([
      [40, 40],
      [80, 80],
      [121, 121],
    ])
    const full = plainBay('full', [0, 0, 0], [10, 10, 10], {
      obstacles: [{ label: 'tank', atMm: [0, 0, 0], sizeMm: [10, 10, 10] }],
    })
    expect(bayModelOf(full, 0).freeMm3).toBe(1)
  })
})

describe('a layout told to the outside', () => {
  const cube: Vec3 = [100, 100, 100]
  const at = (unitId: string, bayId: string, atMm: Vec3): Placement => ({
    unitId,
    bayId,
    atMm,
    sizeMm: cube,
    edges: [0, 1, 2],
  })
  const bin: PackBin = plainBin('crate', cube, [90, 90, 90])
  const night: PackNight = plainNight('n', { states: { lamp: 'in-use', quilt: 'bed' } })
  const tunnel = (change: Partial<PackBay> = {}): PackBay =>
    plainBay('tunnel', [0, 0, 0], [600, 100, 200], { openings: [opening('x-', [0, 0], [100, 200])], ...change })
  const pieces = [
    plainPiece('lamp', [50, 50, 50], { binId: 'crate', massG: 300 }),
    plainPiece('rope', [50, 50, 50], { binId: 'crate', massG: 200 }),
    plainPiece('a', cube, { massG: 1000, uses: { drive: 2, bed: 1 } }),
    plainPiece('b', cube, { massG: 2000, uses: { drive: 3, bed: 0.5 } }),
    plainPiece('c', cube, { massG: 4000 }),
    plainPiece('quilt', cube),
  ]
  const scenes = (bay: PackBay, on: PackNight | null) =>
    sceneOf(
      packModelOf(plainInput([bay, plainBay('spare', [2000, 0, 0], cube)], pieces, { bins: [bin], nights: [night] })),
      on,
    )
  const placements = [
    at('c', 'tunnel', [0, 0, 0]),
    at('b', 'tunnel', [0, 0, 100]),
    at('crate', 'tunnel', [100, 0, 0]),
    at('a', 'tunnel', [300, 0, 0]),
  ]

  it('names placements in the order of units and what is away, out of a bin too', () => {
    const scene = scenes(tunnel(), night)
    const layout = layoutOf(scene, stateFrom(scene, { placements, away: [] }))
    expect(layout.placements.map(({ unitId }) => unitId)).toEqual(['crate', 'a', 'b', 'c'])
    expect(layout.placements[2]).toEqual(at('b', 'tunnel', [0, 0, 100]))
    expect(layout.away).toEqual([
      { unitId: 'quilt', state: 'bed' },
      { unitId: 'lamp', state: 'in-use' },
    ])
    const day = scenes(tunnel(), null)
    expect(layoutOf(day, stateFrom(day, { placements, away: [] })).away).toEqual([])
  })

  it('is read back without judgement, unknown units and bays left out', () => {
    const scene = scenes(tunnel(), null)
    const odd = [...placements, at('nobody', 'tunnel', [500, 0, 0]), at('quilt', 'nowhere', [0, 0, 0])]
    const state = stateFrom(scene, { placements: odd, away: [] })
    expect(layoutOf(scene, state).placements).toHaveLength(4)
    const where = new Map(scene.model.units.map(({ id, index }) => [id, state.where[index]]))
    expect([where.get('a'), where.get('quilt')]).toEqual([0, -1])
    // The crate with lamp and rope weighs 500 + 300 + 200.
    expect(state.bays[0]?.massG).toBe(1000 + 2000 + 4000 + 1000)
  })

  it('tells what must go before each thing, outermost first, with its mass', () => {
    const scene = scenes(tunnel(), null)
    const told = reachOfState(scene, stateFrom(scene, { placements, away: [] }))
    const of = (unitId: string) => told.find((each) => each.unitId === unitId)
    expect(of('a')).toEqual({
      unitId: 'a',
      openingId: 'by x-',
      // Outermost by the hatch at x 0: b and c end there, b lies higher; then the crate.
      blockedBy: ['b', 'c', 'crate'],
      handledG: 2000 + 4000 + 1000,
      fromSeatOrBed: false,
      liftNeeded: false,
    })
    expect(of('crate')?.blockedBy).toEqual(['b', 'c'])
    expect(of('c')?.blockedBy).toEqual(['b'])
    expect(of('b')).toMatchObject({ blockedBy: [], handledG: 0 })
    // By day a twice past three things, b thrice past none; the rest is not wanted.
    expect(weightedReach(scene, told)).toBe(2 * 3)
  })

  it('tells by night the lighter bin, and whether the bay is reached from the bed', () => {
    const scene = scenes(tunnel({ reachFromBed: true }), night)
    const told = reachOfState(scene, stateFrom(scene, { placements, away: [] }))
    expect(told.find(({ unitId }) => unitId === 'a')).toMatchObject({
      handledG: 2000 + 4000 + 700,
      fromSeatOrBed: true,
    })
    expect(weightedReach(scene, told)).toBe(3)
    const seat = scenes(tunnel({ reachFromBed: false, reachFromDriverSeat: true }), night)
    expect(reachOfState(seat, stateFrom(seat, { placements, away: [] }))[0]?.fromSeatOrBed).toBe(false)
    const day = scenes(tunnel({ reachFromBed: false, reachFromDriverSeat: true }), null)
    expect(reachOfState(day, stateFrom(day, { placements, away: [] }))[0]?.fromSeatOrBed).toBe(true)
  })

  it('counts outermost from the face of the opening, whichever it is', () => {
    const order = (face: 'x-' | 'x+' | 'y-' | 'y+' | 'z+', row: readonly Vec3[]): readonly string[] | undefined => {
      const [a, b] = face === 'z+' ? [600, 600] : [600, 600]
      const bay = plainBay('tunnel', [0, 0, 0], [600, 600, 600], { openings: [opening(face, [0, 0], [a, b])] })
      const scene = scenes(bay, null)
      const ids = ['a', 'b', 'c']
      const state = stateFrom(scene, { placements: ids.map((id, k) => at(id, 'tunnel', row[k] ?? cube)), away: [] })
      return reachOfState(scene, state).find(({ unitId }) => unitId === 'a')?.blockedBy
    }
    const line = (axis: 0 | 1 | 2, places: readonly number[]): readonly Vec3[] =>
      places.map((far) => [axis === 0 ? far : 0, axis === 1 ? far : 0, axis === 2 ? far : 0])
    expect(order('x-', line(0, [300, 100, 0]))).toEqual(['c', 'b'])
    expect(order('x+', line(0, [0, 100, 300]))).toEqual(['c', 'b'])
    expect(order('y-', line(1, [300, 100, 0]))).toEqual(['c', 'b'])
    expect(order('y+', line(1, [0, 100, 300]))).toEqual(['c', 'b'])
    expect(order('z+', line(2, [0, 100, 300]))).toEqual(['c', 'b'])
  })

  it('needs a lift for what comes straight out of no opening, and has none where there is none', () => {
    const low = plainBay('tunnel', [0, 0, 0], [600, 100, 200], { openings: [opening('x-', [0, 50], [100, 200])] })
    const of = (bay: PackBay) => {
      const scene = scenes(bay, null)
      return reachOfState(
        scene,
        stateFrom(scene, { placements: [at('a', 'tunnel', [200, 0, 0]), at('b', 'tunnel', [300, 0, 0])], away: [] }),
      )[0]
    }
    expect(of(low)).toMatchObject({ openingId: 'by x-', blockedBy: [], liftNeeded: true })
    expect(of({ ...low, openings: [] })).toMatchObject({ openingId: null, blockedBy: ['b'], liftNeeded: true })
  })

  it('knows the edges of a placed size', () => {
    const [unit] = packModelOf(plainInput([tunnel()], [plainPiece('box', [300, 200, 100])])).units
    if (unit === undefined) throw new Error('no unit')
    expect(edgesFor(unit, [100, 300, 200])).toEqual([2, 0, 1])
    expect(edgesFor(unit, [100, 300, 201])).toBeNull()
  })
})
