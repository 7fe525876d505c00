/** A night at -12 °C that a fault may spoil, warm in a good bag and cold in a thin one, with legs and bedding to set against it. */
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import type { FaultAdvice } from '../../../shared/climate/answers.ts'
import type { BeddingSet, Fault, LegParameters, NightInput, Sleeper } from '../../../shared/climate/index.ts'
import { BATTERY, at, night, plainLeg, sleeper, steadyWeather, withDecisions } from './night-fixture.ts'

export const WH_PER_KM = 200
export const leg = (distanceM: number): LegParameters => plainLeg({ distanceM, whPerKm: WH_PER_KM, outsideC: 20 })
export const WARM_BAG = { comfortC: -25, coverClo: 12, matM2KPerW: 1 }
export const THIN_BAG = { comfortC: 12, coverClo: 3, matM2KPerW: 0.9 }

/** At -12 °C, heated to 16 °C until eight hours after arrival and to 18 °C from ten, 0.55 in the battery, warm in any case. */
export const HEATED: NightInput = withDecisions(
  night({
    weather: steadyWeather(-12),
    sleepers: [sleeper({ bedding: WARM_BAG })],
    stepS: 900,
    battery: { ...BATTERY, arrive01: 0.55 },
  }),
  {
    setPoints: [
      { fromUtc: at(3), tempC: 16 },
      { fromUtc: at(8), tempC: null },
      { fromUtc: at(10), tempC: 18 },
    ],
  },
)
export const LOST: Fault = { kind: 'supply-lost', atUtc: at(5) }
export const FAILED: Fault = { kind: 'heater-fails', atUtc: at(6) }
export const codes = ({ actions }: FaultAdvice): readonly string[] => actions.map(({ code }) => code)

/** Energy in the battery at departure, Wh, by a run as coarse as the trials. */
export const departWhOf = (input: NightInput): number =>
  runNight(prepareNight(input, 900), input.decisions).charge01 * 60_000

/** A leg that a battery with so much in it just makes, with the tenth in reserve kept. */
export const legOfWh = (wh: number): LegParameters => leg(((wh - 6000) / WH_PER_KM) * 1000)

/** Cold without the heating; the heater fails two hours into the night. */
export const cold = (over: Partial<NightInput> = {}, decisions: Partial<NightInput['decisions']> = {}): NightInput =>
  withDecisions({ ...HEATED, sleepers: [sleeper({ bedding: THIN_BAG })], ...over }, decisions)
export const set = (id: string, bySleeper: Readonly<Record<string, Sleeper['bedding']>>, moves = 1): BeddingSet => ({
  id,
  bySleeper: Object.entries(bySleeper).map(([sleeperId, bedding]) => ({ sleeperId, bedding })),
  moves,
  volumeMm3: 1e7,
})
