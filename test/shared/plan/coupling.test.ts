/** The coupling: what one engine finds changes what the others do. */
import { describe, expect, it } from 'vitest'
import type { Trip } from '../../../shared/document/index.ts'
import { codes, planOf, sample, withNight } from './trips.ts'

/** Done at home, or only if something happens. */
const ASIDE: ReadonlySet<string> = new Set(['before-leaving', 'back-home', 'in-the-night'])

const trip = sample('bats-by-the-quarry')
const plan = planOf(trip)
const [night] = trip.nights
const firstNightId = night?.id ?? ''

describe('the plan of the metric sample', () => {
  it('places every piece in both layouts', () => {
    expect(plan.packing.driveUnplaced).toEqual([])
    expect(plan.packing.nights.flatMap(({ unplaced }) => unplaced)).toEqual([])
  })

  it('holds', () => {
    expect(codes(plan, 'shortfall')).toEqual([])
    expect(plan.verdict.holds).toBe(true)
  })

  it('turns each move of the changeover into a step before dark, in order, with both places', () => {
    const moves = plan.packing.nights[0]?.changeover.moves ?? []
    const steps = plan.checklist.steps.filter((step) => step.ruleId === 'move-dusk' && step.nightId === firstNightId)
    expect(moves.length).toBeGreaterThan(0)
    expect(steps).toHaveLength(moves.length)
    for (const { params } of steps)
      expect(params['from'] !== params['to'] || params['spot'] !== '', JSON.stringify(params)).toBe(true)
    const places = steps.map(({ key }) => plan.checklist.steps.findIndex((step) => step.key === key))
    expect(places).toEqual(places.toSorted((a, b) => a - b))
  })

  it('turns each piece that leaves its bin for the night into a step once its bin stands free, and back in the morning', () => {
    for (const [when, way] of [
      ['dusk', 'changeover'],
      ['dawn', 'changeback'],
    ] as const) {
      const { moves, binMoves = [] } = plan.packing.nights[0]?.[way] ?? { moves: [] }
      expect(binMoves.length).toBeGreaterThan(0)
      const steps = plan.checklist.steps.filter(
        ({ ruleId, nightId }) => nightId === firstNightId && (ruleId === `bin-${when}` || ruleId === `move-${when}`),
      )
      const order = steps.map(({ ruleId }) => ruleId)
      expect(steps).toHaveLength(moves.length + binMoves.length)
      for (const { pieceId, afterMoves } of binMoves) {
        const place = steps.findIndex(({ key }) => key === `bin-${when}:${firstNightId}:${pieceId}`)
        const before = order.slice(0, place).filter((ruleId) => ruleId === `move-${when}`).length
        expect(before).toBe(afterMoves ?? moves.length)
      }
    }
  })

  it('asks a person for no more than ninety steps a night besides moves and drills, and never for one thing twice', () => {
    for (const { nightId } of plan.nights) {
      const steps = plan.checklist.steps.filter(
        (step) =>
          step.nightId === nightId &&
          !step.ruleId.startsWith('move-') &&
          !step.ruleId.startsWith('bin-') &&
          !ASIDE.has(step.phase),
      )
      expect(steps.length).toBeGreaterThan(40)
      expect(steps.length).toBeLessThanOrEqual(90)
    }
    expect(new Set(plan.checklist.steps.map(({ key }) => key)).size).toBe(plan.checklist.steps.length)
  })

  it('names everything that frost would harm in one line a place', () => {
    const said = plan.checklist.steps.filter(
      ({ ruleId, nightId }) => nightId === firstNightId && ruleId === 'bring-in-from-frost',
    )
    const places = said.map(({ params }) => params['place'])
    expect(new Set(places).size).toBe(places.length)
    const words = said.map(({ params }) => String(params['name'])).join(', ')
    const harmed = plan.packingInput.pieces.filter(({ traits }) => (traits.freezesBelowC ?? -99) >= 0)
    expect(harmed.length).toBeGreaterThan(3)
    for (const { id } of harmed) expect(words).toContain(trip.kit.pieces.find((piece) => piece.id === id)?.name)
  })

  it('keeps what freezes in bays that stay above its limit', () => {
    const inputNight = plan.packingInput.nights[0]
    const bed = plan.packing.nights[0]?.bed
    const fragile = plan.packingInput.pieces.filter(
      (piece) => piece.traits.freezesBelowC !== null && inputNight?.states[piece.id] === 'stored',
    )
    expect(fragile.length).toBeGreaterThan(0)
    for (const piece of fragile) {
      const unit = plan.packing.units.find(({ pieceIds }) => pieceIds.includes(piece.id))
      const placement = bed?.placements.find(({ unitId }) => unitId === unit?.id)
      expect(placement, piece.id).toBeDefined()
      expect(inputNight?.lowTempC[placement?.bayId ?? ''] ?? -99).toBeGreaterThanOrEqual(
        piece.traits.freezesBelowC ?? 0,
      )
    }
  })
})

describe('a change on one side', () => {
  it('brings chosen bedding into the load, though it was spare', () => {
    const spare = trip.kit.pieces.find((piece) => piece.spare && piece.bedding !== undefined)
    expect(spare).toBeDefined()
    const changed = withNight(trip, 0, (one) => ({
      ...one,
      beddingPieceIds: [...one.beddingPieceIds, spare?.id ?? ''],
    }))
    const next = planOf(changed)
    expect(plan.packingInput.pieces.some(({ id }) => id === spare?.id)).toBe(false)
    expect(next.packingInput.pieces.some(({ id }) => id === spare?.id)).toBe(true)
    const states = next.packingInput.nights[0]?.states ?? {}
    expect(states[spare?.id ?? '']).toBe('bed')
  })

  it('lets a colder forecast cost charge and warmth, and lets frost reach the unheated bays', () => {
    const colder = planOf(
      withNight(trip, 0, (one) => ({ ...one, weather: { ...one.weather, coldMarginK: one.weather.coldMarginK + 8 } })),
    )
    const [before, after] = [plan.nights[0]?.outcome, colder.nights[0]?.outcome]
    expect(after?.heatingWh ?? 0).toBeGreaterThan(before?.heatingWh ?? 0)
    expect(after?.depart01 ?? 1).toBeLessThan(before?.depart01 ?? 0)
    const cold = plan.packingInput.bays.find((bay) => !bay.heatedAtNight && bay.belongsTo === 'vehicle')?.id ?? ''
    expect(colder.packingInput.nights[0]?.lowTempC[cold] ?? 0).toBeLessThan(
      plan.packingInput.nights[0]?.lowTempC[cold] ?? 0,
    )
  })

  it('asks for the adapter before leaving and again in the morning', () => {
    const needed = plan.checklist.steps.filter(({ ruleId }) => ruleId.includes('adapter'))
    expect(new Set(needed.map(({ phase }) => phase)).has('before-leaving')).toBe(true)
    expect(needed.some(({ phase }) => phase === 'morning' || phase === 'check-out')).toBe(true)
  })

  it('says no, with every reason, when the site forbids sleeping and the adapter stays at home', () => {
    const adapter = trip.nights.find((one) => one.hookup?.adapterPieceId !== undefined)?.hookup?.adapterPieceId
    const broken: Trip = {
      ...withNight(trip, 0, (one) => ({
        ...one,
        rules: { ...one.rules, sleepInVehicle: 'no' },
        gateClosed: { from: '23:00', to: '11:00' },
      })),
      kit: {
        ...trip.kit,
        pieces: trip.kit.pieces.map((piece) => (piece.id === adapter ? { ...piece, spare: true } : piece)),
      },
    }
    const next = planOf(broken)
    expect(next.verdict.holds).toBe(false)
    expect(codes(next, 'shortfall')).toEqual(
      expect.arrayContaining(['sleeping-not-allowed', 'leave-before-gate', 'adapter-not-on-board']),
    )
    expect(next.verdict.shortfalls).toBe(codes(next, 'shortfall').length)
  })

  it('keeps the packing when nothing it depends on has changed, and plans anew when it has', () => {
    const again = planOf(trip)
    expect(again.packing).toEqual(plan.packing)
    const renamed = planOf({ ...trip, title: 'Another name' })
    expect(renamed.packing).toEqual(plan.packing)
  })
})
