/** What stands on what in one bay: shares of the load, and the rules of a single place, worked out by hand. */
import { describe, expect, it } from 'vitest'
import {
  copyBay,
  emptyBay,
  freeSpaces,
  poseRule,
  put,
  rebuiltBay,
  supportersOf,
} from '../../../shared/packing/bay-state.ts'
import type { BayState } from '../../../shared/packing/bay-state.ts'
import { boxAt } from '../../../shared/packing/geometry.ts'
import type { PackBay, PackBin, PackingInput, PackPiece, Vec3 } from '../../../shared/packing/index.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import type { Scene } from '../../../shared/packing/scene.ts'
import { plainBay, plainBin, plainInput, plainPiece } from '../../support/generators/planted-load.ts'

const SIZE: Vec3 = [600, 400, 400]
const { traits: PLAIN } = plainPiece('', SIZE)
const traits = (change: Partial<PackPiece['traits']>) => ({ traits: { ...PLAIN, ...change } })

type Made = { readonly scene: Scene; readonly bay: BayState; readonly unit: (id: string) => number }

const made = (pieces: readonly PackPiece[], bay: Partial<PackBay> = {}, change: Partial<PackingInput> = {}): Made => {
  const scene = sceneOf(packModelOf(plainInput([plainBay('bay', [0, 0, 0], SIZE, bay)], pieces, change)), null)
  const [model] = scene.model.bays
  if (model === undefined) throw new Error('no bay')
  return { scene, bay: emptyBay(model), unit: (id) => scene.model.units.findIndex((each) => each.id === id) }
}

/** Puts a thing in; its size is that of its piece. */
const lay = ({ scene, bay, unit }: Made, id: string, atMm: Vec3): void => {
  const size = scene.model.units[unit(id)]?.sizeMm ?? SIZE
  put(scene, bay, unit(id), { box: boxAt(atMm, size), edges: [0, 1, 2] })
}
const ruleOf = ({ scene, bay, unit }: Made, id: string, atMm: Vec3): string | null =>
  poseRule(scene, bay, unit(id), boxAt(atMm, scene.model.units[unit(id)]?.sizeMm ?? SIZE))

describe('a stack', () => {
  const three = (): Made =>
    made([
      plainPiece('left', [200, 200, 100], { massG: 5000 }),
      plainPiece('right', [200, 200, 100], { massG: 5000 }),
      plainPiece('bridge', [400, 200, 50], { massG: 1000 }),
      plainPiece('quarter', [100, 100, 50], { massG: 800 }),
    ])

  it('shares its load over what it rests on by area, down to the floor', () => {
    const one = three()
    lay(one, 'left', [0, 0, 0])
    lay(one, 'right', [200, 0, 0])
    // The bridge lies half on each: 500 g.
    lay(one, 'bridge', [0, 0, 100])
    expect(one.bay.loadsG).toEqual([500, 500, 0])
    // 800 g on the bridge alone: all on it, half of it on each below.
    lay(one, 'quarter', [0, 0, 150])
    expect(one.bay.loadsG).toEqual([900, 900, 800, 0])
    expect(one.bay.massG).toBe(11_800)
    expect(one.bay.usedMm3).toBe(4_000_000 + 4_000_000 + 4_000_000 + 500_000)
    expect(one.bay.placed[2]?.supporters).toEqual([
      { slot: 0, share01: 0.5 },
      { slot: 1, share01: 0.5 },
    ])
  })

  it('falls where what it rests on is taken away, and the rest is as if it had never been there', () => {
    const one = three()
    lay(one, 'left', [0, 0, 0])
    lay(one, 'right', [200, 0, 0])
    lay(one, 'bridge', [0, 0, 100])
    lay(one, 'quarter', [0, 0, 150])
    const { bay, fallen } = rebuiltBay(one.scene, one.bay, ({ unit }) => unit !== one.unit('right'))
    expect(fallen).toEqual([one.unit('bridge'), one.unit('quarter')])
    expect(bay.placed.map(({ unit }) => unit)).toEqual([one.unit('left')])
    expect([bay.massG, bay.usedMm3, bay.loadsG]).toEqual([5000, 4_000_000, [0]])
    // Beside it along either wall, and on its top.
    expect(freeSpaces(bay)).toHaveLength(3)
    expect(rebuiltBay(one.scene, one.bay, () => true).bay.loadsG).toEqual([900, 900, 800, 0])
  })

  it('stands only if its whole base is held', () => {
    const one = three()
    lay(one, 'left', [0, 0, 0])
    expect(supportersOf(one.bay, boxAt([50, 50, 0], [100, 100, 100]))).toEqual([])
    expect(supportersOf(one.bay, boxAt([0, 0, 100], [200, 200, 10]))).toEqual([{ slot: 0, share01: 1 }])
    expect(supportersOf(one.bay, boxAt([1, 0, 100], [200, 200, 10]))).toBeNull()
    expect(supportersOf(one.bay, boxAt([0, 0, 99], [200, 200, 10]))).toBeNull()
    expect(ruleOf(one, 'bridge', [0, 0, 100])).toBe('no-room')
  })

  it('may stand on a part of the bay, but not on the steps of a leaning wall', () => {
    const arch = { label: 'arch', atMm: [0, 0, 0] as const, sizeMm: [100, 400, 100] as const }
    const one = made([plainPiece('left', [100, 400, 100]), plainPiece('plank', [200, 400, 50])], { obstacles: [arch] })
    expect(supportersOf(one.bay, boxAt([0, 0, 100], [100, 400, 50]))).toEqual([])
    lay(one, 'left', [100, 0, 0])
    // Half on the arch, half on the thing beside it.
    expect(supportersOf(one.bay, boxAt([0, 0, 100], [200, 400, 50]))).toEqual([{ slot: 0, share01: 0.5 }])
    const slope = { face: 'x-', insetFloorMm: 100, insetTopMm: 0 } as const
    const leaning = made([plainPiece('plank', [40, 40, 40])], { slopes: [slope] })
    // Seven steps of 400/7 mm: the first ends at 57 mm and is 100 mm deep, the next begins there and is less deep.
    expect(supportersOf(leaning.bay, boxAt([88, 0, 57], [12, 40, 40]))).toBeNull()
  })

  it('is not shared with a copy that goes its own way', () => {
    const one = three()
    lay(one, 'left', [0, 0, 0])
    const copy = copyBay(one.bay)
    put(one.scene, copy, one.unit('bridge'), { box: boxAt([200, 200, 0], [400, 200, 50]), edges: [0, 1, 2] })
    expect([one.bay.placed.length, one.bay.loadsG.length, one.bay.massG]).toEqual([1, 1, 5000])
    expect([copy.placed.length, copy.loadsG.length, copy.massG]).toEqual([2, 2, 6000])
  })

  it('keeps the free spaces that were asked for up to date', () => {
    const asked = three()
    freeSpaces(asked.bay)
    const never = three()
    for (const one of [asked, never]) {
      lay(one, 'left', [0, 0, 0])
      lay(one, 'right', [300, 100, 0])
    }
    const sorted = (one: Made) =>
      freeSpaces(one.bay)
        .map((box) => Object.values(box).join())
        .toSorted()
    expect(sorted(asked)).toEqual(sorted(never))
  })
})

describe('the rule of a single place', () => {
  const cube: Vec3 = [100, 100, 100]

  it('is that it lies in the bay, free of parts and of things', () => {
    const arch = { label: 'arch', atMm: [0, 0, 0] as const, sizeMm: [100, 100, 100] as const }
    const one = made([plainPiece('a', cube), plainPiece('b', cube)], { obstacles: [arch] })
    lay(one, 'a', [300, 0, 0])
    expect(ruleOf(one, 'b', [500, 300, 0])).toBeNull()
    for (const outside of [
      [501, 0, 0],
      [200, 301, 0],
      [200, 200, 301],
      [-1, 200, 0],
      [200, -1, 0],
      [200, 200, -1],
    ] as const)
      expect(ruleOf(one, 'b', outside)).toBe('does-not-fit')
    expect(ruleOf(one, 'b', [99, 99, 0])).toBe('no-room')
    expect(ruleOf(one, 'b', [100, 0, 0])).toBeNull()
    expect(ruleOf(one, 'b', [399, 99, 0])).toBe('no-room')
    expect(ruleOf(one, 'b', [400, 0, 0])).toBeNull()
  })

  it('is that the bay carries the mass, to the gram', () => {
    const one = made([plainPiece('a', cube, { massG: 600 }), plainPiece('b', cube, { massG: 400 })], {
      loadLimitG: 1000,
    })
    lay(one, 'a', [0, 0, 0])
    expect(ruleOf(one, 'b', [200, 0, 0])).toBeNull()
    const more = made([plainPiece('a', cube, { massG: 600 }), plainPiece('b', cube, { massG: 401 })], {
      loadLimitG: 1000,
    })
    lay(more, 'a', [0, 0, 0])
    expect(ruleOf(more, 'b', [200, 0, 0])).toBe('bay-load-limit')
  })

  it('is that nothing below carries more than it bears, however far below', () => {
    const pieces = (topG: number, bottomBearsG: number | null): readonly PackPiece[] => [
      plainPiece('bottom', cube, { bearsG: bottomBearsG }),
      plainPiece('middle', cube, { massG: 1000 }),
      plainPiece('top', cube, { massG: topG }),
    ]
    const stack = (topG: number, bottomBearsG: number | null): string | null => {
      const one = made(pieces(topG, bottomBearsG))
      lay(one, 'bottom', [0, 0, 0])
      lay(one, 'middle', [0, 0, 100])
      return ruleOf(one, 'top', [0, 0, 200])
    }
    expect(stack(500, 1500)).toBeNull()
    expect(stack(501, 1500)).toBe('load-on-top')
    expect(stack(90_000, null)).toBeNull()
    expect(stack(1, 0)).toBe('load-on-top')
  })

  it('is that a heavy thing stays below the seat backs where no net, partition or lid holds it', () => {
    const vehicle = { ...plainInput([], []).vehicle, seatBackHeightMm: 700 }
    const rule = (massG: number, bay: Partial<PackBay>): string | null =>
      ruleOf(made([plainPiece('a', cube, { massG })], bay, { vehicle }), 'a', [0, 0, 0])
    // The bay's floor at 601 mm and 100 mm of height: 1 mm above the backs.
    const high = { originMm: [0, 0, 601], restraint: 'strap' } as const
    expect(rule(4001, high)).toBe('above-seat-back')
    expect(rule(4000, high)).toBeNull()
    expect(rule(4001, { ...high, originMm: [0, 0, 600] })).toBeNull()
    for (const restraint of ['barrier', 'net', 'lid'] as const) expect(rule(4001, { ...high, restraint })).toBeNull()
    for (const restraint of ['belt', 'wedge', 'none'] as const)
      expect(rule(4001, { ...high, restraint })).toBe('above-seat-back')
  })

  it('is that things kept apart are in different bays, whichever of them says so, in a bin or not', () => {
    const crate: PackBin = plainBin('crate', cube, [90, 90, 90])
    const rule = (first: Partial<PackPiece>, second: Partial<PackPiece>): string | null => {
      const pieces = [plainPiece('soap', cube, first), plainPiece('tea', cube, second)]
      const one = made(pieces, {}, { bins: [crate] })
      lay(one, first.binId ?? 'soap', [0, 0, 0])
      return ruleOf(one, second.binId ?? 'tea', [400, 0, 0])
    }
    expect(rule({}, {})).toBeNull()
    expect(rule({ apartFrom: ['tea'] }, {})).toBe('apart')
    expect(rule({}, { apartFrom: ['soap'] })).toBe('apart')
    expect(rule({}, { apartFrom: ['salt'] })).toBeNull()
    expect(rule({ apartFrom: ['tea'] }, { binId: 'crate' })).toBe('apart')
    expect(rule({ binId: 'crate', apartFrom: ['tea'] }, {})).toBe('apart')
    expect(rule({ binId: 'crate' }, { apartFrom: ['crate'] })).toBe('apart')
  })

  it('is that a litre of liquid is over nothing that it would spoil, however much is between', () => {
    const pieces = [
      plainPiece('can', cube, traits({ liquidMl: 1000 })),
      plainPiece('cup', cube, traits({ liquidMl: 999 })),
      plainPiece('maps', cube, traits({ valuable: true })),
      plainPiece('cells', cube, traits({ lithiumWh: 1 })),
      plainPiece('tray', cube),
    ]
    const over = (upper: string, lower: string, between: boolean, x = 0): string | null => {
      const one = made(pieces)
      lay(one, lower, [0, 0, 0])
      if (between) lay(one, 'tray', [0, 0, 100])
      return ruleOf(one, upper, x === 0 ? [0, 0, between ? 200 : 100] : [x, 0, 0])
    }
    expect(over('can', 'maps', false)).toBe('liquid-above')
    expect(over('can', 'cells', false)).toBe('liquid-above')
    expect(over('can', 'maps', true)).toBe('liquid-above')
    expect(over('cup', 'maps', false)).toBeNull()
    expect(over('maps', 'can', false)).toBeNull()
    expect(over('can', 'maps', false, 100)).toBeNull()
    expect(over('can', 'tray', false)).toBeNull()
    expect(over('can', 'cup', true)).toBeNull()
  })

  it('is that a liquid stands on nothing that leans on what it would spoil, even beside it', () => {
    const pieces = (kind: Partial<PackPiece['traits']>): readonly PackPiece[] => [
      plainPiece('maps', cube, traits(kind)),
      plainPiece('block', cube),
      plainPiece('board', [200, 100, 20]),
      plainPiece('can', cube, traits({ liquidMl: 1000 })),
    ]
    const rule = (kind: Partial<PackPiece['traits']>): string | null => {
      const one = made(pieces(kind))
      lay(one, 'block', [0, 0, 0])
      lay(one, 'maps', [100, 0, 0])
      lay(one, 'board', [0, 0, 100])
      // Over the block alone, but the board carries it to the maps.
      return ruleOf(one, 'can', [0, 0, 120])
    }
    expect(rule({ valuable: true })).toBe('liquid-above')
    expect(rule({})).toBeNull()
  })

  it('is that what a liquid would spoil goes under none', () => {
    const shelf = { label: 'shelf', atMm: [0, 0, 150] as const, sizeMm: [200, 400, 10] as const }
    const pieces = [
      plainPiece('can', cube, traits({ liquidMl: 1000 })),
      plainPiece('maps', cube, traits({ valuable: true })),
    ]
    const one = made(pieces, { obstacles: [shelf] })
    lay(one, 'can', [0, 0, 160])
    expect(ruleOf(one, 'maps', [0, 0, 0])).toBe('liquid-above')
    expect(ruleOf(one, 'maps', [99, 99, 0])).toBe('liquid-above')
    expect(ruleOf(one, 'maps', [100, 0, 0])).toBeNull()
    const over = made(pieces, { obstacles: [shelf] })
    lay(over, 'maps', [0, 0, 0])
    expect(ruleOf(over, 'can', [0, 0, 160])).toBe('liquid-above')
  })
})
