/** Tomorrow's leg: what it needs from the battery, and the fast-charge stops that take least time. */
import { G_PER_KG, WH_PER_KWH } from '../units/index.ts'
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
/** Charges tried at each stop: every half percent. */
const GRID = 200

type Stop = LegOutcome['stops'][number]
type Inputs = { readonly leg: LegParameters; readonly battery: BatteryParameters; readonly depart01: number }

/**
 * Energy per km of a leg without its climb, Wh/km.
 * From the road-load model where speed, drag area and rolling coefficient (at 20 °C) are given; else the stated consumption.
 */
export function legWhPerKm(leg: LegParameters): number {
  if (leg.speedKmPerH === null || leg.dragAreaM2 === null || leg.rollingCoefficient === null) return leg.whPerKm
  return roadLoadWhPerKm({
    speedMPerS: leg.speedKmPerH / 3.6,
    massKg: leg.massG / G_PER_KG,
    dragAreaM2: leg.dragAreaM2,
    rollingCoefficient: rollingCoefficientAt(leg.rollingCoefficient, leg.outsideC, leg.speedKmPerH),
    airDensityKgPerM3: dryAirDensity(leg.outsideC),
    driveEfficiency01: DRIVE_EFFICIENCY_01,
    auxiliaryW: leg.auxiliaryW ?? 0,
    grade: 0,
  })
}

/** Energy that the whole leg takes from the battery, Wh, climb included; never below zero. */
export const legNeedWh = (leg: LegParameters): number =>
  Math.max(0, (legWhPerKm(leg) * leg.distanceM) / WH_PER_KWH + climbWh(leg.massG / G_PER_KG, leg.climbM))

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

type State = { readonly timeS: number; readonly stop: Stop | null; readonly from: number; readonly fromIndex: number }

/** Dynamic programming over chargers in order and charge on leaving each; null where no split reaches the end. */
function fastestStops({ leg, battery, depart01 }: Inputs, needWh: number, reserve01: number): readonly Stop[] | null {
  const chargers = leg.fastChargers
    .filter((charger) => charger.atM > 0 && charger.atM < leg.distanceM && charger.powerW > 0)
    .toSorted((left, right) => left.atM - right.atM)
  const used01 = (fromM: number, toM: number): number => (needWh * (toM - fromM)) / leg.distanceM / battery.usableWh
  // Stage 0 is the start with one state; stage k holds the best way to leave charger k with each charge of the grid.
  const stages: (State | undefined)[][] = [[{ timeS: 0, stop: null, from: -1, fromIndex: -1 }]]
  const charge01Of = (stage: number, index: number): number => (stage === 0 ? depart01 : index / GRID)
  const atM = (stage: number): number => (stage === 0 ? 0 : (chargers[stage - 1]?.atM ?? leg.distanceM))
  for (const [order, charger] of chargers.entries()) {
    const clock = fastChargeClock({ usableWh: battery.usableWh, peakW: battery.fastMaxW, chargerW: charger.powerW })
    const leaving: (State | undefined)[] = Array.from({ length: GRID + 1 }, () => undefined)
    stages.forEach((states, from) => {
      states.forEach((state, fromIndex) => {
        if (state === undefined) return
        const arrive01 = charge01Of(from, fromIndex) - used01(atM(from), charger.atM)
        if (arrive01 < reserve01 - 1e-9) return
        const plugged = state.timeS + STOP_OVERHEAD_S - clockAt(clock, arrive01)
        for (let index = Math.floor(arrive01 * GRID) + 1; index <= GRID; index += 1) {
          const leave01 = index / GRID
          const timeS = plugged + clockAt(clock, leave01)
          const known = leaving[index]
          if (known !== undefined && known.timeS <= timeS) continue
          const durationS = clockAt(clock, leave01) - clockAt(clock, arrive01)
          const energyWh = (leave01 - arrive01) * battery.usableWh
          leaving[index] = {
            timeS,
            from,
            fromIndex,
            stop: { atM: charger.atM, name: charger.name, arrive01, leave01, durationS, energyWh },
          }
        }
      })
    })
    stages[order + 1] = leaving
  }
  return trace(
    stages,
    (stage, index) => charge01Of(stage, index) - used01(atM(stage), leg.distanceM) >= reserve01 - 1e-9,
  )
}

/** The stops of the quickest state that reaches the end, in order. */
function trace(
  stages: readonly (readonly (State | undefined)[])[],
  arrives: (stage: number, index: number) => boolean,
): readonly Stop[] | null {
  let best: State | null = null
  stages.forEach((states, stage) => {
    states.forEach((state, index) => {
      if (state === undefined || !arrives(stage, index)) return
      if (best === null || state.timeS < best.timeS) best = state
    })
  })
  const stops: Stop[] = []
  let at: State | null = best
  if (at === null) return null
  while (at !== null) {
    const current: State = at
    if (current.stop !== null) stops.push(current.stop)
    at = stages[current.from]?.[current.fromIndex] ?? null
  }
  return stops.toReversed()
}
