/**
 * Two field scenarios, two nights each: inputs and reference energies as printed there (plain arithmetic, 15 % tolerance).
 * Source: scenario files a and b, schema field-scenario/1, fields vehicle.thermal, nights and reference.nights.
 */
export type ScenarioNight = {
  readonly name: string
  readonly latitudeDeg: number
  readonly longitudeDeg: number
  readonly elevationM: number
  /** Hours after local midnight of the first day. */
  readonly plugInH: number
  readonly unplugH: number
  readonly sleepH: readonly [number, number]
  readonly departH: number
  readonly utcOffsetH: number
  /** Outside, °C, hourly from 18:00 to 10:00. */
  readonly tempC: readonly number[]
  readonly windMPerS: number
  readonly humidity01: number
  readonly targetC: number
  readonly bareWPerK: number
  readonly coveredWPerK: number
  readonly awakeLoadW: number
  readonly cop: readonly (readonly [number, number])[]
  readonly maxHeatW: number
  readonly airVolumeM3: number
  readonly usableWh: number
  readonly arrive01: number
  readonly nominalV: number
  readonly breakerA: number
  readonly connector: string
  readonly siteLimitA: number | null
  readonly adapterLimitA: number | null
  readonly chargingUnitLimitA: number
  readonly heldA: number | null
  readonly readings: readonly (readonly [number, number])[]
  readonly legM: number
  readonly whPerKm: number
  readonly fastChargerAtM: number | null
  readonly reference: {
    readonly usableA: number
    readonly wattsAtLoad: number
    readonly climateCoveredKWh: number
    readonly climateBareKWh: number
    readonly fromSiteKWh: number
    readonly departNoHeat: number
    readonly departCovered: number
    readonly departBare: number
    readonly legNeedKWh: number
    readonly lossCoveredWPerK: number
    readonly lossBareWPerK: number
    readonly electricAtLowCoveredW: number
    readonly electricAtLowBareW: number
    readonly marginCoveredKWh: number
  }
}

const CAR_A = {
  utcOffsetH: 1,
  bareWPerK: 52,
  coveredWPerK: 38,
  awakeLoadW: 230,
  cop: [
    [-20, 1.1],
    [-10, 1.4],
    [0, 1.8],
    [10, 2.4],
  ],
  maxHeatW: 5200,
  airVolumeM3: 3.4,
  usableWh: 72_000,
  nominalV: 230,
} as const

const CAR_B = {
  utcOffsetH: -6,
  bareWPerK: 55,
  coveredWPerK: 41,
  awakeLoadW: 260,
  cop: [
    [-20, 1.1],
    [-10, 1.5],
    [0, 2.0],
    [10, 2.6],
  ],
  maxHeatW: 6000,
  airVolumeM3: 3.7,
  usableWh: 75_000,
} as const

export const SCENARIO_NIGHTS: readonly ScenarioNight[] = [
  {
    name: 'a, night 1',
    ...CAR_A,
    latitudeDeg: 61.2,
    longitudeDeg: 9.8,
    elevationM: 420,
    plugInH: 17.5,
    unplugH: 30 + 40 / 60,
    sleepH: [22, 29 + 40 / 60],
    departH: 30.7,
    tempC: [
      -4.6, -5.0, -5.6, -6.2, -6.8, -7.5, -8.2, -8.8, -9.4, -10.0, -10.4, -10.7, -10.9, -11.0, -10.7, -10.0, -8.8,
    ],
    windMPerS: 4,
    humidity01: 0.86,
    targetC: 12,
    arrive01: 0.41,
    connector: 'iec-60309-16-blue',
    breakerA: 16,
    siteLimitA: 10,
    adapterLimitA: null,
    chargingUnitLimitA: 16,
    heldA: null,
    readings: [
      [0, 232],
      [10, 225],
    ],
    legM: 138_000,
    whPerKm: 232,
    fastChargerAtM: null,
    reference: {
      usableA: 10,
      wattsAtLoad: 2250,
      climateCoveredKWh: 8.3,
      climateBareKWh: 10.3,
      fromSiteKWh: 29.8,
      departNoHeat: 0.77,
      departCovered: 0.66,
      departBare: 0.63,
      legNeedKWh: 32,
      lossCoveredWPerK: 48.3,
      lossBareWPerK: 63,
      electricAtLowCoveredW: 990,
      electricAtLowBareW: 1237,
      marginCoveredKWh: 8.2,
    },
  },
  {
    name: 'a, night 2',
    ...CAR_A,
    latitudeDeg: 61.6,
    longitudeDeg: 9.1,
    elevationM: 760,
    plugInH: 16.75,
    unplugH: 30.25,
    sleepH: [21.5, 29 + 20 / 60],
    departH: 30 + 40 / 60,
    tempC: [
      -7.8, -8.5, -9.2, -10.1, -11.0, -12.0, -13.0, -13.9, -14.8, -15.5, -16.2, -16.6, -16.9, -17.0, -16.6, -15.5,
      -13.9,
    ],
    windMPerS: 7,
    humidity01: 0.78,
    targetC: 10,
    arrive01: 0.47,
    connector: 'cee-7-3-schuko',
    breakerA: 13,
    siteLimitA: null,
    adapterLimitA: 8,
    chargingUnitLimitA: 10,
    heldA: null,
    readings: [
      [0, 229],
      [8, 219],
    ],
    legM: 196_000,
    whPerKm: 238,
    fastChargerAtM: 92_000,
    reference: {
      usableA: 8,
      wattsAtLoad: 1752,
      climateCoveredKWh: 10.3,
      climateBareKWh: 13,
      fromSiteKWh: 23.7,
      departNoHeat: 0.76,
      departCovered: 0.62,
      departBare: 0.58,
      legNeedKWh: 46.6,
      lossCoveredWPerK: 49.7,
      lossBareWPerK: 64.9,
      electricAtLowCoveredW: 1299,
      electricAtLowBareW: 1643,
      marginCoveredKWh: -9.5,
    },
  },
  {
    name: 'b, night 1',
    ...CAR_B,
    latitudeDeg: 44.35,
    longitudeDeg: -107.9,
    elevationM: 2130,
    plugInH: 18 + 20 / 60,
    unplugH: 29 + 50 / 60,
    sleepH: [21.5, 29.25],
    departH: 30 + 23 / 60,
    tempC: [9.7, 8.7, 7.4, 6.1, 4.6, 3.0, 1.4, -0.1, -1.4, -2.7, -3.7, -4.4, -4.8, -5.0, -4.4, -2.7, -0.1],
    windMPerS: 3,
    humidity01: 0.55,
    targetC: 13,
    arrive01: 0.34,
    connector: 'nema-tt-30',
    nominalV: 120,
    breakerA: 30,
    siteLimitA: null,
    adapterLimitA: null,
    chargingUnitLimitA: 24,
    heldA: null,
    readings: [
      [0, 122],
      [24, 113],
    ],
    legM: 164_000,
    whPerKm: 205,
    fastChargerAtM: null,
    reference: {
      usableA: 24,
      wattsAtLoad: 2712,
      climateCoveredKWh: 5,
      climateBareKWh: 5.8,
      fromSiteKWh: 31.2,
      departNoHeat: 0.71,
      departCovered: 0.64,
      departBare: 0.63,
      legNeedKWh: 33.6,
      lossCoveredWPerK: 51,
      lossBareWPerK: 65.5,
      electricAtLowCoveredW: 744,
      electricAtLowBareW: 894,
      marginCoveredKWh: 6.9,
    },
  },
  {
    name: 'b, night 2',
    ...CAR_B,
    latitudeDeg: 44.1,
    longitudeDeg: -107.2,
    elevationM: 1480,
    plugInH: 17 + 40 / 60,
    unplugH: 30.5,
    sleepH: [22, 29.75],
    departH: 30 + 19 / 60,
    tempC: [12.7, 11.7, 10.4, 9.1, 7.6, 6.0, 4.4, 2.9, 1.6, 0.3, -0.7, -1.4, -1.8, -2.0, -1.4, 0.3, 2.9],
    windMPerS: 5,
    humidity01: 0.6,
    targetC: 13,
    arrive01: 0.38,
    connector: 'nema-14-50',
    nominalV: 240,
    breakerA: 50,
    siteLimitA: null,
    adapterLimitA: null,
    chargingUnitLimitA: 32,
    heldA: 24,
    readings: [
      [0, 243],
      [32, 235],
    ],
    legM: 312_000,
    whPerKm: 210,
    fastChargerAtM: 188_000,
    reference: {
      usableA: 24,
      wattsAtLoad: 5688,
      climateCoveredKWh: 4.4,
      climateBareKWh: 5,
      fromSiteKWh: 49.9,
      departNoHeat: 0.91,
      departCovered: 0.91,
      departBare: 0.9,
      legNeedKWh: 65.5,
      lossCoveredWPerK: 52,
      lossBareWPerK: 66.8,
      electricAtLowCoveredW: 633,
      electricAtLowBareW: 751,
      marginCoveredKWh: -5,
    },
  },
]
