/** Reach and passage in small bays against their definitions, with openings on every face, parts in the way and leaning walls. */
import { describe, expect, it } from 'vitest'
import type { BayModel } from '../../../shared/packing/bay-model.ts'
import { bayModelOf } from '../../../shared/packing/bay-model.ts'
import { boxAt, overlaps } from '../../../shared/packing/geometry.ts'
import type { Box } from '../../../shared/packing/geometry.ts'
import type { Face, PackBay, PackOpening, Vec3 } from '../../../shared/packing/index.ts'
import { loadingOrder } from '../../../shared/packing/loading-order.ts'
import { freeWindow, peeled } from '../../../shared/packing/passage.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { reachesIn } from '../../../shared/packing/reach.ts'
import { plainBay } from '../../support/generators/planted-load.ts'
import type { Solid } from '../../support/oracle/boxes.ts'
import { barredIn, canLeave } from '../../support/oracle/reach.ts'

const CASES = 300
const FACES: readonly Face[] = ['x-', 'x+', 'y-', 'y+', 'z+']
const SIZE: Vec3 = [12, 10, 8]
/** More boxes than a machine word has bits. */
const MANY = 70

type Random = () => number

const pickFrom = (random: Random, low: number, high: number): number => low + Math.floor(random() * (high - low + 1))

const openingOf = (random: Random, at: number): PackOpening => {
  const face = FACES[pickFrom(random, 0, 4)] ?? 'x-'
  const edges = face.startsWith('x') ? [SIZE[1], SIZE[2]] : face.startsWith('y') ? [SIZE[0], SIZE[2]] : SIZE
  const range = (edge: number): readonly [number, number] => {
    if (random() < 0.5) return [0, edge]
    const low = pickFrom(random, 0, 3)
    return [low, pickFrom(random, low + 3, edge)]
  }
  const [a, b] = [range(edges[0] ?? 0), range(edges[1] ?? 0)]
  const ends = { fromMm: [a[0], b[0]] as const, toMm: [a[1], b[1]] as const }
  return { id: `opening-${at}`, face, ...ends, door: `door-${at}`, opensFromInside: random() < 0.5 }
}

const bayFor = (random: Random): PackBay => {
  const openings = Array.from({ length: pickFrom(random, 0, 3) }, (_, at) => openingOf(random, at))
  const obstacles = Array.from({ length: pickFrom(random, 0, 1) }, () => ({
    label: 'arch',
    atMm: [pickFrom(random, 0, 9), pickFrom(random, 0, 7), 0] as const,
    sizeMm: [3, 2, pickFrom(random, 1, 4)] as const,
  }))
  const slopes =
    random() < 0.3 ? [{ face: random() < 0.5 ? ('x-' as const) : ('y+' as const), insetFloorMm: 0, insetTopMm: 3 }] : []
  return plainBay('bay', [0, 0, 0], SIZE, { openings, obstacles, slopes })
}

/** Boxes on the floor or on one another, some in the air: reach asks only where they are. */
const fill = (random: Random, bay: BayModel, wanted: number): readonly Box[] => {
  const boxes: Box[] = []
  for (let tried = 0; tried < wanted * 6 && boxes.length < wanted; tried++) {
    const size: Vec3 = [pickFrom(random, 1, 5), pickFrom(random, 1, 5), pickFrom(random, 1, 4)]
    const under = boxes[Math.floor(random() * boxes.length * 2)]
    const at = (axis: 0 | 1 | 2): number => pickFrom(random, 0, SIZE[axis] - size[axis])
    const z = under === undefined ? (random() < 0.8 ? 0 : at(2)) : under.z2
    if (z + size[2] > SIZE[2]) continue
    const box = boxAt([at(0), at(1), z], size)
    if (boxes.some((other) => overlaps(other, box)) || bay.solids.some((solid) => overlaps(solid.box, box))) continue
    boxes.push(box)
  }
  return boxes
}

const solidOfBox = (box: Box): Solid => ({ lo: [box.x1, box.y1, box.z1], hi: [box.x2, box.y2, box.z2] })
const partsOf = (bay: BayModel) => bay.solids.map(({ box, face }) => ({ solid: solidOfBox(box), face }))

describe('reach of every box in a bay', () => {
  it(`is by the opening that needs least, with all that goes first, in ${CASES} small bays`, () => {
    const seen = { straight: 0, round: 0, none: 0, many: 0 }
    for (let seed = 1; seed <= CASES; seed++) {
      const random = randomFrom(seed)
      const bay = bayModelOf(bayFor(random), 0)
      const boxes = fill(random, bay, seed % 40 === 0 ? MANY : 7)
      const inside = random() < 0.5
      const told = reachesIn(bay, boxes, inside)
      const expected = barredIn({ bay: bay.bay, parts: partsOf(bay) }, boxes.map(solidOfBox), inside)
      const plain = told.map(({ window, blockers, straight }) => ({ opening: window, before: blockers, straight }))
      expect({ seed, plain }).toEqual({ seed, plain: expected })
      for (const each of expected) {
        if (each.straight) seen.straight++
        else if (each.opening >= 0) seen.round++
        else seen.none++
      }
      if (boxes.length > 32) seen.many++
    }
    expect(Math.min(seen.straight, seen.round, seen.none)).toBeGreaterThan(CASES / 4)
    expect(seen.many).toBeGreaterThan(0)
  })
})

describe('passage out of a bay', () => {
  it(`is open where the definition finds a way, and leaves trapped what no order frees, in ${CASES} small bays`, () => {
    let trappedOnes = 0
    let freed = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const random = randomFrom(seed + CASES)
      const bay = bayModelOf(bayFor(random), 0)
      const boxes = fill(random, bay, 7)
      const one = { bay: bay.bay, parts: partsOf(bay) }
      const leaves = (index: number, left: readonly number[]): boolean => {
        const others = left.filter((each) => each !== index).flatMap((each) => boxes[each] ?? [])
        const box = boxes[index]
        return box !== undefined && canLeave(one, solidOfBox(box), others.map(solidOfBox))
      }
      const all = boxes.map((_, index) => index)
      for (const [index, box] of boxes.entries()) {
        const others = boxes.filter((each) => each !== box)
        const label = `seed ${seed}, box ${index}`
        expect([label, freeWindow(bay, others, box) >= 0]).toEqual([label, leaves(index, all)])
      }
      const { order, trapped } = peeled(bay, boxes)
      let left: readonly number[] = all
      for (const index of order) {
        expect([seed, index, leaves(index, left)]).toEqual([seed, index, true])
        left = left.filter((each) => each !== index)
      }
      expect([seed, trapped.toSorted()]).toEqual([seed, left.toSorted()])
      expect([seed, left.filter((index) => leaves(index, left))]).toEqual([seed, []])
      trappedOnes += trapped.length
      freed += order.length
    }
    expect(trappedOnes).toBeGreaterThan(CASES / 4)
    expect(freed).toBeGreaterThan(CASES)
  })
})

describe('the loading order', () => {
  const back = (id: string, originMm: Vec3, index: number): BayModel => {
    const whole = { fromMm: [0, 0], toMm: [100, 100] } as const
    const opening: PackOpening = { id: 'back', face: 'x-', ...whole, door: 'back', opensFromInside: false }
    return bayModelOf(plainBay(id, originMm, [300, 100, 100], { openings: [opening] }), index)
  }
  const boot = back('boot', [0, 0, 200], 0)
  const well = back('well', [0, 0, 0], 1)

  it('puts in first what lies deepest, and below what lies above', () => {
    const load = (id: string, atMm: Vec3, sizeMm: Vec3) => ({ id, bay: boot, box: boxAt(atMm, sizeMm) })
    const front = load('front', [0, 0, 0], [100, 100, 100])
    const deep = load('deep', [200, 0, 0], [100, 100, 60])
    const above = load('above', [200, 0, 60], [100, 100, 40])
    for (const loads of [
      [front, deep, above],
      [above, front, deep],
      [deep, above, front],
    ])
      expect(loadingOrder(loads)).toEqual(['deep', 'above', 'front'])
  })

  it('fills wells under the floor before the bays above them', () => {
    const loads = [
      { id: 'up', bay: boot, box: boxAt([0, 0, 0], [100, 100, 100]) },
      { id: 'down', bay: well, box: boxAt([0, 0, 0], [100, 100, 100]) },
    ]
    expect(loadingOrder(loads)).toEqual(['down', 'up'])
    expect(loadingOrder(loads.toReversed())).toEqual(['down', 'up'])
  })

  it('names what nothing frees first, from below', () => {
    const shut = bayModelOf(plainBay('shut', [0, 0, 0], [300, 100, 100], { openings: [] }), 0)
    const loads = [
      { id: 'upper', bay: shut, box: boxAt([0, 0, 50], [100, 100, 50]) },
      { id: 'lower', bay: shut, box: boxAt([0, 0, 0], [100, 100, 50]) },
    ]
    expect(loadingOrder(loads)).toEqual(['lower', 'upper'])
  })

  it('is empty for no load', () => {
    expect(loadingOrder([])).toEqual([])
  })
})
