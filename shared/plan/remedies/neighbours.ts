/** Changes worth trying for each kind of shortfall, one at a time. */
import type { Night, Piece, SingleChange, Trip } from '../../document/index.ts'
import { S_PER_MINUTE } from '../../units/index.ts'
import { isKeptAlways, loadedPieces } from '../load.ts'
import type { Finding, NightPlan, Plan } from '../types.ts'

const WARMER_K = [2, 4, 6, 8] as const
/** Coarser where each has to be packed anew. */
const WARMER_FOR_ROOM_K = [3, 6] as const
const COOLER_K = [-2, -4, -6] as const
const HIGHER_LIMITS_01 = [0.95, 1] as const
/** Ten to fifteen on two sides is the habit, common practice; more where that is not enough. */
const WINDOW_GAPS_MM = [15, 30, 60] as const
/** Leaving is put at the end of the hour that barred it, with this much to roll to the gate. */
const AFTER_THE_BAR_MIN = 1
/** How many pieces are tried, largest first, when something must stay at home for room. */
const LEAVE_FOR_ROOM = 6
/** And for weight: lighter ones are missed less, so that more are worth trying. */
const LEAVE_FOR_WEIGHT = 12

export function neighbours(trip: Trip, plan: Plan, shortfall: Finding): readonly SingleChange[] {
  const at = trip.nights.findIndex(({ id }) => id === shortfall.nightId)
  const night = trip.nights[at]
  switch (shortfall.problem.code) {
    case 'too-cold-for-bag':
    case 'too-cold-for-body':
      return night === undefined ? [] : warmer(trip, night)
    case 'leg-too-long':
      return moreChargeUpTo(trip, plan, at)
    case 'leave-in-movement-ban':
    case 'leave-before-gate':
      return night === undefined ? [] : laterTarget(night, shortfall)
    case 'leave-after-check-out':
      return sooner('leave-earlier', shortfall, 'departUtc', 'checkOutUtc')
    case 'arrive-after-check-in':
      return sooner('arrive-earlier', shortfall, 'arriveUtc', 'closesUtc')
    case 'arrive-after-gate':
      return sooner('arrive-earlier', shortfall, 'arriveUtc', 'gateFromUtc')
    case 'arrive-in-movement-ban':
      return sooner('arrive-earlier', shortfall, 'arriveUtc', 'banFromUtc')
    case 'night-earth-missing':
    // The current is held back before the volts fall so far: a post that is below the limit all the same is so unloaded.
    case 'night-sag-stop':
      return night?.hookup === undefined ? [] : [{ kind: 'without-hookup', nightId: night.id }]
    case 'night-co2-high':
      return night === undefined ? [] : moreAir(night)
    case 'adapter-not-on-board':
      return night === undefined ? [] : bringAdapter(trip, night)
    case 'no-place-by-day':
    case 'no-place-at-night':
    case 'changeover-stuck':
      return [...warmerCabin(trip, night, shortfall), ...unplaced(trip, plan, shortfall)]
    default:
      return shortfall.problem.code.startsWith('over-') ? lighter(trip, shortfall) : []
  }
}

function warmer(trip: Trip, night: Night): SingleChange[] {
  const nightId = night.id
  const bedding = trip.kit.pieces.filter(
    (piece) => piece.bedding !== undefined && !night.beddingPieceIds.includes(piece.id),
  )
  return [
    ...bedding.map(({ id: pieceId }) => ({ kind: 'bring-bedding', nightId, pieceId }) as const),
    ...unusedHeaters(trip, night),
    ...hangCovers(trip, night),
    ...setWarmer(trip, nightId, WARMER_K),
  ]
}

/** Only where there is a heater to set. */
const setWarmer = ({ vehicle }: Trip, nightId: string, stepsK: readonly number[]): SingleChange[] =>
  vehicle.heater.kind === 'none' ? [] : stepsK.map((byK) => ({ kind: 'set-point', nightId, byK }) as const)

/** Wider than it is, the least first. */
const moreAir = ({ id: nightId, ventilation }: Night): SingleChange[] =>
  WINDOW_GAPS_MM.filter((toMm) => toMm > ventilation.gapMm).map((toMm) => ({ kind: 'window-gap', nightId, toMm }))

/** Only where covers ride along. */
const hangCovers = (trip: Trip, { id: nightId, covers }: Night): SingleChange[] =>
  !covers && loadedPieces(trip).some(({ purpose }) => purpose === 'window-covers') ? [{ kind: 'covers', nightId }] : []

const unusedHeaters = (trip: Trip, { id: nightId, heating }: Night): SingleChange[] =>
  trip.vehicle.bedHeaters
    .filter(({ id }) => !heating.bedHeaterIds.includes(id))
    .map(({ id: heaterId }) => ({ kind: 'bed-heater', nightId, heaterId }) as const)

/** Charge for a leg may be won on its own night or on one before: what is left over carries on. */
function moreChargeUpTo(trip: Trip, plan: Plan, at: number): SingleChange[] {
  const nights = trip.nights.slice(0, at + 1).toReversed()
  return nights.flatMap((night) => {
    const nightPlan = plan.nights.find(({ nightId }) => nightId === night.id)
    return nightPlan === undefined ? [] : moreCharge(trip, night, nightPlan)
  })
}

function moreCharge(trip: Trip, night: Night, plan: NightPlan): SingleChange[] {
  const nightId = night.id
  const limit01 = plan.input.decisions.chargeLimit01
  const usableA = plan.outcome.supply?.usableA ?? 0
  const askedA = night.heating.currentA ?? usableA
  return [
    ...HIGHER_LIMITS_01.filter((to01) => to01 > limit01).map(
      (to01) => ({ kind: 'charge-limit', nightId, to01 }) as const,
    ),
    ...(askedA < Math.floor(usableA) ? [{ kind: 'current', nightId, toA: Math.floor(usableA) } as const] : []),
    ...hangCovers(trip, night),
    ...(night.heating.setPoints.some(({ tempC }) => tempC !== null)
      ? COOLER_K.map((byK) => ({ kind: 'set-point', nightId, byK }) as const)
      : []),
    ...otherStops(night),
  ]
}

/** Chargers that the traveller has not agreed to, where some were agreed to and do not do. */
function otherStops({ id: nightId, leg }: Night): SingleChange[] {
  const agreed = leg?.acceptedStopsM ?? []
  if (leg === undefined || agreed.length === 0) return []
  return leg.fastChargers
    .filter(({ atM }) => !agreed.includes(atM))
    .map(({ atM }) => ({ kind: 'stop-on-the-way', nightId, atM }) as const)
}

function laterTarget(night: Night, shortfall: Finding): SingleChange[] {
  const lostS = Number(shortfall.problem.params['lostS'] ?? 0)
  return night.target === undefined
    ? []
    : [{ kind: 'target-later', nightId: night.id, byMin: Math.ceil(lostS / S_PER_MINUTE) + AFTER_THE_BAR_MIN }]
}

/** So much sooner that the hour missed is met with a minute in hand. */
function sooner(
  kind: 'leave-earlier' | 'arrive-earlier',
  { nightId, problem }: Finding,
  atName: string,
  limitName: string,
): SingleChange[] {
  const lateS = Number(problem.params[atName] ?? 0) - Number(problem.params[limitName] ?? 0)
  return nightId === null || lateS < 0 ? [] : [{ kind, nightId, byMin: Math.floor(lateS / S_PER_MINUTE) + 1 }]
}

const bringAdapter = (trip: Trip, { hookup }: Night): SingleChange[] =>
  trip.kit.pieces
    .filter(({ id, spare }) => spare && id === hookup?.adapterPieceId)
    .map(({ id: pieceId }) => ({ kind: 'bring-piece', pieceId }) as const)

const mayStay = (piece: Piece): boolean => !isKeptAlways(piece) && piece.bedding === undefined

/** Where frost bars the way, a warmer cabin opens more bays. */
function warmerCabin(trip: Trip, night: Night | undefined, { problem }: Finding): SingleChange[] {
  const { rules } = problem.params
  return night !== undefined && Array.isArray(rules) && rules.includes('freezes')
    ? setWarmer(trip, night.id, WARMER_FOR_ROOM_K)
    : []
}

/** The unit itself, turned, unlocked or left; or something of about its size left in its stead. */
function unplaced(trip: Trip, plan: Plan, shortfall: Finding): SingleChange[] {
  const unitId = shortfall.id.split(':').at(-1) ?? ''
  const unit = plan.packing.units.find(({ id }) => id === unitId)
  const pieces = loadedPieces(trip)
  const own = pieces.filter(({ id }) => id === unitId)
  const seldom = pieces
    .filter((piece) => mayStay(piece) && piece.id !== unitId)
    .toSorted((a, b) => volume(b.sizeMm) - volume(a.sizeMm))
    .slice(0, LEAVE_FOR_ROOM)
  return [
    ...own
      .filter(({ upright }) => upright.length < 3)
      .map(({ id: pieceId }) => ({ kind: 'turn-piece', pieceId }) as const),
    ...own.filter(({ locks }) => locks.length > 0).map(({ id: pieceId }) => ({ kind: 'unlock', pieceId }) as const),
    ...(unit === undefined || pieces.some((piece) => unit.pieceIds.includes(piece.id) && isKeptAlways(piece))
      ? []
      : [{ kind: 'leave-behind', pieceIds: unit.pieceIds } as const]),
    ...seldom.map(({ id }) => ({ kind: 'leave-behind', pieceIds: [id] }) as const),
  ]
}

/** One piece that is heavy enough, the lightest such first; where none is, the fewest that are together. */
function lighter(trip: Trip, shortfall: Finding): SingleChange[] {
  const overG = Number(shortfall.problem.params['overG'] ?? 0)
  const heavy = loadedPieces(trip)
    .filter(mayStay)
    .toSorted((a, b) => b.massG - a.massG)
  const enough = heavy.filter(({ massG }) => massG >= overG)
  // Axles and bays feel more or less than a piece's own mass: the heaviest are tried as well.
  const single = [...enough.slice(-LEAVE_FOR_WEIGHT).toReversed(), ...heavy.slice(0, LEAVE_FOR_ROOM)]
  return [
    ...[...new Set(single)].map(({ id }) => ({ kind: 'leave-behind', pieceIds: [id] }) as const),
    ...(enough.length > 0 ? [] : [{ kind: 'leave-behind', pieceIds: fewest(heavy, overG) } as const]),
  ]
}

function fewest(heavy: readonly Piece[], overG: number): readonly string[] {
  const ids: string[] = []
  let leftG = overG
  for (const { id, massG } of heavy) {
    if (leftG <= 0) break
    ids.push(id)
    leftG -= massG
  }
  return ids
}

const volume = ([length, width, height]: readonly [number, number, number]): number => length * width * height
