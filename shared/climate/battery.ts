/** Traction battery over one step: charging through the on-board charger, with losses, taper and a limit. */
import { S_PER_HOUR } from '../units/index.ts'
import type { BatteryParameters } from './types.ts'
import { batteryPowerW } from './sources/charging.ts'

/** Above this charge the battery takes ever less alternating-current power (common practice). */
const TAPER_FROM_01 = 0.95
/** Share of the power still taken when nearly full (common practice). */
const TAPER_FLOOR_01 = 0.1
/** Below this outside temperature a cold-soaked battery first warms itself, °C (common practice). */
export const COLD_BELOW_C = 0

export type PackStep = {
  readonly battery: BatteryParameters
  readonly charge01: number
  /** Limit in force tonight; the smaller of it and the battery's own holds. */
  readonly chargeLimit01: number
  /** Power that the supply offers to the car, W; 0 when unplugged. */
  readonly offeredW: number
  /** Direct-current load of climate and electronics, W. */
  readonly loadW: number
  readonly outsideC: number
  readonly stepS: number
}

export type PackOutcome = {
  readonly charge01: number
  /** Mean power drawn from the supply, W. */
  readonly drawnW: number
  /** Mean net power into the cells, W; negative while discharging. */
  readonly intoCellsW: number
  /** Load that an empty battery could not carry, W. */
  readonly shortW: number
}

/** Power spent before any charge is accepted, W: the standing overhead, and warming in the cold. */
export const chargingOverheadW = (battery: BatteryParameters, outsideC: number): number =>
  battery.overheadW + (outsideC < COLD_BELOW_C ? battery.coldOverheadW : 0)

/** Direct-current power behind the charger, W, from power offered, W, in the cold or not. */
export const chargerOutputW = (battery: BatteryParameters, offeredW: number, outsideC: number): number =>
  batteryPowerW(offeredW, chargingOverheadW(battery, outsideC), battery.efficiency01)

/**
 * One step of the pack, exact in time whatever the step: linear below the taper, exponential within it.
 * Charge as a fraction, powers in W, step in s. Charging stops at the limit; a load is carried by the charger first.
 * Source: P_cells = (V I - overhead) x efficiency; taper above 95 % common practice.
 */
export function packStep(step: PackStep): PackOutcome {
  const { battery, loadW, stepS } = step
  const outputW = chargerOutputW(battery, step.offeredW, step.outsideC)
  const surplusW = outputW - loadW
  const limit01 = Math.min(step.chargeLimit01, battery.chargeLimit01)
  if (surplusW <= 0) return discharge(step, surplusW, outputW > 0 ? step.offeredW : 0)
  const before01 = step.charge01
  const after01 =
    before01 >= limit01
      ? before01
      : Math.min(limit01, chargedTo(before01, surplusW / battery.usableWh / S_PER_HOUR, stepS))
  const intoCellsW = ((after01 - before01) * battery.usableWh * S_PER_HOUR) / stepS
  const neededW = intoCellsW + loadW
  const drawnW =
    neededW > 0
      ? Math.min(step.offeredW, neededW / battery.efficiency01 + chargingOverheadW(battery, step.outsideC))
      : 0
  return { charge01: after01, drawnW, intoCellsW, shortW: 0 }
}

function discharge(step: PackStep, surplusW: number, drawnW: number): PackOutcome {
  const wantedWh = (-surplusW * step.stepS) / S_PER_HOUR
  const givenWh = Math.min(wantedWh, step.charge01 * step.battery.usableWh)
  const perStep = S_PER_HOUR / step.stepS
  return {
    charge01: step.charge01 - givenWh / step.battery.usableWh,
    drawnW,
    intoCellsW: -givenWh * perStep,
    shortW: (wantedWh - givenWh) * perStep,
  }
}

/** Charge after a time at a rate (fraction per s) that tapers linearly in charge from 95 % to its floor. */
function chargedTo(from01: number, ratePerS: number, durationS: number): number {
  let at01 = from01
  let leftS = durationS
  if (at01 < TAPER_FROM_01) {
    const untilS = (TAPER_FROM_01 - at01) / ratePerS
    if (untilS >= leftS) return at01 + ratePerS * leftS
    at01 = TAPER_FROM_01
    leftS -= untilS
  }
  const width = 1 - TAPER_FROM_01
  const floorAt01 = 1 - TAPER_FLOOR_01 * width
  if (at01 < floorAt01) {
    const untilS = (width / ratePerS) * Math.log((1 - at01) / (1 - floorAt01))
    if (untilS >= leftS) return 1 - (1 - at01) * Math.exp((-ratePerS * leftS) / width)
    at01 = floorAt01
    leftS -= untilS
  }
  return Math.min(1, at01 + TAPER_FLOOR_01 * ratePerS * leftS)
}
