/** Nights that were read, as the climate engine's input: the cabin's loss is learned from them. */
import { legNeedWh } from '../../climate/index.ts'
import type { MeasuredLeg, MeasuredNight, NightInput, WeatherStep } from '../../climate/index.ts'
import type { Night, Trip } from '../../document/index.ts'
import type { Utc } from '../../units/index.ts'
import { nightClock, nightInstant } from '../clock.ts'
import { legParameters, nightInput } from './climate.ts'
import { lastRead, MOMENTS, readCharge } from './readings.ts'

/**
 * Nights with readings that bear on the cabin's loss, each as it was: no margin on the forecast, and as warm or cold
 * outside as was read. Energy of a meter counts from the first reading of that meter, the rest from bedtime.
 */
export function measuredNights(trip: Trip): readonly MeasuredNight[] {
  return trip.nights.flatMap((night) => {
    const morning = trip.measured.findLast(({ nightId, moment }) => nightId === night.id && moment === 'morning')
    if (morning === undefined) return []
    const clock = nightClock(night)
    const toUtc = nightInstant(night, morning.clock)
    const bedtime = trip.measured.findLast(({ nightId, moment }) => nightId === night.id && moment === 'bedtime')
    const fromUtc = bedtime === undefined ? clock.bedtimeUtc : nightInstant(night, bedtime.clock)
    const metered = meterSpan(trip, night)
    const input = asItWas(trip, night, { fromUtc, toUtc, meanOutsideC: morning.meanOutsideC ?? null })
    const asleep: MeasuredNight = {
      input,
      fromUtc,
      toUtc,
      heatingWh: morning.heatingWh ?? null,
      siteWh: null,
      from01: bedtime?.charge01 ?? null,
      to01: morning.charge01 ?? null,
      lowestInsideC: morning.lowestInsideC ?? null,
      meanInsideC: morning.meanInsideC ?? null,
    }
    const plugged: MeasuredNight | null =
      metered === null
        ? null
        : { ...asleep, ...metered, heatingWh: null, from01: null, to01: null, lowestInsideC: null, meanInsideC: null }
    return [asleep, plugged].filter((one) => one !== null && tells(one)) as readonly MeasuredNight[]
  })
}

/**
 * Legs whose charge was read on leaving and on arriving at the next site. One that could not be driven without a stop, or
 * for which stops were agreed to, tells nothing: what was charged on the way is not known.
 */
export function measuredLegs(trip: Trip): readonly MeasuredLeg[] {
  const { battery } = trip.vehicle
  if (battery === undefined) return []
  return trip.nights.flatMap((night, index) => {
    const next = trip.nights[index + 1]
    const leg = legParameters(trip, night)
    if (next === undefined || leg === null || (night.leg?.acceptedStopsM ?? []).length > 0) return []
    const from01 = readCharge(trip, night.id, 'morning')
    const to01 = readCharge(trip, next.id, 'at-the-post')
    if (from01 === null || to01 === null || to01 >= from01) return []
    if (legNeedWh(leg) > from01 * battery.usableWh) return []
    return [{ leg, usableWh: battery.usableWh, usedWh: null, from01, to01 }]
  })
}

const tells = ({ heatingWh, siteWh, from01, to01, lowestInsideC, meanInsideC }: MeasuredNight): boolean =>
  [heatingWh, siteWh, lowestInsideC, meanInsideC].some((value) => value !== null) || (from01 !== null && to01 !== null)

/** Energy between the first and the last reading of the post's meter; null without two, or where it ran backwards. */
function meterSpan(trip: Trip, night: Night): { fromUtc: Utc; toUtc: Utc; siteWh: number } | null {
  const reads = MOMENTS.flatMap((moment) => {
    const read = lastRead(trip, night.id, moment, 'meterWh')
    return read?.meterWh === undefined ? [] : [{ atUtc: nightInstant(night, read.clock), meterWh: read.meterWh }]
  })
  const [first, last] = [reads[0], reads.at(-1)]
  if (first === undefined || last === undefined || last.atUtc <= first.atUtc || last.meterWh < first.meterWh)
    return null
  return { fromUtc: first.atUtc, toUtc: last.atUtc, siteWh: last.meterWh - first.meterWh }
}

type Span = { readonly fromUtc: Utc; readonly toUtc: Utc; readonly meanOutsideC: number | null }

function asItWas(trip: Trip, night: Night, span: Span): NightInput {
  const observed = { ...night, weather: { ...night.weather, coldMarginK: 0 } }
  const input = nightInput(trip, observed, nightClock(night), {
    charge01: readCharge(trip, night.id, 'at-the-post') ?? night.arriveCharge01 ?? null,
    leisure01: night.leisureCharge01 ?? null,
  })
  return { ...input, weather: shifted(input.weather, span) }
}

/** The night's own course of temperature, moved so that its mean is what the thermometer outside said. */
function shifted(weather: readonly WeatherStep[], { fromUtc, toUtc, meanOutsideC }: Span): readonly WeatherStep[] {
  const within = weather.filter(({ atUtc }) => atUtc >= fromUtc && atUtc <= toUtc)
  if (meanOutsideC === null || within.length === 0) return weather
  const byK = meanOutsideC - within.reduce((sum, { tempC }) => sum + tempC, 0) / within.length
  return weather.map((step) => ({ ...step, tempC: step.tempC + byK }))
}
