/** Invented nights for the tests of the night engine: one plain night to vary, and seeded random ones. */
import { cabinDefaults } from '../../../shared/climate/index.ts'
import type {
  BatteryParameters,
  LegParameters,
  LeisureParameters,
  NightInput,
  Sleeper,
  SupplyParameters,
  WeatherStep,
} from '../../../shared/climate/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

export const HOUR_S = 3600
/** 2027-01-15 17:00 UTC. */
export const ARRIVE = 1_800_032_400
export const at = (hoursAfterArrival: number): Utc => (ARRIVE + Math.round(hoursAfterArrival * HOUR_S)) as Utc

export const steadyWeather = (tempC: number, over: Partial<WeatherStep> = {}): WeatherStep[] => [
  { atUtc: at(0), tempC, windMPerS: 1, humidity01: 0.8, cloud01: 1, ...over },
]

/** Straight fall from one temperature to another over the night. */
export const fallingWeather = (fromC: number, toC: number, over: Partial<WeatherStep> = {}): WeatherStep[] =>
  [0, 14].map((hour) => ({
    atUtc: at(hour),
    tempC: hour === 0 ? fromC : toC,
    windMPerS: 2,
    humidity01: 0.8,
    cloud01: 0.5,
    ...over,
  }))

export const sleeper = (over: Partial<Sleeper> = {}): Sleeper => ({
  id: 'one',
  label: 'One',
  heightMm: 1750,
  massG: 72_000,
  sleeps: 'average',
  bedding: { comfortC: -2, coverClo: 5.5, matM2KPerW: 0.9 },
  ...over,
})

export const supply = (over: Partial<SupplyParameters> = {}): SupplyParameters => ({
  connector: 'iec-60309-16-blue',
  nominalV: 230,
  breakerA: 16,
  siteLimitA: 10,
  leadLimitA: null,
  adapterLimitA: null,
  chargingUnitLimitA: null,
  heldA: null,
  onboardMaximumA: null,
  minimumA: 6,
  readings: [
    { currentA: 0, volts: 232 },
    { currentA: 10, volts: 225 },
  ],
  earthOk: 'yes',
  polarityReversed: 'no',
  otherLoadW: 0,
  plugInUtc: at(0.5),
  unplugUtc: at(13.5),
  pricePerKWh: 0.4,
  fixedPrice: 0,
  chargeAllowed: true,
  ...over,
})

/** 60 kWh, half full, charged to 0.9. */
export const BATTERY: BatteryParameters = {
  usableWh: 60_000,
  reserve01: 0.1,
  chargeLimit01: 0.9,
  efficiency01: 0.88,
  overheadW: 0,
  coldOverheadW: 0,
  arrive01: 0.5,
  fastMaxW: 100_000,
}

/** 1.2 kWh, half full, 30 W drawn by what is on board. */
export const LEISURE: LeisureParameters = {
  kind: 'lfp',
  usableWh: 1200,
  reserve01: 0.2,
  chargerW: 235,
  loadW: 30,
  arrive01: 0.5,
  inverterMaxW: 0,
}

/** 50 km at 200 Wh/km, stated and not modelled: 10 kWh. */
export const plainLeg = (over: Partial<LegParameters> = {}): LegParameters => ({
  distanceM: 50_000,
  whPerKm: 200,
  speedKmPerH: null,
  climbM: 0,
  outsideC: 10,
  reserve01: 0.1,
  massG: 1_800_000,
  dragAreaM2: null,
  rollingCoefficient: null,
  auxiliaryW: null,
  fastChargers: [],
  ...over,
})

/** Default estate at -5 °C for 14 h, one sleeper from hour 4 to 12, heated to 12 °C from hour 3, plugged in. */
export const night = (over: Partial<NightInput> = {}): NightInput => ({
  latitudeDeg: 50,
  longitudeDeg: 8,
  elevationM: 200,
  arriveUtc: at(0),
  sleepFromUtc: at(4),
  sleepToUtc: at(12),
  departUtc: at(14),
  weather: steadyWeather(-5),
  cabin: cabinDefaults('estate'),
  heater: {
    kind: 'heat-pump',
    maxHeatW: 5000,
    minHeatW: 0,
    cop: [],
    canCool: false,
    awakeLoadW: 250,
    mayRunAllNight: true,
    switchesOffAfterS: null,
    switchesOffBelow01: null,
  },
  bedHeaters: [],
  sleepers: [sleeper()],
  supply: supply(),
  battery: BATTERY,
  leisure: null,
  leg: null,
  decisions: {
    setPoints: [{ fromUtc: at(3), tempC: 12 }],
    bedHeaterIds: [],
    currentA: null,
    chargeLimit01: 0.9,
    windowGapMm: 0,
    windowSides: 0,
    covers: false,
  },
  stepS: 300,
  fault: null,
  ...over,
})

export const withDecisions = (input: NightInput, over: Partial<NightInput['decisions']>): NightInput => ({
  ...input,
  decisions: { ...input.decisions, ...over },
})

/** Uniform numbers 0 to 1 from a seed (mulberry32). */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

const BODIES = ['hatchback', 'estate', 'crossover', 'van-bare', 'van-insulated'] as const
const HEATERS = ['heat-pump', 'resistance', 'mains-fan-heater', 'none'] as const

/** A random night: any body, weather, heater, supply, people, gap and covers. */
export function randomNight(seed: number): NightInput {
  const random = randomFrom(seed)
  const between = (low: number, high: number): number => low + (high - low) * random()
  const pick = <T>(values: readonly [T, ...T[]]): T => values[Math.floor(random() * values.length)] ?? values[0]
  const driving = random() < 0.75
  const people = Math.floor(random() * 3)
  const base = night()
  return {
    ...base,
    latitudeDeg: between(-55, 65),
    longitudeDeg: between(-180, 180),
    elevationM: between(0, 3000),
    weather: Array.from({ length: 15 }, (_, hour) => ({
      atUtc: at(hour),
      tempC: between(-22, 24) * 0.3 + between(-18, 22) * 0.7,
      windMPerS: between(0, 12),
      humidity01: between(0.2, 1),
      cloud01: random(),
    })),
    cabin: { ...cabinDefaults(pick(BODIES)), lossScale: between(0.6, 1.8) },
    heater: {
      ...base.heater,
      kind: pick(HEATERS),
      maxHeatW: between(500, 6000),
      minHeatW: between(0, 800),
      canCool: random() < 0.5,
    },
    bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }],
    sleepers: Array.from({ length: people }, (_, index) => sleeper({ id: `s${index}` })),
    supply: random() < 0.7 ? supply({ otherLoadW: between(0, 300) }) : null,
    battery: driving ? { ...(base.battery ?? invented), arrive01: between(0.1, 0.9) } : null,
    leisure: driving
      ? null
      : {
          kind: 'lfp',
          usableWh: 1200,
          reserve01: 0.2,
          chargerW: 235,
          loadW: 30,
          arrive01: between(0.3, 1),
          inverterMaxW: 0,
        },
    decisions: {
      ...base.decisions,
      setPoints: [
        { fromUtc: at(between(0, 4)), tempC: between(5, 22) },
        { fromUtc: at(between(4, 9)), tempC: random() < 0.5 ? null : between(5, 18) },
      ],
      bedHeaterIds: random() < 0.5 ? ['bed'] : [],
      windowGapMm: random() < 0.5 ? 0 : between(0, 40),
      windowSides: 1 + Math.floor(random() * 2),
      covers: random() < 0.5,
    },
    stepS: pick([300, 600, 900]),
  }
}

const invented: NonNullable<NightInput['battery']> = {
  usableWh: 60_000,
  reserve01: 0.1,
  chargeLimit01: 0.9,
  efficiency01: 0.88,
  overheadW: 200,
  coldOverheadW: 300,
  arrive01: 0.5,
  fastMaxW: 100_000,
}
