/** The sets of bedding that a night may choose from, by hand: which there are, in what order, and what each asks of the load. */
import { describe, expect, it } from 'vitest'
import type { Night, Piece, Trip } from '../../../shared/document/index.ts'
import { beddingSets } from '../../../shared/plan/inputs/bedding-sets.ts'
import type { BeddingRoom } from '../../../shared/plan/inputs/bedding-sets.ts'
import { cardsTrip } from '../../support/cards-plan.ts'

const base = cardsTrip()
const [someNight] = base.nights
const [somePiece] = base.kit.pieces
if (someNight === undefined || somePiece === undefined) throw new Error('the trip has a night and a piece')

const piece = (id: string, bedding: Piece['bedding'], over: Partial<Piece> = {}): Piece => ({
  ...somePiece,
  id,
  name: id,
  sizeMm: [300, 200, 150],
  squeezeTo01: 1,
  spare: false,
  ...(bedding === undefined ? {} : { bedding }),
  ...over,
})
const bag = piece('bag', { kind: 'bag', clo: 3, forTravellerId: 'ada' })
const quilt = piece('quilt', { kind: 'quilt', clo: 2 })
const mat = piece('mat', { kind: 'mat', matM2KPerW: 0.6 })
const pillow = piece('pillow', { kind: 'pillow' })
// 12 litres as far as it lets itself be squeezed, and 9.
const warmBag = piece(
  'warm-bag',
  { kind: 'bag', clo: 5, forTravellerId: 'ada' },
  { spare: true, sizeMm: [400, 300, 200], squeezeTo01: 0.5 },
)
const blanket = piece('blanket', { kind: 'blanket', clo: 1 }, { spare: true })
const ALL = [bag, quilt, mat, pillow, warmBag, blanket]

const EMPTY: BeddingRoom['packing'] = { units: [], drive: { placements: [], away: [] }, driveReach: [] }
const setsOf = (
  chosen: readonly string[],
  over: Partial<BeddingRoom> = {},
  pieces: readonly Piece[] = ALL,
  travellers: Trip['travellers'] = base.travellers.slice(0, 1),
) => {
  const night: Night = { ...someNight, beddingPieceIds: chosen }
  const trip: Trip = { ...base, travellers, nights: [night], kit: { ...base.kit, pieces: [...pieces, somePiece] } }
  return beddingSets(trip, night, { packing: EMPTY, freeMm3: Infinity, ...over })
}
const idsOf = (sets: ReturnType<typeof setsOf>) => sets.map(({ id }) => id)

describe('the sets', () => {
  it('are the chosen one, all aboard, all that is owned, and one thing more or less', () => {
    // The warm bag takes the place of its owner's bag; a pillow covers nobody and is no choice.
    expect(idsOf(setsOf(['bag', 'mat']))).toEqual([
      'bag+mat',
      'bag+mat+quilt',
      'blanket+mat+quilt+warm-bag',
      'mat+warm-bag',
      'bag+blanket+mat',
    ])
    expect(setsOf(['bag', 'mat']).map(({ aboard }) => aboard)).toEqual([true, true, false, false, false])
  })

  it('keep the bag of another, and a bag that is nobody’s', () => {
    const others = [
      bag,
      piece('his', { kind: 'bag', clo: 3, forTravellerId: 'bo' }),
      piece('any', { kind: 'bag', clo: 3 }),
      warmBag,
    ]
    expect(idsOf(setsOf(['bag', 'his', 'any'], {}, others, base.travellers))).toContain('any+his+warm-bag')
    const added = [bag, piece('any', { kind: 'bag', clo: 3 }, { spare: true })]
    expect(idsOf(setsOf(['bag'], {}, added))).toEqual(['bag', 'any+bag'])
  })

  it('leave nobody without a cover who had one', () => {
    expect(idsOf(setsOf(['bag', 'quilt'], {}, [bag, quilt]))).toEqual(['bag+quilt', 'quilt', 'bag'])
    // The bag is Ada's alone: without the quilt Bo had none.
    expect(idsOf(setsOf(['bag', 'quilt'], {}, [bag, quilt], base.travellers))).toEqual(['bag+quilt', 'quilt'])
    // Where somebody had none already, less may be tried.
    expect(idsOf(setsOf(['bag', 'mat'], {}, [bag, mat], base.travellers))).toEqual(['bag+mat', 'mat'])
  })

  it('bring from home only what finds room by day, squeezed', () => {
    const home = (freeMm3: number) => idsOf(setsOf(['bag', 'mat'], { freeMm3 })).slice(2)
    expect(home(21_000_000)).toEqual(['blanket+mat+quilt+warm-bag', 'mat+warm-bag', 'bag+blanket+mat'])
    expect(home(20_999_999)).toEqual(['mat+warm-bag', 'bag+blanket+mat'])
    expect(home(11_999_999)).toEqual(['bag+blanket+mat'])
    expect(home(8_999_999)).toEqual([])
  })

  it('are eight at the most, and none where there is nothing to choose', () => {
    const many = Array.from({ length: 12 }, (_, index) => piece(`blanket-${index}`, { kind: 'blanket', clo: 1 }))
    expect(setsOf(['bag'], {}, [bag, ...many])).toHaveLength(8)
    expect(setsOf(['bag'], {}, [bag, pillow])).toEqual([])
    expect(setsOf([], {}, [pillow])).toEqual([])
  })

  it('count a mat by what it is worth: one worth nothing is no choice', () => {
    const thin = piece('thin', { kind: 'mat', matM2KPerW: 0 })
    expect(setsOf(['bag'], {}, [bag, thin])).toEqual([])
    expect(idsOf(setsOf(['bag'], {}, [bag, mat]))).toEqual(['bag', 'bag+mat'])
  })

  it('tell what each sleeper lies on and under', () => {
    const [chosen, , , warm] = setsOf(['bag', 'mat'])
    expect(chosen?.bySleeper.map(({ sleeperId }) => sleeperId)).toEqual(['ada'])
    // Sleepwear of 0.7 clo under each.
    expect(chosen?.bySleeper[0]?.bedding).toMatchObject({ coverClo: 3.7, matM2KPerW: 0.6 })
    expect(warm?.bySleeper[0]?.bedding).toMatchObject({ coverClo: 5.7, matM2KPerW: 0.6 })
  })
})

describe('what a set asks of the load', () => {
  const unit = (id: string, ...pieceIds: readonly string[]) => ({
    id,
    kind: 'piece' as const,
    pieceIds,
    sizeMm: [1, 1, 1] as const,
    massG: 1,
  })
  const reach = (unitId: string, ...blockedBy: readonly string[]) => ({
    unitId,
    openingId: 'o',
    blockedBy,
    handledG: 1,
    fromSeatOrBed: false,
    liftNeeded: false,
  })
  const packing: BeddingRoom['packing'] = {
    units: [unit('chest', 'mat', 'pillow'), unit('bag', 'bag')],
    drive: {
      placements: [{ unitId: 'bag', bayId: 'load', atMm: [0, 0, 0], sizeMm: [100, 100, 100], edges: [0, 1, 2] }],
      away: [],
    },
    driveReach: [reach('chest', 'water', 'boots'), reach('bag', 'boots'), reach('lead', 'stove')],
  }
  const sets = setsOf(['bag', 'mat'], { packing })

  it('is every unit handled once: its own, those before them, and what comes from home', () => {
    // Bag and boots, chest and water; then the quilt, in no unit, by itself.
    expect(sets.slice(0, 2).map(({ moves }) => moves)).toEqual([4, 5])
    // Warm bag, chest, water and boots.
    expect(sets.find(({ id }) => id === 'mat+warm-bag')?.moves).toBe(4)
  })

  it('is the room that it takes: as packed, or as stated where it rides in something or is at home', () => {
    // The bag is packed to a litre, the mat in the chest is of 9; the quilt of 9 has no place of its own.
    expect(sets.slice(0, 2).map(({ volumeMm3 }) => volumeMm3)).toEqual([10_000_000, 19_000_000])
    // The warm bag is of 24 litres.
    expect(sets.find(({ id }) => id === 'mat+warm-bag')?.volumeMm3).toBe(33_000_000)
  })
})
