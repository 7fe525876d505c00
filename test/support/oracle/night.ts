/** Judges one night from its own columns: every watt-hour bought, burnt, stored or lost is added up again, by the step and not by the simulation's sums. */
import type { NightInput, NightOutcome } from '../../../shared/climate/index.ts'

/** Energy in and out agree to this share of what flowed. */
const AGREE_01 = 0.005
/** A watt-hour or two of rounding on nights where hardly anything flows. */
const FLOOR_WH = 2
const S_PER_H = 3600
/** Dry heat that a person asleep gives to the cabin at least, W: a third of 60 W on a warm night (ASHRAE tables, rounded outwards). */
const PERSON_W = 20

export function nightFaults(input: NightInput, outcome: NightOutcome): readonly string[] {
  const { series } = outcome
  const faults: string[] = []
  const sum = (column: readonly number[]): number =>
    column.reduce((total, value, step) => total + value * durationH(input, series.atUtc, step), 0)
  const agree = (what: string, a: number, b: number, through = Math.max(Math.abs(a), Math.abs(b))): void => {
    if (Math.abs(a - b) > FLOOR_WH + AGREE_01 * through) faults.push(`${what}: ${a.toFixed(1)} against ${b.toFixed(1)}`)
  }
  for (const [name, column] of Object.entries(series)) {
    if (column.length !== series.atUtc.length)
      faults.push(`${name} has ${column.length} of ${series.atUtc.length} steps`)
    if (column.some((value) => !Number.isFinite(value))) faults.push(`${name} holds a value that is no number`)
  }
  agree('energy from the site', sum(series.supplyW), outcome.fromSiteWh)
  agree('heating', sum(series.heatingElectricW) + sum(series.bedHeatW), outcome.heatingWh)
  if (input.battery !== null && outcome.depart01 !== null && outcome.arrive01 !== null) {
    const storedWh = (outcome.depart01 - outcome.arrive01) * input.battery.usableWh
    agree('battery', sum(series.chargeW), storedWh, sum(series.supplyW) + Math.abs(storedWh))
    const spentWh = storedWh + sum(series.heatingElectricW) + sum(series.bedHeatW)
    if (spentWh > sum(series.supplyW) * (1 + AGREE_01) + FLOOR_WH)
      faults.push(`more came out (${spentWh.toFixed(0)} Wh) than the site gave (${sum(series.supplyW).toFixed(0)} Wh)`)
    if (series.charge01.some((charge) => charge < -1e-9 || charge > 1 + 1e-9)) faults.push('charge outside 0 to 1')
    if (series.charge01.at(-1) !== undefined && Math.abs((series.charge01.at(-1) ?? 0) - outcome.depart01) > 0.02)
      faults.push('last charge is not the one at departure')
  }
  faults.push(...supplyFaults(input, outcome), ...heatFaults(input, outcome, sum))
  const { balance } = outcome
  agree(
    'heat balance',
    balance.heatInWh,
    balance.heatOutWh + balance.storedWh,
    Math.abs(balance.heatInWh) + Math.abs(balance.heatOutWh),
  )
  agree('heat lost by way', balance.shellWh + balance.freshAirWh + balance.skyWh, balance.heatOutWh)
  if (Math.abs(balance.waterInG - balance.waterOutG - balance.waterStoredG) > 0.5 + AGREE_01 * balance.waterInG)
    faults.push('water does not balance')
  return faults
}

/** A row carries the end of its step; its powers are means from the row before, the first from arrival. */
function durationH(input: NightInput, at: readonly number[], step: number): number {
  return ((at[step] ?? 0) - (at[step - 1] ?? input.arriveUtc)) / S_PER_H
}

/** Never more current than the least limit, never anything while unplugged. */
function supplyFaults(input: NightInput, { series, supply }: NightOutcome): string[] {
  if (input.supply === null) return series.supplyW.some((watts) => watts !== 0) ? ['power without a supply'] : []
  const { plugInUtc, unplugUtc, readings, nominalV } = input.supply
  const faults: string[] = []
  const highestV = Math.max(nominalV, ...readings.map(({ volts }) => volts), withoutLoadV(readings))
  const limitA = supply?.usableA ?? 0
  const phases = nominalV >= 380 ? Math.sqrt(3) : 1
  series.supplyW.forEach((watts, step) => {
    const to = series.atUtc[step] ?? 0
    const from = series.atUtc[step - 1] ?? input.arriveUtc
    if (watts > 0 && (to <= plugInUtc || from >= unplugUtc)) faults.push(`power while unplugged at step ${step}`)
    if (watts > phases * highestV * limitA * 1.001 + 1) faults.push(`${watts.toFixed(0)} W is over ${limitA} A`)
  })
  const limits = [
    input.supply.siteLimitA,
    input.supply.leadLimitA,
    input.supply.adapterLimitA,
    input.supply.chargingUnitLimitA,
    input.supply.heldA,
    input.supply.onboardMaximumA,
    input.supply.breakerA,
  ]
  const least = Math.min(...limits.filter((limit) => limit !== null))
  if (limitA > least) faults.push(`usable ${limitA} A is over the least limit ${least} A`)
  return faults
}

/**
 * Voltage that the readings point to at no load: the line through each pair carried to zero current,
 * pairs weighted by the square of their distance. That mean is the least-squares intercept.
 */
function withoutLoadV(readings: readonly { readonly currentA: number; readonly volts: number }[]): number {
  let weights = 0
  let sum = 0
  readings.forEach((one, at) => {
    for (const other of readings.slice(at + 1)) {
      const apartA = other.currentA - one.currentA
      if (apartA === 0) continue
      weights += apartA ** 2
      sum += apartA ** 2 * (one.volts - (one.currentA * (other.volts - one.volts)) / apartA)
    }
  })
  return weights === 0 ? 0 : sum / weights
}

/** The heat that entered is at least the heater's and people's, at most with a full sun and warm people; colder than outside needs a reason. */
function heatFaults(input: NightInput, outcome: NightOutcome, sum: (column: readonly number[]) => number): string[] {
  const { series, balance } = outcome
  const faults: string[] = []
  const hours = (input.departUtc - input.arriveUtc) / S_PER_H
  const heaterWh = sum(series.heatW)
  const leastWh = heaterWh + PERSON_W * input.sleepers.length * hours
  if (balance.heatInWh < leastWh - AGREE_01 * Math.abs(leastWh) - FLOOR_WH)
    faults.push(`heat in ${balance.heatInWh.toFixed(0)} Wh is under heater and people ${leastWh.toFixed(0)} Wh`)
  if (series.heatW.some((watts) => watts > input.heater.maxHeatW * 1.001 + 1))
    faults.push('heat over the heater’s maximum')
  // The clear sky can pull a skin below the air, but not by more than it is colder: 30 K bounds it (Clark and Allen 1978, dry winter sky).
  if (series.bedAirC.some((tempC, step) => tempC < (series.outsideC[step] ?? 0) - 30))
    faults.push('bed air far below the outside')
  return faults
}
