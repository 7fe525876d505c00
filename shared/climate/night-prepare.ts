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

/** Networks are built at multiples of this wind, m/s; between them a straight line is exact to a few parts in 10,000. */
export const WIND_GRAIN_M_PER_S = 0.5
/** Longest step of the integration, s: every temperature then stands within 0.05 K of half the step. */
export const INTEGRATION_S = 100

export type Prepared = {
  readonly input: NightInput
  readonly steps: number
  readonly integrationS: number
  /** Bounds of the steps: multiples of the step from arrival, then departure. */
  readonly boundsUtc: Float64Array
  /** Between knots the weather runs straight: all bounds, and the weather's own rows. */
  readonly knotsUtc: Float64Array
  /** Which knot each bound is. */
  readonly boundKnot: Int32Array
  /** At the knots. */
  readonly outsideC: Float64Array
  readonly windMPerS: Float64Array
  readonly outsideRatio: Float64Array
  readonly skyC: Float64Array
  /** What the sky draws from a surface at the air's temperature that sees nothing else, W/m2. */
  readonly skyWPerM2: Float64Array
  readonly daylightWPerM2: Float64Array
  /** Half way to the next knot: cloud and a low sun bend it. */
  readonly halfwayWPerM2: Float64Array
  readonly pressurePa: number
  readonly airKg: number
  readonly airJPerM3K: number
  readonly airKgPerM3: number
  readonly supply: SupplyOutcome | null
  readonly awake: Release
  readonly asleep: Release
  /** By wind in whole grains; each is built once. */
  readonly networkAt: (grains: number, covers: boolean) => Network
}

/** Weather, networks and supply of a night; the input's decisions play no part. Steps count from arrival; the last may be shorter. */
export function prepareNight(input: NightInput, integrationS = INTEGRATION_S): Prepared {
  invariant(input.departUtc > input.arriveUtc, 'a night ends after it begins')
  invariant(input.stepS > 0 && input.weather.length > 0, 'a night has a step and weather')
  const steps = Math.max(1, Math.ceil((input.departUtc - input.arriveUtc) / input.stepS - 1e-9))
  const boundsUtc = Float64Array.from({ length: steps + 1 }, (_, step) =>
    Math.min(input.arriveUtc + step * input.stepS, input.departUtc),
  )
  const knots = knotsOf(input, boundsUtc)
  const atPa = pressurePa(input.elevationM)
  const jPerM3K = airJPerM3K(atPa)
  const bare: Network[] = []
  const covered: Network[] = []
  return {
    input,
    steps,
    integrationS,
    boundsUtc,
    ...knots,
    ...columnsOf(input, knots.knotsUtc, atPa),
    pressurePa: atPa,
    airKg: input.cabin.airVolumeM3 * airKgPerM3(atPa),
    airJPerM3K: jPerM3K,
    airKgPerM3: airKgPerM3(atPa),
    supply: input.supply === null ? null : supplyOutcome(input.supply),
    awake: releaseOf(input.sleepers, false),
    asleep: releaseOf(input.sleepers, true),
    networkAt: (grains, covers) => {
      const networks = covers ? covered : bare
      return (networks[grains] ??= buildNetwork(input.cabin, grains * WIND_GRAIN_M_PER_S, covers, jPerM3K))
    },
  }
}

/** Knots: the bounds and the weather's rows between them, in order. */
function knotsOf({ weather }: NightInput, boundsUtc: Float64Array): Pick<Prepared, 'knotsUtc' | 'boundKnot'> {
  const bounds = new Set(boundsUtc)
  const [first, last] = [at(boundsUtc, 0), at(boundsUtc, boundsUtc.length - 1)]
  const rows = weather.flatMap(({ atUtc }) => (atUtc > first && atUtc < last && !bounds.has(atUtc) ? [atUtc] : []))
  const knotsUtc = rows.length === 0 ? boundsUtc : Float64Array.from([...bounds, ...new Set<number>(rows)]).sort()
  const boundKnot = new Int32Array(boundsUtc.length)
  let knot = 0
  boundsUtc.forEach((atUtc, step) => {
    while (at(knotsUtc, knot) < atUtc) knot += 1
    boundKnot[step] = knot
  })
  return { knotsUtc, boundKnot }
}

/** Straight line between a knot and the next. */
export const along = (values: Float64Array, knot: number, share01: number): number =>
  at(values, knot) + (at(values, knot + 1) - at(values, knot)) * share01

/** Daylight between a knot and the next, W/m2: the parabola through both and the middle, never below nothing. */
export function daylightAlong(prepared: Prepared, knot: number, share01: number): number {
  const { daylightWPerM2, halfwayWPerM2 } = prepared
  const straight = along(daylightWPerM2, knot, share01)
  const bend = at(halfwayWPerM2, knot) - along(daylightWPerM2, knot, 0.5)
  return Math.max(0, straight + 4 * bend * share01 * (1 - share01))
}

/** Instants at which the outside air passes a temperature, in order. */
export function passings({ knotsUtc, outsideC }: Prepared, levelC: number): readonly number[] {
  const instants: number[] = []
  for (let knot = 0; knot + 1 < knotsUtc.length; knot += 1) {
    const [from, to] = [at(outsideC, knot) - levelC, at(outsideC, knot + 1) - levelC]
    if (from < 0 === to < 0) continue
    instants.push(at(knotsUtc, knot) + ((at(knotsUtc, knot + 1) - at(knotsUtc, knot)) * from) / (from - to))
  }
  return instants
}

type Columns = Pick<
  Prepared,
  'outsideC' | 'windMPerS' | 'outsideRatio' | 'skyC' | 'skyWPerM2' | 'daylightWPerM2' | 'halfwayWPerM2'
>

function columnsOf(input: NightInput, knotsUtc: Float64Array, atPa: number): Columns {
  const column = (): Float64Array => new Float64Array(knotsUtc.length)
  const columns: Columns = {
    outsideC: column(),
    windMPerS: column(),
    outsideRatio: column(),
    skyC: column(),
    skyWPerM2: column(),
    daylightWPerM2: column(),
    halfwayWPerM2: column(),
  }
  const cloud01 = column()
  const elevationDeg = sunHeights(input)
  const weather = input.weather.toSorted((left, right) => left.atUtc - right.atUtc)
  let cursor = 0
  for (let knot = 0; knot < knotsUtc.length; knot += 1) {
    const atUtc = at(knotsUtc, knot)
    while (cursor + 1 < weather.length && (weather[cursor + 1]?.atUtc ?? Infinity) <= atUtc) cursor += 1
    const now = between(weather, cursor, atUtc)
    const outsidePa = Math.min(Math.max(now.humidity01, 0), 1) * saturationPa(now.tempC)
    columns.outsideC[knot] = now.tempC
    columns.windMPerS[knot] = Math.max(0, now.windMPerS)
    columns.outsideRatio[knot] = Math.min(Math.max(now.humidity01, 0), 1) * saturationRatio(now.tempC, atPa)
    const sky = skyC(now.tempC, dewPointFromPa(outsidePa), now.cloud01)
    columns.skyC[knot] = sky
    columns.skyWPerM2[knot] = EMISSIVITY_01 * skyExchangeWPerM2K(now.tempC, sky) * (now.tempC - sky)
    columns.daylightWPerM2[knot] = daylightWPerM2(elevationDeg(atUtc), now.cloud01)
    cloud01[knot] = now.cloud01
  }
  bendDaylight(columns, knotsUtc, (halfwayUtc, knot) =>
    daylightWPerM2(elevationDeg(halfwayUtc), along(cloud01, knot, 0.5)),
  )
  return columns
}

/** Daylight half way between knots, where there is any; no row of the weather lies between two of them. */
function bendDaylight(
  columns: Columns,
  knotsUtc: Float64Array,
  daylightAt: (atUtc: number, knot: number) => number,
): void {
  for (let knot = 0; knot + 1 < knotsUtc.length; knot += 1) {
    if (at(columns.daylightWPerM2, knot) <= 0 && at(columns.daylightWPerM2, knot + 1) <= 0) continue
    columns.halfwayWPerM2[knot] = daylightAt((at(knotsUtc, knot) + at(knotsUtc, knot + 1)) / 2, knot)
  }
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
