/** What the standards for people awake say of a night, each only inside its own range; beyond it nothing is known by them. */
import { ireq, windChillC } from './sources/ireq.ts'
import { pmvInRange, ppdPercent } from './sources/pmv.ts'
import { ASLEEP_MET } from './sleepers-body.ts'
import { MET_W_PER_M2, S_PER_HOUR } from '../units/index.ts'
import type { Utc } from '../units/index.ts'
import type { NightInput, NightOutcome, NightStandards } from './types.ts'

/** Sitting quietly (ISO 8996, ANSI/ASHRAE 55: 1 met) in ordinary indoor winter clothes (ISO 9920: 1 clo). */
const SITTING = { met: 1, clo: 1 } as const
/** Air in a shut cabin, m/s (common practice for rooms without draught). */
const STILL_M_PER_S = 0.1
/** Packing and handling a lead: light work standing, W/m2 (ISO 8996, class low to moderate; from memory). */
const OUTSIDE_WORK_W_PER_M2 = 116
/** Cloth of an ordinary outdoor jacket, l/m2s (ISO 11079's own example). */
const PERMEABILITY_L_PER_M2S = 8
/** Slow steps about the vehicle, m/s. */
const WALK_M_PER_S = 0.3
/** Least wind for which wind chill is defined at 10 m, km/h (ISO 11079 annex D). */
const WIND_CHILL_FROM_KM_PER_H = 4.8
/** Wind chill is meant for air at or below this, °C (ISO 11079 annex D; JAG/TI 2001). */
const WIND_CHILL_TO_C = 10

/**
 * The predicted vote of someone who sits in the cabin at bedtime and of a sleeper at the coldest hour (ISO 7730), and the clothing that work
 * outside asks for on arriving and before leaving (ISO 11079), with wind chill.
 * Input and outcome of one night. Result: votes -3 to 3, share dissatisfied 0 to 1, clo, °C; null where the standard's range does not reach, which
 * is always so for a sleeper. Sources at the functions used.
 */
export function nightStandards(input: NightInput, outcome: NightOutcome): NightStandards {
  return {
    sitting: { atUtc: input.sleepFromUtc, ...voteAt(input.sleepFromUtc, outcome, SITTING) },
    asleep: {
      atUtc: outcome.coldestBedUtc,
      ...voteAt(outcome.coldestBedUtc, outcome, { met: ASLEEP_MET, clo: SITTING.clo }),
      leastClo: clothing(input, outcome.coldestBedUtc, ASLEEP_MET * MET_W_PER_M2).leastClo,
    },
    outside: [input.arriveUtc, input.departUtc].map((atUtc) => ({
      atUtc,
      ...clothing(input, atUtc, OUTSIDE_WORK_W_PER_M2),
      windChillC: chillAt(input, atUtc),
    })),
  }
}

function voteAt(
  atUtc: Utc,
  { series }: NightOutcome,
  person: { readonly met: number; readonly clo: number },
): { readonly vote: number | null; readonly dissatisfied01: number | null } {
  const found = series.atUtc.findIndex((at) => at >= atUtc)
  const row = found < 0 ? series.atUtc.length - 1 : found
  const airC = series.bedAirC[row] ?? Number.NaN
  const vote = pmvInRange({
    airC,
    // The operative temperature is the mean of air and radiant in still air.
    radiantC: 2 * (series.operativeC[row] ?? Number.NaN) - airC,
    speedMPerS: STILL_M_PER_S,
    humidity01: series.relativeHumidity01[row] ?? 0,
    ...person,
  })
  return { vote, dissatisfied01: vote === null ? null : ppdPercent(vote) / 100 }
}

function weatherAt({ weather }: NightInput, atUtc: Utc) {
  return weather.findLast((step) => step.atUtc <= atUtc) ?? weather[0]
}

function clothing(
  input: NightInput,
  atUtc: Utc,
  metabolicWPerM2: number,
): { readonly leastClo: number | null; readonly neutralClo: number | null } {
  const outside = weatherAt(input, atUtc)
  const required =
    outside === undefined
      ? null
      : ireq({
          metabolicWPerM2,
          workWPerM2: 0,
          airC: outside.tempC,
          radiantC: outside.tempC,
          permeabilityLPerM2S: PERMEABILITY_L_PER_M2S,
          walkMPerS: WALK_M_PER_S,
          windMPerS: outside.windMPerS,
          humidity01: outside.humidity01,
          wornClo: SITTING.clo,
        })
  return { leastClo: required?.minimal.basicClo ?? null, neutralClo: required?.neutral.basicClo ?? null }
}

function chillAt(input: NightInput, atUtc: Utc): number | null {
  const outside = weatherAt(input, atUtc)
  if (outside === undefined || outside.tempC > WIND_CHILL_TO_C) return null
  const windKmPerH = (outside.windMPerS * S_PER_HOUR) / 1000
  return windKmPerH < WIND_CHILL_FROM_KM_PER_H ? null : windChillC(outside.tempC, windKmPerH)
}
