/** What a unit is: a bin with its pieces or a loose piece, and what it is like while one layout stands. */
import { describe, expect, it } from 'vitest'
import { HEAVY_G, stateOf, traitsOf, unitsOf } from '../../../shared/packing/units.ts'
import type { PackBin, PackPiece, PackTraits } from '../../../shared/packing/index.ts'
import { plainInput, plainPiece } from '../../support/generators/planted-load.ts'

const bin: PackBin = {
  id: 'crate',
  sizeMm: [400, 300, 200],
  innerMm: [390, 290, 190],
  massG: 1500,
  form: 'rigid',
  squeezeTo01: 1,
  bearsG: 20_000,
  liftLimitG: 20_000,
  lid: true,
  locks: [],
}
const unitsFor = (pieces: readonly PackPiece[], bins: readonly PackBin[] = []) =>
  unitsOf(plainInput([], pieces, { bins }))

const withTraits = (id: string, traits: Partial<PackTraits>, change: Partial<PackPiece> = {}): PackPiece => {
  const plain = plainPiece(id, [100, 100, 100], change)
  return { ...plain, traits: { ...plain.traits, ...traits } }
}
const traitsIn = (pieces: readonly PackPiece[], layout: 'drive' | 'bed' = 'drive', bedding: readonly string[] = []) => {
  const [unit] = unitsFor([], [bin])
  if (unit === undefined) throw new Error('no unit')
  return traitsOf(unit, pieces, layout, new Set(bedding))
}

describe('units', () => {
  it('are the bins in their order, each with its own pieces, then the loose pieces', () => {
    const pieces = [
      plainPiece('loose', [10, 20, 30]),
      plainPiece('cup', [5, 5, 5], { binId: 'box' }),
      plainPiece('lost', [5, 5, 5], { binId: 'no such bin' }),
      plainPiece('pan', [5, 5, 5], { binId: 'crate' }),
      plainPiece('plate', [5, 5, 5], { binId: 'box' }),
    ]
    const units = unitsFor(pieces, [bin, { ...bin, id: 'box' }, { ...bin, id: 'empty' }])
    expect(units.map(({ index, id, pieces: held }) => [index, id, held.map((piece) => piece.id)])).toEqual([
      [0, 'crate', ['pan']],
      [1, 'box', ['cup', 'plate']],
      [2, 'empty', []],
      [3, 'loose', ['loose']],
      [4, 'lost', ['lost']],
    ])
    expect(units.map((unit) => unit.bin?.id ?? null)).toEqual(['crate', 'box', 'empty', null, null])
  })

  it('stand as they may: a bin on its floor, a piece on the edges it allows, one that names none on any', () => {
    const [crate, flask, board] = unitsFor(
      [
        plainPiece('flask', [90, 80, 250], { uprightEdges: [2, 0] }),
        plainPiece('board', [10, 20, 30], { uprightEdges: [] }),
      ],
      [bin],
    )
    expect(crate?.poses.map(({ edges }) => edges)).toEqual([
      [0, 1, 2],
      [1, 0, 2],
    ])
    expect(flask?.poses.map(({ sizeMm }) => sizeMm[2]).toSorted()).toEqual([250, 250, 90, 90])
    expect(board?.poses.map(({ sizeMm }) => sizeMm[2]).toSorted((a, b) => a - b)).toEqual([10, 10, 20, 20, 30, 30])
  })

  it('are pressed if soft: a piece always, a bin only while it is empty', () => {
    const soft = { form: 'soft', squeezeTo01: 0.5 } as const
    const least = (piece: PackPiece | null, held: PackBin | null): readonly number[] | undefined =>
      unitsFor(piece === null ? [] : [piece], held === null ? [] : [held])[0]?.poses[0]?.leastMm
    expect(least(plainPiece('bag', [100, 60, 40], { ...soft, uprightEdges: [2] }), null)).toEqual([50, 30, 20])
    expect(least(plainPiece('box', [100, 60, 40], { squeezeTo01: 0.5, uprightEdges: [2] }), null)).toEqual([
      100, 60, 40,
    ])
    expect(least(null, { ...bin, ...soft })).toEqual([200, 150, 100])
    expect(least(null, { ...bin, squeezeTo01: 0.5 })).toEqual([400, 300, 200])
    expect(least(plainPiece('cup', [5, 5, 5], { binId: 'crate' }), { ...bin, ...soft })).toEqual([400, 300, 200])
    expect(
      unitsFor([plainPiece('bag', [1, 1, 1], soft)], [{ ...bin, form: 'soft' }]).map(({ soft: is }) => is),
    ).toEqual([true, true])
    expect(unitsFor([plainPiece('box', [1, 1, 1])], [bin]).map(({ soft: is }) => is)).toEqual([false, false])
  })

  it('carry what is stated, or anything, and fill what their edges make', () => {
    const lock = { layout: 'drive', bayId: 'boot', atMm: null, sizeMm: null } as const
    const units = unitsFor(
      [plainPiece('a', [10, 20, 30], { bearsG: 500, locks: [lock] }), plainPiece('b', [7, 7, 7])],
      [bin, { ...bin, id: 'frail', bearsG: null, locks: [lock] }],
    )
    expect(units.map(({ bearsG }) => bearsG)).toEqual([20_000, Infinity, 500, Infinity])
    expect(units.map(({ volumeMm3 }) => volumeMm3)).toEqual([24_000_000, 24_000_000, 6000, 343])
    expect(units.map(({ locks }) => locks.length)).toEqual([0, 1, 1, 0])
    expect(units.map(({ sizeMm }) => sizeMm)).toEqual([bin.sizeMm, bin.sizeMm, [10, 20, 30], [7, 7, 7]])
  })
})

describe('what a bin is like', () => {
  it('is the sum of masses and uses of what is in it, the bin itself among the masses', () => {
    const pieces = [
      plainPiece('a', [1, 1, 1], { massG: 300, uses: { drive: 2, bed: 5 } }),
      plainPiece('b', [1, 1, 1], { massG: 40, uses: { drive: 1, bed: 0.5 } }),
    ]
    expect(traitsIn(pieces)).toMatchObject({ massG: 1840, uses: 3, pieceIds: ['a', 'b'] })
    expect(traitsIn(pieces, 'bed').uses).toBe(5.5)
    expect(traitsIn([])).toMatchObject({ massG: 1500, uses: 0, pieceIds: [] })
    const [loose] = unitsFor([plainPiece('a', [1, 1, 1], { massG: 300 })])
    expect(loose && traitsOf(loose, loose.pieces, 'drive', new Set()).massG).toBe(300)
  })

  it('is liquid from a litre in one vessel, not from many small ones', () => {
    expect(traitsIn([withTraits('can', { liquidMl: 1000 })]).liquid).toBe(true)
    expect(traitsIn([withTraits('a', { liquidMl: 999 }), withTraits('b', { liquidMl: 999 })]).liquid).toBe(false)
    expect(traitsIn([withTraits('a', { liquidMl: 5 }), withTraits('b', { liquidMl: 2000 })]).liquid).toBe(true)
    expect(traitsIn([withTraits('b', { liquidMl: 2000 }), withTraits('a', { liquidMl: 5 })]).liquid).toBe(true)
    expect(traitsIn([]).liquid).toBe(false)
  })

  it('is spoilt by liquid where anything in it is: valuables, batteries, what becomes the bed', () => {
    const dry = withTraits('dry', {})
    expect(traitsIn([dry]).spoiltByLiquid).toBe(false)
    expect(traitsIn([dry, withTraits('watch', { valuable: true })]).spoiltByLiquid).toBe(true)
    expect(traitsIn([dry, withTraits('lamp', { lithiumWh: 1 })]).spoiltByLiquid).toBe(true)
    expect(traitsIn([dry], 'drive', ['dry']).spoiltByLiquid).toBe(true)
    expect(traitsIn([dry], 'drive', ['other']).spoiltByLiquid).toBe(false)
  })

  it('freezes at the highest and spoils at the lowest of the temperatures of what is in it', () => {
    const ask = (freezesBelowC: number | null, spoilsAboveC: number | null): PackPiece =>
      withTraits(`${freezesBelowC} ${spoilsAboveC}`, { freezesBelowC, spoilsAboveC })
    const of = (...pieces: readonly PackPiece[]): readonly (number | null)[] => {
      const { freezesBelowC, spoilsAboveC } = traitsIn(pieces)
      return [freezesBelowC, spoilsAboveC]
    }
    expect(of(ask(null, null))).toEqual([null, null])
    expect(of(ask(0, 20), ask(null, null), ask(-5, 8))).toEqual([0, 8])
    expect(of(ask(-5, 8), ask(0, 20))).toEqual([0, 8])
    expect(of(ask(null, null), ask(-2, 7))).toEqual([-2, 7])
  })

  it('is larder, valuable or fuel where anything in it is', () => {
    const dry = withTraits('dry', {})
    const flags = (traits: Partial<PackTraits>): readonly boolean[] => {
      const { larder, valuable, fuel } = traitsIn([dry, withTraits('x', traits)])
      return [larder, valuable, fuel]
    }
    expect(flags({})).toEqual([false, false, false])
    expect(flags({ food: true })).toEqual([true, false, false])
    expect(flags({ scented: true })).toEqual([true, false, false])
    expect(flags({ valuable: true })).toEqual([false, true, false])
    expect(flags({ fuel: true })).toEqual([false, false, true])
  })

  it('may stand outside where there is something in it and all of that may', () => {
    const may = withTraits('may', { mayStandOutside: true })
    expect(traitsIn([may, may]).mayStandOutside).toBe(true)
    expect(traitsIn([may, withTraits('not', {})]).mayStandOutside).toBe(false)
    expect(traitsIn([]).mayStandOutside).toBe(false)
  })

  it('must be held above four kilograms, its own mass among them, or where anything in it must', () => {
    const of = (massG: number, needsRestraint = false): boolean =>
      traitsIn([withTraits('x', { needsRestraint }, { massG })]).mustBeHeld
    expect(of(HEAVY_G - bin.massG)).toBe(false)
    expect(of(HEAVY_G - bin.massG + 1)).toBe(true)
    expect(of(1, true)).toBe(true)
  })

  it('is wanted, kept apart and kept together as all that is in it', () => {
    const found = traitsIn([
      plainPiece('a', [1, 1, 1], { access: ['night', 'morning'], apartFrom: ['x'], belongsWith: ['p'] }),
      plainPiece('b', [1, 1, 1], { access: ['morning', 'evening'], apartFrom: ['x', 'y'], belongsWith: ['q'] }),
    ])
    expect([...found.access].toSorted()).toEqual(['evening', 'morning', 'night'])
    expect([...found.apartFrom].toSorted()).toEqual(['x', 'y'])
    expect([...found.belongsWith].toSorted()).toEqual(['p', 'q'])
  })
})

describe('a state of a night', () => {
  it('is stored where the night does not say', () => {
    expect(stateOf({ lamp: 'in-use' }, 'lamp')).toBe('in-use')
    expect(stateOf({ lamp: 'in-use' }, 'rope')).toBe('stored')
  })
})
