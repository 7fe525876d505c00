/** Charging control and habits: pilot duty, states, efficiency, driving distance regained. */

/** Current of a pilot duty cycle, A: 10 to 85 % is 0.6 A a percent, to 96 % 2.5 (D - 64); 5 % asks for digital communication, not for amperes (IEC 61851-1, SAE J1772). */
export function pilotCurrentA(dutyPercent: number): number {
  if (dutyPercent <= 8) return 0
  if (dutyPercent < 10) return 6
  if (dutyPercent <= 85) return 0.6 * dutyPercent
  if (dutyPercent <= 96) return 2.5 * (dutyPercent - 64)
  return dutyPercent <= 96.5 ? 80 : 0
}

/** Pilot duty for a current, %, 6 to 80 A; null outside, since charging control cannot ask for it. */
export function pilotDutyPercent(currentA: number): number | null {
  if (currentA < 6 || currentA > 80) return null
  return currentA <= 51 ? currentA / 0.6 : currentA / 2.5 + 64
}

/** Pilot volts by state (SAE J1772): unplugged, plugged, charging, charging with ventilation. */
export const PILOT_STATE_V = { A: 12, B: 9, C: 6, D: 3 } as const

/** Gain of 240 V over 120 V charging, %, in the mean and for small sessions (VEIC 2014, 1,008 sessions). */
export const LEVEL_2_GAIN = { meanPercent: 3, belowTwoKWhPercent: 13 } as const

/** Standing overhead, W, and efficiency, fraction, used for planning (common practice: 200 to 400 W, 0.84 to 0.90). */
export const PLANNING_CHARGE = { overheadW: 300, efficiency01: 0.9 } as const

/** Efficiency of on-board charging before overhead, fraction, by power, kW (from memory). */
const CHARGE_EFFICIENCY: readonly (readonly [powerKW: number, efficiency01: number])[] = [
  [1.4, 0.84],
  [2.9, 0.87],
  [7, 0.9],
]

/** Planning efficiency of alternating-current charging, fraction, at a power, kW; level outside 1.4 to 7 kW. */
export function chargeEfficiency01(powerKW: number): number {
  let left = CHARGE_EFFICIENCY[0]
  for (const right of CHARGE_EFFICIENCY) {
    if (left !== undefined && powerKW <= right[0]) {
      const width = right[0] - left[0]
      return width === 0 ? right[1] : left[1] + ((right[1] - left[1]) * Math.max(0, powerKW - left[0])) / width
    }
    left = right
  }
  return CHARGE_EFFICIENCY.at(-1)?.[1] ?? 1
}

/** Wall to pack in the agency's vehicle model, fraction (NREL FASTSim). */
export const AGENCY_CHARGE_EFFICIENCY_01 = 0.86

/** Energy into the battery from supply power, W: (P - overhead) x efficiency, not negative. */
export const batteryPowerW = (supplyW: number, overheadW: number, efficiency01: number): number =>
  Math.max(0, (supplyW - overheadW) * efficiency01)

/** Driving distance regained, miles an hour of charging, at 240 Wh a mile (common practice 230 to 250). */
export const milesPerHour = (batteryW: number): number => batteryW / 240

/** Electric heat implied by a loss of charging rate, W: rates in miles/h, efficiency fraction, consumption kWh/mile. */
export const impliedHeatW = (
  milesPerHOff: number,
  milesPerHOn: number,
  efficiency01: number,
  kWhPerMile: number,
): number => ((milesPerHOff - milesPerHOn) * kWhPerMile * 1000) / efficiency01

/** Whether a supply carries a heater and the smallest current that charging control can ask for. */
export function chargeWhileHeating(
  supplyA: number,
  volts: number,
  heaterW: number,
  minimumA = 6,
): { readonly possible: boolean; readonly neededW: number; readonly availableW: number } {
  const neededW = minimumA * volts + heaterW
  const availableW = supplyA * volts
  return { possible: neededW <= availableW, neededW, availableW }
}
