/** Direct-current charging: power against charge for a warm battery, sharing of a cabinet, and time between two charges. */
import { S_PER_HOUR } from '../../units/index.ts'

/**
 * Share of the peak power taken at a charge (fraction), warm battery; straight lines between.
 * Common practice: half full from empty in 10 min, 80 % in 30 min and about 160 of 250 kW at 38 %, for a 75 kWh pack.
 */
const CURVE: readonly (readonly [charge01: number, share01: number])[] = [
  [0, 1],
  [0.3, 1],
  [0.38, 0.7],
  [0.5, 0.54],
  [0.6, 0.34],
  [0.7, 0.24],
  [0.8, 0.18],
  [0.9, 0.1],
  [1, 0.03],
]

/** Share of peak power that a warm battery takes at a charge, fraction; charge outside 0 to 1 is held to the ends. */
export function fastChargeShare01(charge01: number): number {
  let left = CURVE[0]
  for (const right of CURVE) {
    if (left !== undefined && charge01 <= right[0]) {
      const width = right[0] - left[0]
      return width === 0 ? right[1] : left[1] + ((right[1] - left[1]) * Math.max(0, charge01 - left[0])) / width
    }
    left = right
  }
  return CURVE.at(-1)?.[1] ?? 0
}

export type FastCharge = { readonly usableWh: number; readonly peakW: number; readonly chargerW: number }

/** Power into the battery at a charge, W: the least of the battery's curve and the charger. */
export const fastChargePowerW = (charge: FastCharge, charge01: number): number =>
  Math.min(charge.chargerW, charge.peakW * fastChargeShare01(charge01))

/** Steps of the time integral over the whole charge range; the midpoint rule is within 0.1 % at this many. */
const STEPS = 400

/** Seconds of charging since empty, at each of `STEPS + 1` equal charges. */
export function fastChargeClock(charge: FastCharge): readonly number[] {
  const clock = [0]
  let sum = 0
  for (let i = 0; i < STEPS; i += 1) {
    sum += (charge.usableWh * S_PER_HOUR) / STEPS / fastChargePowerW(charge, (i + 0.5) / STEPS)
    clock.push(sum)
  }
  return clock
}

/** Clock reading at a charge, s, straight between its points. */
export function clockAt(clock: readonly number[], charge01: number): number {
  const place = Math.min(Math.max(charge01, 0), 1) * (clock.length - 1)
  const low = Math.floor(place)
  const from = clock[low] ?? 0
  return from + ((clock[low + 1] ?? from) - from) * (place - low)
}

/** Charge reached after plugging in for a time, fraction. Start a fraction, duration in s. */
export function chargeAfter(charge: FastCharge, start01: number, durationS: number): number {
  const clock = fastChargeClock(charge)
  const wanted = clockAt(clock, start01) + durationS
  const above = clock.findIndex((atS) => atS >= wanted)
  if (above < 0) return 1
  const high = clock[above] ?? wanted
  const low = clock[above - 1] ?? high
  const part = high === low ? 0 : (wanted - low) / (high - low)
  return Math.max(start01, (above - 1 + part) / STEPS)
}

/** Power given to each car on one cabinet, same unit as given: equal shares, and what one cannot take goes to the others. */
export function shareCabinet(cabinetW: number, wantedW: readonly number[]): readonly number[] {
  const given = wantedW.map(() => 0)
  let leftW = cabinetW
  let waiting = wantedW.map((_, index) => index)
  while (waiting.length > 0) {
    const share = leftW / waiting.length
    const satisfied = waiting.filter((index) => (wantedW[index] ?? 0) <= share)
    const served = satisfied.length > 0 ? satisfied : waiting
    for (const index of served) {
      const power = Math.min(share, wantedW[index] ?? 0)
      given[index] = power
      leftW -= power
    }
    if (satisfied.length === 0) break
    waiting = waiting.filter((index) => !satisfied.includes(index))
  }
  return given
}
