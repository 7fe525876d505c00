/** The bedding that a night may choose from, and how it hangs on the load. */
import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../shared/document/index.ts'
import type { Piece, Trip } from '../../../shared/document/index.ts'
import { choicesOf } from '../../../shared/plan/index.ts'
import { planOf, sample, withNight } from './trips.ts'

const trip = sample('bats-by-the-quarry')
const plan = planOf(trip, true)
const [night] = plan.nights
if (night === undefined) throw new Error('the sample has a night')
const chosen = trip.nights[0]?.beddingPieceIds ?? []

const withPieces = (change: (piece: Piece) => Piece): Trip => ({
  ...trip,
  kit: { ...trip.kit, pieces: trip.kit.pieces.map(change) },
})

describe('the bedding sets of a night', () => {
  it('begin with what is chosen, and its sleepers lie under the same', () => {
    const [first] = night.beddingSets
    expect(first?.pieceIds).toEqual(expect.arrayContaining([...chosen]))
    expect(first?.aboard).toBe(true)
    for (const { id, bedding } of night.input.sleepers)
      expect(first?.bySleeper.find(({ sleeperId }) => sleeperId === id)?.bedding).toEqual(bedding)
  })

  it('put a bag from home in the place of its owner’s bag, and mark that it is not aboard', () => {
    const winter = night.beddingSets.find(({ pieceIds }) => pieceIds?.includes('winter-bag'))
    expect(winter?.pieceIds).not.toContain('bag-jorin')
    expect(winter?.aboard).toBe(false)
    const clo = (id: string | undefined): number =>
      night.beddingSets.find((set) => set.id === id)?.bySleeper.find(({ sleeperId }) => sleeperId === 'jorin')?.bedding
        .coverClo ?? 0
    expect(clo(winter?.id)).toBeGreaterThan(clo(night.beddingSets[0]?.id))
  })

  it('leave nobody without a cover who had one', () => {
    for (const { bySleeper } of night.beddingSets)
      for (const { bedding } of bySleeper) expect(bedding.coverClo).toBeGreaterThan(1)
  })

  it('take room and moves as the load has them', () => {
    const moves = night.beddingSets.map(({ moves: count }) => count)
    const volumes = night.beddingSets.map(({ volumeMm3 }) => volumeMm3)
    const without = night.beddingSets.findIndex(({ pieceIds }) => pieceIds?.includes('wool-blanket') === false)
    expect(without).toBeGreaterThan(0)
    expect(moves[without]).toBeLessThan(moves[0] ?? 0)
    expect(volumes[without]).toBeLessThan(volumes[0] ?? 0)
    const behind = plan.packing.driveReach.filter(({ unitId }) => chosen.includes(unitId))
    const before = new Set(behind.flatMap(({ blockedBy }) => blockedBy))
    expect(moves[0]).toBe(new Set([...behind.map(({ unitId }) => unitId), ...before]).size)
  })

  it('offer nothing from home that the load has no room for', () => {
    const huge = planOf(
      withPieces((piece) => (piece.id === 'winter-bag' ? { ...piece, sizeMm: [3000, 3000, 3000] } : piece)),
      true,
    )
    expect(huge.nights[0]?.beddingSets.some(({ pieceIds }) => pieceIds?.includes('winter-bag'))).toBe(false)
  })

  it('are none where nothing else is owned, and the search then names no set', () => {
    const alone = planOf(
      {
        ...withPieces((piece) => piece),
        travellers: trip.travellers.slice(0, 1),
        kit: {
          ...trip.kit,
          pieces: trip.kit.pieces.filter(({ bedding, id }) => bedding === undefined || id === 'bag-imke'),
        },
        nights: trip.nights.map((one) => ({ ...one, beddingPieceIds: ['bag-imke'] })),
      },
      true,
    )
    expect(alone.nights[0]?.beddingSets).toEqual([])
    expect(alone.nights[0]?.search?.front.every(({ decisions }) => decisions.beddingSetId === undefined)).toBe(true)
  })
})

describe('the search over bedding', () => {
  it('tells each plan’s set, its handlings and its room, and a plan may ask for another set than the chosen', () => {
    const front = plan.nights.flatMap(({ search }) => search?.front ?? [])
    const ids = new Set(plan.nights.flatMap(({ beddingSets }) => beddingSets.map(({ id }) => id)))
    for (const { decisions, beddingVolumeMm3 } of front) {
      expect(ids).toContain(decisions.beddingSetId)
      expect(beddingVolumeMm3).toBeGreaterThan(0)
    }
    expect(new Set(front.map(({ decisions }) => decisions.beddingSetId)).size).toBeGreaterThan(1)
  })

  it('is taken over by one edit that also brings what was at home, and undoing is one step', () => {
    const set = night.beddingSets.find(({ aboard }) => aboard === false)
    const taken = applyEdit(trip, {
      kind: 'set-night',
      nightId: night.nightId,
      decision: { covers: true, beddingPieceIds: set?.pieceIds ?? [] },
    })
    expect(taken.ok).toBe(true)
    if (!taken.ok) return
    const next = planOf(taken.value)
    expect(taken.value.kit.pieces.find(({ id }) => id === 'winter-bag')?.spare).toBe(false)
    expect(next.nights[0]?.input.decisions.covers).toBe(true)
    expect(next.packingInput.pieces.some(({ id }) => id === 'winter-bag')).toBe(true)
    expect(next.nights[0]?.beddingSets[0]?.id).toBe(set?.id)
  })

  it('never sends anyone home in the night for bedding that is not aboard', () => {
    const cold = planOf(
      withNight(trip, 0, (one) => ({ ...one, weather: { ...one.weather, lowC: -25, highC: -15 } })),
      true,
    )
    const asked = cold.nights.flatMap(({ faults, beddingSets }) =>
      faults
        .flatMap(({ advice }) => advice?.actions ?? [])
        .flatMap((action) => (action.code === 'warmer-bedding' ? [action.setId] : []))
        .map((setId) => beddingSets.find(({ id }) => id === setId)?.aboard),
    )
    expect(asked.filter((aboard) => aboard !== true)).toEqual([])
  })

  it('hands the same choices to the search and to the fault nights', () => {
    const given = choicesOf(night)
    expect(given.beddingSets).toBe(night.beddingSets)
    expect(given.decisions.beddingSetId).toBe(night.beddingSets[0]?.id)
  })
})
