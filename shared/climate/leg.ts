/** Tomorrow's leg: what it needs from the battery, and the fast-charge stops that take least time. */
import { G_PER_KG } from '../units/index.ts'
import { copAt } from './heater.ts'
import { drivingHeatW } from './sources/hvac.ts'
import type { BatteryParameters, LegOutcome, LegParameters } from './types.ts'
import { clockAt, fastChargeClock } from './sources/fast-charge.ts'
import {
  DRIVE_EFFICIENCY_01,
  climbWh,
  dryAirDensity,
  roadLoadWhPerKm,
  rollingCoefficientAt,
} from './sources/road-load.ts'

/** Leaving the road, plugging in and starting, s a stop (common practice). */
export const STOP_OVERHEAD_S = 300
const M_PER_KM = 1000
/** Electronics on the move, W (NREL FASTSim database 200 to 250). */
const ELECTRONICS_W = 250
/** Cabin air, kg/min, surface, m2, and share recirculated in cold weather (the middle of König et al. 2022; share from memory). */
const CABIN_AIR_KG_PER_MIN = 5
const CABIN_AREA_M2 = 6.5
const RECIRCULATED_01 = 0.5
/** A heat pump by the planning curve alone. */
const PLANNING_HEAT_PUMP = { kind: 'heat-pump', cop: [], lowerLimitC: null } as const
/** Charges tried at each stop: every half percent (engine's convention). */
const GRID = 200

type Stop = LegOutcome['stops'][number]
type Inputs = { readonly leg: LegParameters; readonly battery: BatteryParameters; readonly depart01: number }

/**
 * What lights, pumps and cabin take on the move, W, at an outside temperature, °C, where nobody has said.
 * Electronics 250 W (NREL FASTSim database 200 to 250); cabin heat after König et al. 2022 at half recirculation, by the planning heat pump.
 */
export const auxiliaryAtW = (outsideC: number): number =>
  ELECTRONICS_W +
  drivingHeatW({
    outsideC,
    airKgPerMin: CABIN_AIR_KG_PER_MIN,
    cabinAreaM2: CABIN_AREA_M2,
    recirculated01: RECIRCULATED_01,
  }) /
    copAt(PLANNING_HEAT_PUMP, outsideC)

/**
 * Energy per km of a leg without its climb, Wh/km.
 * From the road-load model where speed, drag area and rolling coefficient (at 20 °C) are given; else the stated consumption;
 * either times the scale of the owner's own legs. Where the road-load model is not told what lights, pumps and cabin heat take, they follow
 * from the outside temperature.
 */
export function legWhPerKm(leg: LegParameters): number {
  const scale = leg.consumptionScale ?? 1
  if (leg.speedKmPerH === null || leg.dragAreaM2 === null || leg.rollingCoefficient === null) return leg.whPerKm * scale
  return (
    scale *
    roadLoadWhPerKm({
      speedMPerS: leg.speedKmPerH / 3.6,
      massKg: leg.massG / G_PER_KG,
      dragAreaM2: leg.dragAreaM2,
      rollingCoefficient: rollingCoefficientAt(leg.rollingCoefficient, leg.outsideC, leg.speedKmPerH),
      airDensityKgPerM3: dryAirDensity(leg.outsideC),
      driveEfficiency01: DRIVE_EFFICIENCY_01,
      auxiliaryW: leg.auxiliaryW ?? auxiliaryAtW(leg.outsideC),
      grade: 0,
    })
  )
}

/** Energy that the whole leg takes from the battery, Wh, climb included; never below zero. */
export const legNeedWh = (leg: LegParameters): number =>
  Math.max(0, (legWhPerKm(leg) * leg.distanceM) / M_PER_KM + climbWh(leg.massG / G_PER_KG, leg.climbM))

/**
 * Whether the leg works from a departure charge, and the stops that make it work in least total time.
 * Charges as fractions; energies in Wh. `marginWh` is before any stop; `reachable` counts stops.
 * Stops are found over a grid of half percents, at each charger on the way; the time model is the battery's curve or the post's power.
 */
export function legOutcome({ leg, battery, depart01 }: Inputs): LegOutcome {
  const needWh = legNeedWh(leg)
  const reserve01 = Math.max(leg.reserve01, battery.reserve01)
  const reserveWh = reserve01 * battery.usableWh
  const marginWh = depart01 * battery.usableWh - needWh - reserveWh
  if (marginWh >= 0) return { needWh, reserveWh, marginWh, stops: [], reachable: true }
  const stops = fastestStops({ leg, battery, depart01 }, needWh, reserve01)
  return { needWh, reserveWh, marginWh, stops: stops ?? [], reachable: stops !== null }
}

/** The best known way to leave one place with each charge of the grid. */
type Stage = {
  readonly atM: number
  readonly name: string | null
  /** Total time until leaving, s; Infinity where it cannot be done. */
  readonly leaveS: Float64Array
  readonly fromStage: Int32Array
  readonly fromIndex: Int32Array
}

const emptyStage = (atM: number, name: string | null): Stage => ({
  atM,
  name,
  leaveS: new Float64Array(GRID + 1).fill(Infinity),
  fromStage: new Int32Array(GRID + 1).fill(-1),
  fromIndex: new Int32Array(GRID + 1).fill(-1),
})

type Course = {
  readonly stages: readonly Stage[]
  readonly depart01: number
  readonly reserve01: number
  readonly per01M: number
  readonly usableWh: number
}

/** Charge on leaving a stage with a grid index; the start has one state, at its own charge. */
const leave01Of = (course: Course, stage: number, index: number): number =>
  stage === 0 ? course.depart01 : index / GRID

/** Charge on arriving somewhere from a stage, fraction. */
const arrive01Of = (course: Course, stage: number, index: number, toM: number): number =>
  leave01Of(course, stage, index) - (toM - (course.stages[stage]?.atM ?? 0)) * course.per01M

/** Dynamic programming over chargers in order of distance; null where no split reaches the end with the reserve. */
function fastestStops({ leg, battery, depart01 }: Inputs, needWh: number, reserve01: number): readonly Stop[] | null {
  const chargers = leg.fastChargers
    .filter((charger) => charger.atM > 0 && charger.atM < leg.distanceM && charger.powerW > 0)
    .toSorted((left, right) => left.atM - right.atM)
  const start = emptyStage(0, null)
  start.leaveS[0] = 0
  const stages = [start]
  const course: Course = {
    stages,
    depart01,
    reserve01,
    per01M: needWh / leg.distanceM / battery.usableWh,
    usableWh: battery.usableWh,
  }
  const clocks = new Map<number, readonly number[]>()
  for (const { atM, name, powerW } of chargers) {
    const clock =
      clocks.get(powerW) ?? fastChargeClock({ usableWh: battery.usableWh, peakW: battery.fastMaxW, chargerW: powerW })
    clocks.set(powerW, clock)
    stages.push(chargeAt(course, emptyStage(atM, name), clock))
  }
  return trace(
    course,
    leg.distanceM,
    clocks,
    chargers.map((charger) => charger.powerW),
  )
}

/**
 * Every way to charge at one place. Time on leaving at a charge is the clock there plus the least of
 * (time on arriving - clock on arriving) over all arrivals below it: one sweep upwards finds them all.
 */
function chargeAt(course: Course, here: Stage, clock: readonly number[]): Stage {
  const offset = new Float64Array(GRID + 2).fill(Infinity)
  course.stages.forEach((from, stage) => {
    from.leaveS.forEach((timeS, index) => {
      if (timeS === Infinity) return
      const arrive01 = arrive01Of(course, stage, index, here.atM)
      if (arrive01 < course.reserve01 - 1e-9) return
      const first = Math.floor(arrive01 * GRID + 1e-9) + 1
      const value = timeS + STOP_OVERHEAD_S - clockAt(clock, arrive01)
      if (first > GRID || value >= (offset[first] ?? Infinity)) return
      offset[first] = value
      here.fromStage[first] = stage
      here.fromIndex[first] = index
    })
  })
  for (let index = 1; index <= GRID; index += 1) {
    if ((offset[index - 1] ?? Infinity) < (offset[index] ?? Infinity)) {
      offset[index] = offset[index - 1] ?? Infinity
      here.fromStage[index] = here.fromStage[index - 1] ?? -1
      here.fromIndex[index] = here.fromIndex[index - 1] ?? -1
    }
    here.leaveS[index] = (offset[index] ?? Infinity) + clockAt(clock, index / GRID)
  }
  return here
}

/** The stops of the quickest way to the end, in order; null where there is none. */
function trace(
  course: Course,
  endM: number,
  clocks: ReadonlyMap<number, readonly number[]>,
  powersW: readonly number[],
): readonly Stop[] | null {
  let best: { stage: number; index: number; timeS: number } | null = null
  for (const [stage, { leaveS }] of course.stages.entries()) {
    for (const [index, timeS] of leaveS.entries()) {
      if (timeS === Infinity || (best !== null && best.timeS <= timeS)) continue
      if (arrive01Of(course, stage, index, endM) >= course.reserve01 - 1e-9) best = { stage, index, timeS }
    }
  }
  if (best === null) return null
  const stops: Stop[] = []
  let { stage, index } = best
  while (stage > 0) {
    const here = course.stages[stage]
    const from = { stage: here?.fromStage[index] ?? 0, index: here?.fromIndex[index] ?? 0 }
    const clock = clocks.get(powersW[stage - 1] ?? 0) ?? []
    const arrive01 = arrive01Of(course, from.stage, from.index, here?.atM ?? 0)
    const leave01 = index / GRID
    stops.push({
      atM: here?.atM ?? 0,
      name: here?.name ?? null,
      arrive01,
      leave01,
      durationS: clockAt(clock, leave01) - clockAt(clock, arrive01),
      energyWh: (leave01 - arrive01) * course.usableWh,
    })
    stage = from.stage
    index = from.index
  }
  return stops.toReversed()
}
