/** Facts of the supply: which connector, what it carries, which adapter and lead it wants. */
import { hasTwoHotPoles, twoLoads } from '../../climate/index.ts'
import type { AdapterNeed, ChecklistFacts } from '../../checklist/index.ts'
import type { Night, Piece, Trip } from '../../document/index.ts'
import { loadedPieces } from '../load.ts'
import type { NightPlan } from '../types.ts'

const DOMESTIC = new Set(['nema-5-15', 'nema-5-20', 'cee-7-3-schuko', 'cee-7-5-french', 'bs-1363', 'as-nzs-3112'])
/** What a lead, charging unit or adapter plugs into, where the piece does not list it: nothing is assumed. */
const FITS_NOTHING: readonly string[] = []

export function adapterNeeds(trip: Trip, night: Night, index: number): readonly AdapterNeed[] {
  const { hookup } = night
  if (hookup === undefined) return []
  const pieces = loadedPieces(trip)
  const named = trip.kit.pieces.find(({ id }) => id === hookup.adapterPieceId)
  const need = (adapter: Piece | undefined): AdapterNeed => ({
    id: adapter?.id ?? hookup.connector,
    name: adapter?.name ?? hookup.connector,
    nightId: night.id,
    nightNumber: index + 1,
    siteName: night.site.name,
    connector: hookup.connector,
    onBoard: adapter !== undefined && pieces.some(({ id }) => id === adapter.id),
  })
  if (hookup.adapterPieceId !== undefined) return [need(named)]
  const direct = pieces.filter(({ purpose }) => purpose === 'charging-unit' || purpose === 'lead')
  const listed = direct.filter(({ electrical }) => electrical?.fits !== undefined)
  if (listed.length === 0 || listed.some((piece) => fits(piece, hookup.connector))) return []
  return [need(pieces.find((piece) => piece.purpose === 'adapter' && fits(piece, hookup.connector)))]
}

const fits = (piece: Piece, connector: string): boolean => (piece.electrical?.fits ?? FITS_NOTHING).includes(connector)

export function hookupFacts(
  trip: Trip,
  night: Night,
  plan: NightPlan,
  needs: readonly AdapterNeed[],
): ChecklistFacts['hookup'] {
  const { hookup, pitch } = night
  const { supply } = plan.outcome
  const pieces = loadedPieces(trip)
  const [adapter] = needs
  const extension = trip.kit.pieces.find(({ id }) => id === hookup?.extensionPieceId)
  const lead = pieces.find(({ purpose }) => purpose === 'lead')
  const connector = hookup?.connector ?? null
  return {
    present: hookup !== undefined,
    connector,
    domesticSocket: connector !== null && DOMESTIC.has(connector),
    roundPin: connector?.startsWith('iec-60309') ?? false,
    tt30: connector === 'nema-tt-30',
    splitPhase: connector !== null && hasTwoHotPoles(connector),
    chargingPoint: connector?.startsWith('iec-62196') ?? false,
    nominalV: hookup?.nominalV ?? null,
    breakerA: hookup?.breakerA ?? null,
    siteLimitA: hookup?.siteLimitA ?? null,
    usableA: supply?.usableA ?? null,
    limitedBy: supply?.limitedBy ?? null,
    voltsAtLoad: supply === null ? null : Math.round(supply.voltsAtLoad),
    stepDownV: supply?.stepDownV ?? null,
    stopV: supply?.stopV ?? null,
    sag01: supply?.sag01 ?? null,
    wiringHeatW: supply === null ? null : Math.round(supply.heatInWiringW),
    belowMinimum: supply?.belowMinimum ?? false,
    minimumA: plan.input.supply?.minimumA ?? null,
    measured: (hookup?.readings.length ?? 0) > 0,
    earth: plan.input.supply?.earthOk ?? 'not-known',
    polarityReversed: hookup?.polarityReversed ?? 'not-known',
    resetReachable: hookup?.resetReachable ?? 'not-known',
    trippedBefore: hookup?.heldA !== undefined,
    heldA: hookup?.heldA ?? null,
    otherLoadW: hookup?.otherLoadW ?? 0,
    twoLoadsTooMuch: twoLoadsTooMuch(plan),
    adapterNeeded: needs.length > 0,
    adapterName: adapter?.name ?? null,
    adapterOnBoard: adapter?.onBoard ?? false,
    extensionNeeded: extension !== undefined,
    extensionName: extension?.name ?? null,
    extensionOnBoard: extension !== undefined && pieces.some(({ id }) => id === extension.id),
    leadName: lead?.name ?? null,
    cableRunMm: hookup === undefined ? null : pitch.cableRunMm,
    leadReaches: plan.pitch.leadReaches,
    meteredPerKWh: hookup?.tariff.kind === 'per-kwh',
    tariffKnown: hookup !== undefined && hookup.tariff.kind !== 'not-known',
  }
}

/** A travel kettle, common practice: the load people add without thinking while the vehicle charges. */
const KETTLE_W = 1000

/** Whether charging at the usable current and a kettle together pass what the post carries. */
function twoLoadsTooMuch({ input, outcome }: NightPlan): boolean {
  const { supply } = outcome
  if (supply === null || input.supply === null) return false
  return !twoLoads(supply, supply.wattsAtLoad, Math.max(KETTLE_W, input.supply.otherLoadW)).carried
}
