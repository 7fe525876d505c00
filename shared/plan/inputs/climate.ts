/** Trip and night to the climate engine's input: cabin, heater, people, supply, battery, leg and decisions. */
import type { Hookup, Leg, Night, Piece, Trip, Vehicle } from '../../document/index.ts'
import { cabinDefaults, cordRatingA, lacksEarth, weatherForNight } from '../../climate/index.ts'
import type {
  BatteryParameters,
  CabinParameters,
  HeaterParameters,
  Lead,
  LegParameters,
  LeisureParameters,
  NightDecisions,
  NightInput,
  SupplyParameters,
} from '../../climate/index.ts'
import type { Utc } from '../../units/index.ts'
import { nightInstant } from '../clock.ts'
import { loadedPieces } from '../load.ts'
import type { NightClock } from '../types.ts'
import { readAtThePost } from './readings.ts'
import { nominalOf } from './line-system.ts'
import { sleeperBedding } from './sleeper-bedding.ts'

/** Five minutes: fine enough that halving it moves no temperature by more than 0.05 K (tested), coarse enough to re-plan while a dial turns. */
const STEP_S = 300

/** Charge a vehicle arrives with when the first night does not say. Common practice: never reach a weak post under 35 to 40 %. */
const ARRIVE_IF_NOT_SAID_01 = 0.4

export function nightInput(
  trip: Trip,
  night: Night,
  clock: NightClock,
  carried: { charge01: number | null; leisure01: number | null },
): NightInput {
  const { vehicle } = trip
  const supply = night.hookup === undefined ? null : supplyParameters(trip, night, night.hookup, clock)
  const laid = loadedPieces(trip).filter(({ id }) => night.beddingPieceIds.includes(id))
  return {
    latitudeDeg: night.site.latitudeDeg,
    longitudeDeg: night.site.longitudeDeg,
    elevationM: night.site.elevationM,
    arriveUtc: clock.arriveUtc,
    sleepFromUtc: clock.bedtimeUtc,
    sleepToUtc: clock.wakeUtc,
    departUtc: clock.departUtc,
    weather: weatherForNight({
      highC: night.weather.highC,
      lowC: night.weather.lowC,
      windMPerS: night.weather.windMPerS,
      humidity01: night.weather.humidity01,
      cloud01: night.weather.cloud01,
      hours: night.weather.hours,
      coldMarginK: night.weather.coldMarginK,
      sun: clock.sun,
      fromUtc: clock.arriveUtc,
      toUtc: clock.departUtc,
      stepS: STEP_S,
      zone: clock.zone,
    }),
    cabin: cabinParameters(vehicle),
    heater: heaterParameters(vehicle),
    bedHeaters: vehicle.bedHeaters.map(({ id, kind, powerW }) => ({ id, kind, powerW })),
    sleepers: trip.travellers.map((traveller) => ({
      id: traveller.id,
      label: traveller.label,
      heightMm: traveller.heightMm,
      massG: traveller.massG,
      sleeps: traveller.sleeps,
      bedding: sleeperBedding(trip, laid, traveller),
    })),
    supply,
    battery: batteryParameters(vehicle, night, carried.charge01 ?? night.arriveCharge01 ?? ARRIVE_IF_NOT_SAID_01),
    leisure: leisureParameters(vehicle, carried.leisure01 ?? night.leisureCharge01 ?? 1),
    leg: legParameters(trip, night),
    decisions: decisions(vehicle, night, clock),
    stepS: STEP_S,
    fault: null,
    ...(vehicle.keepsOnW === undefined ? {} : { keepsOnW: vehicle.keepsOnW }),
    coversOwned: loadedPieces(trip).some(({ purpose }) => purpose === 'window-covers'),
  }
}

export function cabinParameters(vehicle: Vehicle): CabinParameters {
  const { thermal } = vehicle
  const standard = cabinDefaults(thermal.bodyClass)
  const glassScale =
    thermal.glassAreaM2 === undefined
      ? 1
      : thermal.glassAreaM2 / standard.panes.reduce((sum, pane) => sum + pane.areaM2, 0)
  return {
    ...standard,
    panes: standard.panes.map((pane) => ({ ...pane, areaM2: pane.areaM2 * glassScale })),
    airVolumeM3: thermal.airVolumeM3 ?? standard.airVolumeM3,
    lossBareWPerK: thermal.lossBareWPerK ?? standard.lossBareWPerK,
    lossCoveredWPerK: thermal.lossCoveredWPerK ?? standard.lossCoveredWPerK,
    windFactorPerMPerS: thermal.windFactorPerMPerS ?? standard.windFactorPerMPerS,
    heatCapacityKJPerK: thermal.heatCapacityKJPerK ?? standard.heatCapacityKJPerK,
    freshAirM3PerH: thermal.freshAirM3PerH ?? standard.freshAirM3PerH,
    lossScale: thermal.lossScale ?? 1,
  }
}

function heaterParameters({ heater }: Vehicle): HeaterParameters {
  return {
    kind: heater.kind,
    maxHeatW: heater.maxHeatW,
    minHeatW: heater.minHeatW ?? 0,
    cop: heater.cop,
    canCool: heater.canCool,
    awakeLoadW: heater.awakeLoadW,
    mayRunAllNight: heater.mayRunAllNight,
    switchesOffAfterS: heater.switchesOffAfterS ?? null,
    switchesOffBelow01: heater.switchesOffBelow01 ?? null,
    lowerLimitC: heater.lowerLimitC ?? null,
  }
}

function supplyParameters(trip: Trip, night: Night, hookup: Hookup, clock: NightClock): SupplyParameters {
  const { vehicle } = trip
  const unplugUtc = nightInstant(night, hookup.unplug)
  const { tariff } = hookup
  return {
    connector: hookup.connector,
    nominalV: nominalOf(hookup),
    ratedV: hookup.nominalV,
    breakerA: hookup.breakerA,
    siteLimitA: hookup.siteLimitA ?? null,
    leadLimitA: least([hookup.leadLimitA, ...leadPieces(trip, hookup).map(leadRatingA)]),
    adapterLimitA: least([hookup.adapterLimitA, ...named(trip, hookup.adapterPieceId).map(ratingA)]),
    usesAdapter: hookup.adapterPieceId !== undefined,
    usesExtension: hookup.extensionPieceId !== undefined,
    leads: leadsOf(trip, hookup),
    chargingUnitLimitA: hookup.chargingUnitLimitA ?? null,
    heldA: hookup.heldA ?? null,
    onboardMaximumA: vehicle.charging?.maximumA ?? null,
    minimumA: vehicle.charging?.minimumA ?? 0,
    readings: [
      ...hookup.readings.map(({ currentA, volts }) => ({ currentA, volts })),
      ...readAtThePost(trip, night.id),
    ],
    earthOk: lacksEarth(hookup.connector) ? 'no' : hookup.earthOk,
    polarityReversed: hookup.polarityReversed,
    otherLoadW: hookup.otherLoadW,
    plugInUtc: nightInstant(night, hookup.plugIn),
    unplugUtc: unplugUtc < clock.departUtc ? unplugUtc : clock.departUtc,
    pricePerKWh: tariff.kind === 'per-kwh' ? tariff.price : null,
    fixedPrice: tariff.kind === 'per-night' ? tariff.price : 0,
    chargeAllowed: night.rules.chargeFromPost !== 'no',
  }
}

/** What is printed on a piece rules with what was said of the hookup: the least of both, A; null where nobody knows. */
function least(limitsA: readonly (number | undefined)[]): number | null {
  const known = limitsA.filter((limitA) => limitA !== undefined)
  return known.length === 0 ? null : Math.min(...known)
}

const ratingA = ({ electrical }: Piece): number | undefined => electrical?.limitA

/** Where no rating is printed on a lead, its copper tells. */
const leadRatingA = ({ electrical: { limitA, areaMm2 } = {} }: Piece): number | undefined =>
  limitA ?? (areaMm2 === undefined ? undefined : (cordRatingA(areaMm2) ?? undefined))

const named = (trip: Trip, pieceId: string | undefined): readonly Piece[] =>
  loadedPieces(trip).filter(({ id }) => id === pieceId)

/**
 * The leads between post and inlet: the longest of the load that may fit, and the extension that the hookup names.
 * A charging point is plugged in with its own cable.
 */
function leadPieces(trip: Trip, { connector, adapterPieceId, extensionPieceId }: Hookup): readonly Piece[] {
  if (connector.startsWith('iec-62196')) return []
  const leads = loadedPieces(trip).filter(
    ({ id, purpose, electrical }) =>
      purpose === 'lead' &&
      id !== extensionPieceId &&
      (adapterPieceId !== undefined || electrical?.fits === undefined || electrical.fits.includes(connector)),
  )
  return [...longest(leads), ...named(trip, extensionPieceId)]
}

const longest = (leads: readonly Piece[]): readonly Piece[] =>
  leads.toSorted((a, b) => (b.electrical?.lengthMm ?? 0) - (a.electrical?.lengthMm ?? 0)).slice(0, 1)

/** The longest lead of the load, or the charging unit's own, and the extension that the hookup names, where the copper is known. */
function leadsOf(trip: Trip, { extensionPieceId }: Hookup): readonly Lead[] {
  const pieces = loadedPieces(trip)
  const extension = pieces.filter(({ id }) => id === extensionPieceId)
  const others = pieces.filter(({ id }) => id !== extensionPieceId)
  const leads = knownLeads(others.filter(({ purpose }) => purpose === 'lead'))
  const own = leads.length > 0 ? leads : knownLeads(others.filter(({ purpose }) => purpose === 'charging-unit'))
  return [...own.toSorted((a, b) => b.lengthMm - a.lengthMm).slice(0, 1), ...knownLeads(extension)]
}

const knownLeads = (pieces: readonly Piece[]): readonly Lead[] =>
  pieces.flatMap(({ electrical: { lengthMm, areaMm2 } = {} }) =>
    lengthMm === undefined || areaMm2 === undefined ? [] : [{ lengthMm, areaMm2 }],
  )

/** Efficiency and overhead where the vehicle does not say: wall to pack 0.86 to 0.90, 200 to 400 W of pumps and electronics (from memory). */
const CHARGING_IF_NOT_SAID = { efficiency01: 0.88, overheadW: 0 } as const
const FAST_MAX_IF_NOT_SAID_W = 100_000

function batteryParameters(vehicle: Vehicle, { heating }: Night, arrive01: number): BatteryParameters | null {
  const { battery, charging } = vehicle
  if (battery === undefined) return null
  return {
    usableWh: battery.usableWh,
    reserve01: battery.reserve01,
    // The vehicle's limit is what it is usually charged to; a night may ask for more.
    chargeLimit01: Math.max(battery.chargeLimit01, heating.chargeLimit01 ?? 0),
    efficiency01: charging?.efficiency01 ?? CHARGING_IF_NOT_SAID.efficiency01,
    overheadW: charging?.overheadW ?? CHARGING_IF_NOT_SAID.overheadW,
    coldOverheadW: battery.coldOverheadW ?? 0,
    arrive01,
    fastMaxW: charging?.fastMaxW ?? FAST_MAX_IF_NOT_SAID_W,
  }
}

function leisureParameters({ leisure }: Vehicle, arrive01: number): LeisureParameters | null {
  if (leisure === undefined) return null
  const { kind, usableWh, reserve01, chargerW, loadW } = leisure
  return { kind, usableWh, reserve01, chargerW, loadW, arrive01, inverterMaxW: leisure.inverterMaxW ?? 0 }
}

export function legParameters(trip: Trip, night: Night): LegParameters | null {
  const { leg, weather } = night
  const { battery, consumption, masses } = trip.vehicle
  if (leg === undefined || battery === undefined) return null
  return {
    distanceM: leg.distanceM,
    whPerKm: leg.whPerKm ?? consumption.whPerKm,
    speedKmPerH: leg.speedKmPerH ?? null,
    climbM: leg.climbM ?? 0,
    outsideC: leg.outsideC ?? weather.lowC - weather.coldMarginK,
    reserve01: leg.reserve01 ?? battery.reserve01,
    massG: masses.readyG + loadedPieces(trip).reduce((sum, { massG }) => sum + massG, 0),
    // A leg that states its own consumption means it: the road-load model serves only where it does not.
    dragAreaM2: leg.whPerKm === undefined ? (consumption.dragAreaM2 ?? null) : null,
    rollingCoefficient: leg.whPerKm === undefined ? (consumption.rollingCoefficient ?? null) : null,
    auxiliaryW: consumption.auxiliaryW ?? null,
    fastChargers: chargersOf(leg).map(({ atM, powerW, name }) => ({ atM, powerW, name: name ?? null })),
  }
}

/** Once the traveller has agreed to stops, those are the ones; before that, any charger on the way may be proposed. */
const chargersOf = ({ fastChargers, acceptedStopsM = [] }: Leg): Leg['fastChargers'] =>
  acceptedStopsM.length === 0 ? fastChargers : fastChargers.filter(({ atM }) => acceptedStopsM.includes(atM))

function decisions(vehicle: Vehicle, night: Night, clock: NightClock): NightDecisions {
  const { heating } = night
  return {
    setPoints: heating.setPoints.map(({ from, tempC }) => ({ fromUtc: setPointInstant(night, from, clock), tempC })),
    bedHeaterIds: heating.bedHeaterIds,
    currentA: heating.currentA ?? null,
    chargeLimit01: heating.chargeLimit01 ?? vehicle.battery?.chargeLimit01 ?? 1,
    windowGapMm: night.ventilation.gapMm,
    windowSides: night.ventilation.sides,
    covers: night.covers,
  }
}

/** A set-point before arrival holds from arrival on. */
function setPointInstant(night: Night, clockText: string, clock: NightClock): Utc {
  const at = nightInstant(night, clockText)
  return at < clock.arriveUtc ? clock.arriveUtc : at
}
