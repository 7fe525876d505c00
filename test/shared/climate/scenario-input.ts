/** A scenario night as the engine's input: the scenario's own overrides, nothing of ours. */
import { cabinDefaults } from '../../../shared/climate/index.ts'
import { HOUR_S, night, sleeper, supply } from './night-fixture.ts'
import type { NightInput } from '../../../shared/climate/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import type { ScenarioNight } from './scenario-nights.ts'

/** 2027-02-12 00:00 UTC; the date matters only for the sun. */
const MIDNIGHT = 1_802_390_400
/** Heating starts an hour before bed (the scenarios' totals say about as much). */
const LEAD_H = 1

export function scenarioInput(of: ScenarioNight, heated: boolean, covers: boolean): NightInput {
  const at = (hour: number): Utc => Math.round(MIDNIGHT + (hour - of.utcOffsetH) * HOUR_S) as Utc
  const base = night()
  return {
    ...base,
    latitudeDeg: of.latitudeDeg,
    longitudeDeg: of.longitudeDeg,
    elevationM: of.elevationM,
    arriveUtc: at(of.plugInH - 0.25),
    sleepFromUtc: at(of.sleepH[0]),
    sleepToUtc: at(of.sleepH[1]),
    departUtc: at(Math.max(of.departH, of.unplugH)),
    weather: of.tempC.map((tempC, index) => ({
      atUtc: at(18 + index),
      tempC,
      windMPerS: of.windMPerS,
      humidity01: of.humidity01,
      cloud01: 0.5,
    })),
    cabin: {
      ...cabinDefaults('estate'),
      airVolumeM3: of.airVolumeM3,
      lossBareWPerK: of.bareWPerK,
      lossCoveredWPerK: of.coveredWPerK,
      windFactorPerMPerS: 0.012,
      freshAirM3PerH: 25,
    },
    heater: {
      ...base.heater,
      maxHeatW: of.maxHeatW,
      awakeLoadW: of.awakeLoadW,
      cop: of.cop.map(([outsideC, value]) => ({ outsideC, value })),
    },
    sleepers: [sleeper({ sleeps: 'average' })],
    supply: supply({
      connector: of.connector,
      nominalV: of.nominalV,
      breakerA: of.breakerA,
      siteLimitA: of.siteLimitA,
      adapterLimitA: of.adapterLimitA,
      chargingUnitLimitA: of.chargingUnitLimitA,
      heldA: of.heldA,
      readings: of.readings.map(([currentA, volts]) => ({ currentA, volts })),
      plugInUtc: at(of.plugInH),
      unplugUtc: at(of.unplugH),
    }),
    battery: base.battery === null ? null : { ...base.battery, usableWh: of.usableWh, arrive01: of.arrive01 },
    leg: {
      distanceM: of.legM,
      whPerKm: of.whPerKm,
      speedKmPerH: null,
      climbM: 0,
      outsideC: -5,
      reserve01: 0.1,
      massG: 1_900_000,
      dragAreaM2: null,
      rollingCoefficient: null,
      auxiliaryW: null,
      fastChargers: of.fastChargerAtM === null ? [] : [{ atM: of.fastChargerAtM, powerW: 100_000, name: null }],
    },
    decisions: {
      ...base.decisions,
      setPoints: heated ? [{ fromUtc: at(of.sleepH[0] - LEAD_H), tempC: of.targetC }] : [],
      covers,
    },
  }
}
