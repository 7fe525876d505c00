/** The facts of one night, in the names that checklist rules read. */
import { PURPOSE_NAMES } from '../../checklist/index.ts'
import type { ChecklistFacts } from '../../checklist/index.ts'
import type { Night, Trip } from '../../document/index.ts'
import { invariant } from '../../result/index.ts'
import type { PackingOutcome } from '../../packing/index.ts'
import { MM_PER_M, S_PER_HOUR } from '../../units/index.ts'
import { nightInstant } from '../clock.ts'
import { loadedPieces } from '../load.ts'
import type { NightPlan, NightStores } from '../types.ts'
import { adapterNeeds, hookupFacts } from './facts-hookup.ts'
import { loadFacts } from './facts-load.ts'
import { clockFacts, sleeperFacts } from './facts-people.ts'
import { asOne } from './grouped.ts'
import { supplyFacts, tomorrowFacts } from './facts-stores.ts'

/** Grounds that may not carry a wheel: words a user is likely to type. */
const SOFT_GROUND = /grass|mud|sand|snow|soft|meadow|earth|wiese|schlamm|schnee/i
/** A pack under this spends energy on itself before it takes charge, common practice. */
const COLD_BATTERY_BELOW_C = 0

export function nightFacts(
  trip: Trip,
  packing: PackingOutcome,
  nights: readonly NightPlan[],
  stores: readonly NightStores[],
  at: number,
): ChecklistFacts {
  const night = trip.nights[at]
  const plan = nights[at]
  invariant(night !== undefined && plan !== undefined, 'facts are asked for a night of the trip')
  const pieces = loadedPieces(trip)
  const needs = trip.nights.map((each, index) => adapterNeeds(trip, each, index))
  return {
    trip: {
      nightNumber: at + 1,
      nightCount: trip.nights.length,
      firstNight: at === 0,
      lastNight: at === trip.nights.length - 1,
      travellers: trip.travellers.length,
      pets: pieces.some(({ purpose }) => purpose === 'pet'),
      adapters: needs.flat(),
      nextAdapters: needs[at + 1] ?? [],
      lowestC: Math.min(...nights.map(({ outcome }) => outcome.coldestOutsideC)),
    },
    vehicle: vehicleFacts(trip, packing),
    onBoard: onBoard(pieces),
    load: loadFacts(trip, packing, night),
    site: siteFacts(trip, night),
    clock: clockFacts(night, plan.clock),
    target: {
      present: night.target !== undefined,
      name: night.target?.name ?? null,
      driveMin: night.target?.driveMin ?? 0,
      walkMin: night.target?.walkMin ?? 0,
    },
    weather: {
      lowC: plan.outcome.coldestOutsideC,
      highC: night.weather.highC,
      windMPerS: night.weather.windMPerS,
      humidity01: night.weather.humidity01,
      snowMm: night.weather.snowMm,
      rainMm: night.weather.rainMm,
    },
    pitch: {
      surface: night.pitch.surface,
      soft: SOFT_GROUND.test(night.pitch.surface),
      slope01: night.pitch.slope01,
      rampMm: plan.pitch.rampMm,
      rampUnder: plan.pitch.rampUnder,
      headDownhill: plan.pitch.headUphill === null ? null : !plan.pitch.headUphill,
      park: plan.pitch.park,
    },
    hookup: hookupFacts(trip, night, plan, needs[at] ?? []),
    energy: energyFacts(trip, night, plan),
    leg: legFacts(plan),
    heating: heatingFacts(night, plan),
    air: {
      covers: night.covers,
      windowGapMm: night.ventilation.gapMm,
      windowSides: night.ventilation.sides,
      co2MaxPpm: Math.round(plan.outcome.co2MaxPpm),
      condensateG: plan.outcome.condensateG,
      frostG: plan.outcome.frostG,
    },
    sleepers: sleeperFacts(trip, night, plan),
    supplies: supplyFacts(trip, pieces, stores[at]),
    tomorrow: tomorrowFacts(trip.nights[at + 1], nights[at + 1], stores[at + 1]),
    money: { nightCost: plan.cost, currency: trip.preferences.currency },
  }
}

function onBoard(pieces: Trip['kit']['pieces']): ChecklistFacts['onBoard'] {
  const has = (purpose: string): boolean => pieces.some((piece) => piece.purpose === purpose)
  const entries = PURPOSE_NAMES.map((purpose) => [purpose, has(purpose)] as const)
  return Object.fromEntries(entries) as ChecklistFacts['onBoard']
}

function vehicleFacts(trip: Trip, packing: PackingOutcome): ChecklistFacts['vehicle'] {
  const { vehicle } = trip
  const { masses, heater, bed } = vehicle
  const { mass } = packing
  const roofLimitG = masses.roofLimitG === undefined ? null : masses.roofLimitG - (masses.roofFittedG ?? 0)
  const margin = (limit: number | undefined, load: number | null): number | null =>
    limit === undefined || load === null ? null : limit - load
  return {
    drive: vehicle.drive,
    heaterKind: heater.kind,
    heaterMayRunAllNight: heater.mayRunAllNight,
    heaterStopsAfterH: heater.switchesOffAfterS === undefined ? null : heater.switchesOffAfterS / S_PER_HOUR,
    payloadMarginG: mass.payloadG - mass.loadG,
    payloadOverG: Math.max(0, mass.loadG - mass.payloadG),
    frontAxleMarginG: margin(masses.frontAxle?.limitG, mass.frontAxleG),
    rearAxleMarginG: margin(masses.rearAxle?.limitG, mass.rearAxleG),
    roofMarginG: roofLimitG === null ? null : roofLimitG - mass.roofG,
    roofLoadG: mass.roofG,
    leisureKind: vehicle.leisure?.kind ?? null,
    bedPrepare: bed.prepare.map((name, index) => ({ id: `prepare-${index + 1}`, name })),
    keepClear: asOne(bed.keepClear.map((name, index) => ({ id: `clear-${index + 1}`, name }))),
    exitDoor: bed.exitDoor ?? null,
  }
}

function siteFacts(trip: Trip, night: Night): ChecklistFacts['site'] {
  const { rules, site } = night
  return {
    name: site.name,
    sleepAllowed: rules.sleepInVehicle,
    chargeAllowed: rules.chargeFromPost,
    fireAllowed: rules.fire,
    outsideStorage: rules.outsideStorage,
    tentOrAwning: rules.tentOrAwning,
    foodLockerRequired: rules.foodLockerRequired,
    foodLockerPresent: rules.foodLockerMm !== undefined || trip.vehicle.bays.some(({ kind }) => kind === 'locker'),
    mustStandOnHardPad: rules.mustStandOnHardPad,
    phone: site.phone ?? null,
    gateCode: site.gateCode ?? null,
    gateCloses: night.gateClosed !== undefined,
    indoorFallback: site.indoorFallback ?? null,
    nearestCharger: site.nearestCharger ?? null,
    coverageSheetGaps:
      site.phone === undefined || site.indoorFallback === undefined || site.nearestCharger === undefined,
    coordinates: `${site.latitudeDeg.toFixed(4)}, ${site.longitudeDeg.toFixed(4)}`,
    toToiletsM: night.pitch.toToiletsMm / MM_PER_M,
  }
}

function energyFacts(trip: Trip, night: Night, plan: NightPlan): ChecklistFacts['energy'] {
  const { outcome, faults } = plan
  const atThree = faults.find(({ fault }) => fault.kind === 'supply-lost')
  return {
    arrive01: outcome.arrive01,
    depart01: outcome.depart01,
    reserve01: trip.vehicle.battery?.reserve01 ?? null,
    chargeLimit01: night.heating.chargeLimit01 ?? trip.vehicle.battery?.chargeLimit01 ?? null,
    coldBattery: trip.vehicle.battery !== undefined && outcome.coldestOutsideC < COLD_BATTERY_BELOW_C,
    runsOutInNight: outcome.stopsUtc !== null,
    heatLeftOnFaultH: atThree?.hoursOfHeatLeft ?? null,
    leisureDepart01: outcome.leisureDepart01,
  }
}

function legFacts({ outcome, input }: NightPlan): ChecklistFacts['leg'] {
  const { leg } = outcome
  return {
    present: leg !== null,
    marginWh: leg?.marginWh ?? null,
    stops: (leg?.stops ?? []).map((stop, index) => ({
      id: `stop-${index + 1}`,
      name: stop.name ?? '',
      atM: stop.atM,
      leave01: stop.leave01,
    })),
    outsideC: input.leg?.outsideC ?? null,
  }
}

function heatingFacts(night: Night, { clock }: NightPlan): ChecklistFacts['heating'] {
  const { setPoints, bedHeaterIds } = night.heating
  // What is set on going to bed is what holds through the night: evening and morning have set-points of their own.
  const midnightUtc = (clock.bedtimeUtc + clock.wakeUtc) / 2
  const asleep = setPoints
    .map(({ from, tempC }) => ({ fromUtc: nightInstant(night, from), tempC }))
    .filter(({ fromUtc }) => fromUtc <= midnightUtc)
    .reduce<{ fromUtc: number; tempC: number | null } | null>(
      (last, point) => (last === null || point.fromUtc >= last.fromUtc ? point : last),
      null,
    )
  return {
    set: setPoints.some(({ tempC }) => tempC !== null),
    setPointC: asleep?.tempC ?? null,
    bedHeater: bedHeaterIds.length > 0,
  }
}
