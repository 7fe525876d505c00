/** The parked cabin as one node: its loss by body class, cooling curve, air exchange, and a constant-temperature night. */
import { J_PER_WH, S_PER_HOUR, WH_PER_KWH } from '../../units/index.ts'
import { GLASS, coveredUWPerM2K, outsideFilmWPerM2K, paneUWPerM2K } from './glass.ts'

/** Heat carried by a cubic metre of air, Wh/m3K: 1.2 kg/m3 x 1006 J/kgK. */
const AIR_WH_PER_M3_K = (1.2 * 1006) / J_PER_WH

/** Loss by air exchange, W/K: density kg/m3 x specific heat J/kgK x m3 x exchanges an hour. */
export const airLossWPerK = (
  volumeM3: number,
  exchangePerH: number,
  densityKgPerM3 = 1.2,
  heatJPerKgK = 1006,
): number => (densityKgPerM3 * heatJPerKgK * volumeM3 * exchangePerH) / S_PER_HOUR

export type Shell = {
  readonly airVolumeM3: number
  readonly glassM2: number
  readonly bodyM2: number
  readonly bodyUWPerM2K: number
  readonly exchangePerH: number
}

/** Loss of a parked body, W/K, at a wind in m/s and with a cover, m2K/W: glass with its wind film, body, and air exchange. */
export const shellLossWPerK = (shell: Shell, windMPerS: number, coverM2KPerW = 0): number =>
  shell.glassM2 *
    coveredUWPerM2K(paneUWPerM2K({ ...GLASS, outsideWPerM2K: outsideFilmWPerM2K(windMPerS) }), coverM2KPerW) +
  shell.bodyM2 * shell.bodyUWPerM2K +
  AIR_WH_PER_M3_K * shell.airVolumeM3 * shell.exchangePerH

/** Loss of a plate-like cabin, W/K, from sides in m, film in W/m2K and shell in m2K/W (NREL FASTSim 2 defaults: 33.3 W/K, 125 kJ/K). */
export const plateLossWPerK = (input: {
  readonly lengthM: number
  readonly widthM: number
  readonly filmWPerM2K: number
  readonly shellM2KPerW: number
}): number => (input.lengthM * input.widthM) / (1 / input.filmWPerM2K + input.shellM2KPerW)
export const PLATE_HEAT_KJ_PER_K = 125 // NREL FASTSim 2, vehicle_thermal

export type CoolingNode = {
  readonly lossWPerK: number
  readonly heatKJPerK: number
  readonly startC: number
  readonly outsideC: number
  readonly gainW: number
}

/** Time constant, s, and steady temperature, °C, of a one-node cabin. */
export const coolingNode = (node: CoolingNode): { readonly timeS: number; readonly steadyC: number } => ({
  timeS: (node.heatKJPerK * 1000) / node.lossWPerK,
  steadyC: node.outsideC + node.gainW / node.lossWPerK,
})

/** Temperature of a one-node cabin without heating, °C, after a time, s. Worst case: seats and trim slow the later part. */
export function cooledC(node: CoolingNode, durationS: number): number {
  const { timeS, steadyC } = coolingNode(node)
  return steadyC + (node.startC - steadyC) * Math.exp(-durationS / timeS)
}

/** Heater power that holds a temperature, W; not below zero. Loss in W/K, gain in W. */
export const holdingHeatW = (lossWPerK: number, insideC: number, outsideC: number, gainW: number): number =>
  Math.max(0, lossWPerK * (insideC - outsideC) - gainW)

/** A night by the hour at a constant set-point: heater and battery energy, kWh. Outside by the hour in °C, powers in W. */
export function budgetNight(input: {
  readonly lossWPerK: number
  readonly insideC: number
  readonly outsideByHourC: readonly number[]
  readonly gainW: number
  readonly supplyW: number
  readonly overheadW: number
  readonly efficiency01: number
  readonly cop: number
}): { readonly heatKWh: number; readonly heaterElectricKWh: number; readonly batteryKWh: number } {
  let heatWh = 0
  let batteryWh = 0
  for (const outsideC of input.outsideByHourC) {
    const heatW = holdingHeatW(input.lossWPerK, input.insideC, outsideC, input.gainW)
    heatWh += heatW
    batteryWh += (input.supplyW - heatW / input.cop - input.overheadW) * input.efficiency01
  }
  return {
    heatKWh: heatWh / WH_PER_KWH,
    heaterElectricKWh: heatWh / input.cop / WH_PER_KWH,
    batteryKWh: batteryWh / WH_PER_KWH,
  }
}

/** Air exchange of a stationary car, an hour: closed with the fan off, wind-driven leakage, one window open (Ott 2008; Knibbs 2009, abstracts). */
export const PARKED_EXCHANGE = { closedMaximumPerH: 1, closedWindyMaximumPerH: 1.4, oneWindowOpenPerH: 6.5 } as const
/** Air exchange from standing still to driving, an hour: the span of the studies (as summed up in one abstract). */
export const DRIVING_EXCHANGE = { leastPerH: 0.42, mostPerH: 76 } as const
