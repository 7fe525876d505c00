/** What every plan of one night shares: weather by step, networks by wind, the supply; made once, run many times. */
import { invariant } from '../result/index.ts'
import { S_PER_HOUR } from '../units/index.ts'
import { supplyOutcome } from './circuit.ts'
import { saturationRatio, dewPointFromPa, saturationPa } from './moisture-saturation.ts'
import { airJPerM3K, airKgPerM3, pressurePa } from './network-air.ts'
import { daylightWPerM2, skyC, skyExchangeWPerM2K } from './network-sky.ts'
import { at } from './network-step.ts'
import { EMISSIVITY_01, buildNetwork } from './network.ts'
import { releaseOf } from './sleepers-body.ts'
import { sunPosition } from './sun.ts'
import type { Network } from './network.ts'
import type { Release } from './sleepers-body.ts'
import type { NightInput, SupplyOutcome, WeatherStep } from './types.ts'

/** Networks are shared between winds this close, m/s. */
const WIND_GRAIN = 0.05
/** Longest step of the integration, s: every temperature then stands within 0.05 K of half the step. */
export const INTEGRATION_S = 100

export type Prepared = {
  readonly input: NightInput
  readonly steps: number
  readonly integrationS: number
  /** Bounds of the steps: multiples of the step from arrival, then departure. */
  readonly boundsUtc: Float64Array
  /** At the bounds: one more than steps. */
  readonly outsideC: Float64Array
  readonly windMPerS: Float64Array
  readonly outsideRatio: Float64Array
  readonly skyC: Float64Array
  /** What the sky draws from a surface at the air's temperature that sees nothing else, W/m2. */
  readonly skyWPerM2: Float64Array
  readonly daylightWPerM2: Float64Array
  readonly pressurePa: number
  readonly airKg: number
  readonly airJPerM3K: number
  readonly airKgPerM3: number
  readonly supply: SupplyOutcome | null
  readonly awake: Release
  readonly asleep: Release
  readonly networkAt: (windMPerS: number, covers: boolean) => Network
}

/** Weather, networks and supply of a night; the input's decisions play no part. Steps count from arrival; the last may be shorter. */
export function prepareNight(input: NightInput, integrationS = INTEGRATION_S): Prepared {
  invariant(input.departUtc > input.arriveUtc, 'a night ends after it begins')
  invariant(input.stepS > 0 && input.weather.length > 0, 'a night has a step and weather')
  const steps = Math.max(1, Math.ceil((input.departUtc - input.arriveUtc) / input.stepS - 1e-9))
  const boundsUtc = Float64Array.from({ length: steps + 1 }, (_, step) =>
    Math.min(input.arriveUtc + step * input.stepS, input.departUtc),
  )
  const atPa = pressurePa(input.elevationM)
  const jPerM3K = airJPerM3K(atPa)
  const networks = new Map<number, Network>()
  return {
    input,
    steps,
    integrationS,
    boundsUtc,
    ...columnsOf(input, boundsUtc, atPa),
    pressurePa: atPa,
    airKg: input.cabin.airVolumeM3 * airKgPerM3(atPa),
    airJPerM3K: jPerM3K,
    airKgPerM3: airKgPerM3(atPa),
    supply: input.supply === null ? null : supplyOutcome(input.supply),
    awake: releaseOf(input.sleepers, false),
    asleep: releaseOf(input.sleepers, true),
    networkAt: (windMPerS, covers) => {
      const grains = Math.round(Math.max(windMPerS, 0) / WIND_GRAIN)
      const key = grains * 2 + (covers ? 1 : 0)
      const known = networks.get(key)
      if (known !== undefined) return known
      const made = buildNetwork(input.cabin, grains * WIND_GRAIN, covers, jPerM3K)
      networks.set(key, made)
      return made
    },
  }
}

type Columns = Pick<Prepared, 'outsideC' | 'windMPerS' | 'outsideRatio' | 'skyC' | 'skyWPerM2' | 'daylightWPerM2'>

function columnsOf(input: NightInput, boundsUtc: Float64Array, atPa: number): Columns {
  const steps = boundsUtc.length - 1
  const columns: Columns = {
    outsideC: new Float64Array(steps + 1),
    windMPerS: new Float64Array(steps + 1),
    outsideRatio: new Float64Array(steps + 1),
    skyC: new Float64Array(steps + 1),
    skyWPerM2: new Float64Array(steps + 1),
    daylightWPerM2: new Float64Array(steps + 1),
  }
  const elevationDeg = sunHeights(input)
  const weather = input.weather.toSorted((left, right) => left.atUtc - right.atUtc)
  let cursor = 0
  for (let step = 0; step <= steps; step += 1) {
    const atUtc = at(boundsUtc, step)
    while (cursor + 1 < weather.length && (weather[cursor + 1]?.atUtc ?? Infinity) <= atUtc) cursor += 1
    const now = between(weather, cursor, atUtc)
    const outsidePa = Math.min(Math.max(now.humidity01, 0), 1) * saturationPa(now.tempC)
    columns.outsideC[step] = now.tempC
    columns.windMPerS[step] = Math.max(0, now.windMPerS)
    columns.outsideRatio[step] = Math.min(Math.max(now.humidity01, 0), 1) * saturationRatio(now.tempC, atPa)
    const sky = skyC(now.tempC, dewPointFromPa(outsidePa), now.cloud01)
    columns.skyC[step] = sky
    columns.skyWPerM2[step] = EMISSIVITY_01 * skyExchangeWPerM2K(now.tempC, sky) * (now.tempC - sky)
    columns.daylightWPerM2[step] = daylightWPerM2(elevationDeg(atUtc), now.cloud01)
  }
  return columns
}

/** Straight lines between weather rows; level before the first and after the last. */
function between(weather: readonly WeatherStep[], cursor: number, atUtc: number): Omit<WeatherStep, 'atUtc'> {
  const left = weather[cursor]
  invariant(left !== undefined, 'weather has a row at the cursor')
  const right = weather[cursor + 1]
  if (right === undefined || atUtc <= left.atUtc) return left
  const share = (atUtc - left.atUtc) / (right.atUtc - left.atUtc)
  const mix = (from: number, to: number): number => from + (to - from) * share
  return {
    tempC: mix(left.tempC, right.tempC),
    windMPerS: mix(left.windMPerS, right.windMPerS),
    humidity01: mix(left.humidity01, right.humidity01),
    cloud01: mix(left.cloud01, right.cloud01),
  }
}

/** Height of the sun over the night, degrees, from hourly positions with straight lines between. */
function sunHeights(input: NightInput): (atUtc: number) => number {
  const hours = Math.ceil((input.departUtc - input.arriveUtc) / S_PER_HOUR) + 1
  const heights = Float64Array.from(
    { length: hours + 1 },
    (_, hour) => sunPosition({ ...input, atUtc: input.arriveUtc + hour * S_PER_HOUR }).elevationDeg,
  )
  return (atUtc) => {
    const hour = (atUtc - input.arriveUtc) / S_PER_HOUR
    const low = Math.min(Math.floor(hour), hours - 1)
    return at(heights, low) + (at(heights, low + 1) - at(heights, low)) * (hour - low)
  }
}
