/**
 * A plan while a dial moves: the night is reckoned anew, load and checklist stand as they were until the dial rests.
 * The night does not need to know where things lie, only what warms the sleepers, what feeds the post, and what it all weighs:
 * the rest of the kit is planned as one small lump of the same mass, which takes a fiftieth of the time.
 */
import type { Piece, Trip } from '../../shared/document/index.ts'
import { derivePlan } from '../../shared/plan/index.ts'
import type { Finding, NightPlan, Plan, Verdict } from '../../shared/plan/index.ts'

const LUMP_MM = 10
const PURPOSES: ReadonlySet<Piece['purpose']> = new Set([
  'adapter',
  'lead',
  'charging-unit',
  'supply-tester',
  'window-covers',
  'fan-heater',
  'co-alarm',
])
const NIGHT_AREAS: ReadonlySet<Finding['area']> = new Set(['night', 'leg', 'clock'])

export type DialState = { readonly full: Plan; readonly small: Plan | null }

/** Whether two trips differ in nothing but what is decided for their nights; equal parts are the same objects. */
export const differsOnlyInNights = (a: Trip, b: Trip): boolean =>
  a.vehicle === b.vehicle &&
  a.travellers === b.travellers &&
  a.kit === b.kit &&
  a.checklist === b.checklist &&
  a.nights.length === b.nights.length

/** The small plan of the trip, to go on from at the next turn of the dial, and the whole plan with its nights. */
export function dialPlan(trip: Trip, state: DialState, seed: number): { readonly plan: Plan; readonly small: Plan } {
  const small = derivePlan(lumped(trip), {
    seed,
    iterations: 0,
    remedies: false,
    ...(state.small === null ? {} : { previous: state.small }),
  })
  return { plan: merged(state.full, small), small }
}

function lumped(trip: Trip): Trip {
  const needed = (piece: Piece): boolean =>
    piece.bedding !== undefined || piece.electrical !== undefined || PURPOSES.has(piece.purpose)
  const kept = trip.kit.pieces
    .filter(needed)
    .map(({ binId: _bin, ...piece }) => ({ ...piece, locks: [], belongsWith: [], apartFrom: [] }))
  const rest = trip.kit.pieces.filter((piece) => !needed(piece) && !piece.spare)
  const first = rest[0]
  const massG =
    rest.reduce((sum, piece) => sum + piece.massG, 0) + trip.kit.bins.reduce((sum, bin) => sum + bin.massG, 0)
  const lump: readonly Piece[] =
    first === undefined
      ? []
      : [
          {
            ...first,
            id: 'lump',
            massG,
            sizeMm: [LUMP_MM, LUMP_MM, LUMP_MM],
            traits: {},
            locks: [],
            belongsWith: [],
            apartFrom: [],
          },
        ]
  return { ...trip, kit: { ...trip.kit, bins: [], pieces: [...kept, ...lump] } }
}

function merged(full: Plan, small: Plan): Plan {
  const findings = [
    ...full.findings.filter(({ area }) => !NIGHT_AREAS.has(area)),
    ...small.findings.filter(({ area }) => NIGHT_AREAS.has(area)),
  ]
  const short = (nightId: string | null): number =>
    findings.filter(
      (finding) =>
        finding.severity === 'shortfall' &&
        (nightId === null || finding.nightId === null || finding.nightId === nightId),
    ).length
  const nights = small.nights.map((night): NightPlan => {
    const before = full.nights.find(({ nightId }) => nightId === night.nightId)
    return { ...night, search: before?.search ?? null, faults: before?.faults ?? [] }
  })
  const verdictOf = (verdict: Verdict, nightId: string | null, before: Verdict | undefined): Verdict => ({
    ...verdict,
    shortfalls: short(nightId),
    holds: short(nightId) === 0,
    movesAtDusk: before?.movesAtDusk ?? verdict.movesAtDusk,
  })
  return {
    ...full,
    nights,
    findings,
    verdict: verdictOf(small.verdict, null, full.verdict),
    nightVerdicts: small.nightVerdicts.map((verdict, index) =>
      verdictOf(verdict, nights[index]?.nightId ?? null, full.nightVerdicts[index]),
    ),
    ledger: small.ledger,
    remedies: full.remedies.filter((remedy) =>
      remedy.mends.some((id) => findings.some((finding) => finding.id === id)),
    ),
  }
}
