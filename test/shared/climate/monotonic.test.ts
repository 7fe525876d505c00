import { describe, expect, it } from 'vitest'
import { legNeedWh, simulateNight } from '../../../shared/climate/index.ts'
import { balanceMarginK, requiredClo, sleeperModel } from '../../../shared/climate/sleepers.ts'
import { at, fallingWeather, night, plainLeg, randomFrom, sleeper, supply, withDecisions } from './night-fixture.ts'
import type { BatteryParameters, LegParameters, NightInput, NightOutcome } from '../../../shared/climate/index.ts'

/** Each law is tried on this many random nights, seeds 1 upwards. */
const NIGHTS = 12
/** Rounding and the step of the solver, Wh, K, g and fractions alike. */
const SLACK = 1e-6

type Law = {
  readonly says: string
  /** The night changed a little (0 < by <= 1) in the direction of the law. */
  readonly change: (input: NightInput, by: number) => NightInput
  readonly measure: (outcome: NightOutcome, input: NightInput) => number
  readonly direction: 'never-less' | 'never-more'
  readonly slack?: number
}

const battery: BatteryParameters = {
  usableWh: 70_000,
  reserve01: 0.1,
  chargeLimit01: 0.9,
  efficiency01: 0.88,
  overheadW: 200,
  coldOverheadW: 300,
  arrive01: 0.5,
  fastMaxW: 100_000,
}

/** A heated night on the battery's own energy or on the post, big enough in everything that no limit bites by accident. */
function plainNight(seed: number): NightInput {
  const random = randomFrom(seed * 7919)
  const between = (low: number, high: number): number => low + (high - low) * random()
  const base = night()
  const startC = between(-8, 6)
  return withDecisions(
    {
      ...base,
      weather: fallingWeather(startC, startC - between(0, 8), { windMPerS: between(0, 6), cloud01: random() }),
      cabin: { ...base.cabin, lossScale: between(0.7, 1.5) },
      battery: { ...battery, arrive01: between(0.4, 0.7) },
      sleepers: [sleeper({ bedding: { comfortC: null, coverClo: between(3, 7), matM2KPerW: between(0.3, 1.2) } })],
      bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }],
    },
    {
      setPoints: [{ fromUtc: at(3), tempC: between(8, 18) }],
      windowGapMm: between(0, 15),
      windowSides: 2,
      covers: random() < 0.5,
    },
  )
}

const colder = (input: NightInput, by: number): NightInput => ({
  ...input,
  weather: input.weather.map((row) => ({ ...row, tempC: row.tempC - 6 * by })),
})
const warmerSet = (input: NightInput, by: number): NightInput =>
  withDecisions(input, {
    setPoints: input.decisions.setPoints.map((point) => ({
      ...point,
      tempC: point.tempC === null ? null : point.tempC + 4 * by,
    })),
  })
const withCabin = (input: NightInput, over: Partial<NightInput['cabin']>): NightInput => ({
  ...input,
  cabin: { ...input.cabin, ...over },
})
const withHeater = (input: NightInput, over: Partial<NightInput['heater']>): NightInput => ({
  ...input,
  heater: { ...input.heater, ...over },
})
const withBattery = (input: NightInput, over: Partial<BatteryParameters>): NightInput => ({
  ...input,
  battery: { ...(input.battery ?? battery), ...over },
})
const unheated = (input: NightInput): NightInput => withDecisions(input, { setPoints: [] })
const heat = (outcome: NightOutcome): number => outcome.series.heatW.reduce((sum, watts) => sum + watts, 0)
const heating = (outcome: NightOutcome): number => outcome.heatingWh
const depart = (outcome: NightOutcome): number => outcome.depart01 ?? 0
const taken = (outcome: NightOutcome): number => outcome.fromSiteWh
const margin = (outcome: NightOutcome): number => outcome.sleepers[0]?.marginK ?? 0
const lastC = (outcome: NightOutcome): number => outcome.series.bedAirC.at(-1) ?? 0

const LAWS: readonly Law[] = [
  { says: 'colder outside never needs less heat', change: colder, measure: heat, direction: 'never-less' },
  { says: 'colder outside never needs less electricity', change: colder, measure: heating, direction: 'never-less' },
  {
    says: 'colder outside never leaves a warmer bed without heat',
    change: (i, by) => colder(unheated(i), by),
    measure: (o) => o.coldestBedC,
    direction: 'never-more',
  },
  { says: 'colder outside never leaves a fuller battery', change: colder, measure: depart, direction: 'never-more' },
  {
    says: 'colder outside never gives a sleeper more in hand',
    change: (i, by) => colder(unheated(i), by),
    measure: margin,
    direction: 'never-more',
  },
  { says: 'a higher set-point never needs less heat', change: warmerSet, measure: heat, direction: 'never-less' },
  {
    says: 'a higher set-point never leaves a colder bed',
    change: warmerSet,
    measure: (o) => o.coldestBedC,
    direction: 'never-less',
  },
  {
    says: 'a higher set-point never leaves a fuller battery',
    change: warmerSet,
    measure: depart,
    direction: 'never-more',
  },
  {
    says: 'a leakier shell never needs less heat',
    change: (i, by) => withCabin(i, { lossScale: i.cabin.lossScale * (1 + by) }),
    measure: heat,
    direction: 'never-less',
  },
  {
    says: 'more insulation in the body never needs more heat',
    change: (i, by) => withCabin(i, { bodyUWPerM2K: i.cabin.bodyUWPerM2K * (1 - 0.7 * by) }),
    measure: heat,
    direction: 'never-more',
  },
  {
    says: 'thicker covers never need more heat',
    change: (i, by) => withCabin(withDecisions(i, { covers: true }), { coverM2KPerW: i.cabin.coverM2KPerW + by }),
    measure: heat,
    direction: 'never-more',
  },
  {
    says: 'putting covers up never needs more heat',
    change: (i) => withDecisions(i, { covers: true }),
    measure: heat,
    direction: 'never-more',
  },
  {
    says: 'more glass never needs less heat',
    change: (i, by) => withCabin(i, { panes: i.cabin.panes.map((p) => ({ ...p, areaM2: p.areaM2 * (1 + by) })) }),
    measure: heat,
    direction: 'never-less',
  },
  {
    says: 'more fresh air never needs less heat',
    change: (i, by) => withCabin(i, { freshAirM3PerH: i.cabin.freshAirM3PerH + 60 * by }),
    measure: heat,
    direction: 'never-less',
  },
  {
    says: 'more fresh air never leaves staler air',
    change: (i, by) => withCabin(i, { leakagePerH: i.cabin.leakagePerH + 5 * by }),
    measure: (o) => o.co2MaxPpm,
    direction: 'never-more',
  },
  {
    says: 'a wider gap never needs less heat',
    change: (i, by) => withDecisions(i, { windowGapMm: i.decisions.windowGapMm + 20 * by }),
    measure: heat,
    direction: 'never-less',
  },
  {
    says: 'a wider gap never leaves staler air',
    change: (i, by) => withDecisions(i, { windowGapMm: i.decisions.windowGapMm + 20 * by }),
    measure: (o) => o.co2MaxPpm,
    direction: 'never-more',
  },
  {
    says: 'more wind never needs less heat',
    change: (i, by) => ({
      ...i,
      weather: i.weather.map((row) => ({ ...row, windMPerS: row.windMPerS + 4 * by, cloud01: 1 })),
    }),
    measure: heat,
    direction: 'never-less',
    slack: 0.02,
  },
  {
    says: 'a better heat pump never takes more electricity',
    change: (i, by) =>
      withHeater(i, {
        cop: [
          { outsideC: -20, value: 1.1 + by },
          { outsideC: 10, value: 2.6 + by },
        ],
      }),
    measure: heating,
    direction: 'never-more',
  },
  {
    says: 'a stronger heater never leaves a colder bed',
    change: (i, by) => withHeater(i, { maxHeatW: i.heater.maxHeatW * (1 + by) }),
    measure: (o) => o.coldestBedC,
    direction: 'never-less',
  },
  {
    says: 'a lower breaker never takes more from the site',
    change: (i, by) => ({ ...i, supply: supply({ siteLimitA: null, breakerA: 16 - 6 * by }) }),
    measure: taken,
    direction: 'never-more',
  },
  {
    says: 'a lower breaker never charges more',
    change: (i, by) => ({ ...i, supply: supply({ siteLimitA: null, breakerA: 16 - 6 * by }) }),
    measure: depart,
    direction: 'never-more',
  },
  {
    says: 'asking for less current never charges more',
    change: (i, by) => withDecisions(i, { currentA: 10 - 4 * by }),
    measure: depart,
    direction: 'never-more',
  },
  {
    says: 'a lower charge limit never leaves a fuller battery',
    change: (i, by) => withDecisions(withBattery(i, { arrive01: 0.4 }), { chargeLimit01: 0.9 - 0.4 * by }),
    measure: depart,
    direction: 'never-more',
  },
  {
    says: 'a lower charge limit never costs more',
    change: (i, by) => withDecisions(withBattery(i, { arrive01: 0.4 }), { chargeLimit01: 0.9 - 0.4 * by }),
    measure: (o) => o.cost,
    direction: 'never-more',
  },
  {
    says: 'unplugging earlier never leaves a fuller battery',
    change: (i, by) => ({ ...i, supply: supply({ unplugUtc: at(13.5 - 6 * by) }) }),
    measure: depart,
    direction: 'never-more',
  },
  {
    says: 'arriving fuller never leaves emptier',
    change: (i, by) => withBattery(i, { arrive01: (i.battery?.arrive01 ?? 0) + 0.2 * by }),
    measure: depart,
    direction: 'never-less',
  },
  {
    says: 'a better charger never leaves emptier',
    change: (i, by) => withBattery(i, { efficiency01: 0.88 + 0.1 * by }),
    measure: depart,
    direction: 'never-less',
  },
  {
    says: 'more standing overhead never leaves fuller',
    change: (i, by) => withBattery(i, { overheadW: 200 + 300 * by }),
    measure: depart,
    direction: 'never-more',
  },
  {
    says: 'more sag never takes more from the site',
    change: (i, by) => ({
      ...i,
      supply: supply({
        readings: [
          { currentA: 0, volts: 232 },
          { currentA: 10, volts: 225 - 8 * by },
        ],
      }),
    }),
    measure: taken,
    direction: 'never-more',
  },
  {
    says: 'more people never need more heat',
    change: (i) => ({ ...i, sleepers: [...i.sleepers, sleeper({ id: 'two' })] }),
    measure: heat,
    direction: 'never-more',
    slack: 1e-3,
  },
  {
    says: 'more people never leave fresher air',
    change: (i) => ({ ...i, sleepers: [...i.sleepers, sleeper({ id: 'two' })] }),
    measure: (o) => o.co2MaxPpm,
    direction: 'never-less',
  },
  {
    says: 'more people never leave less water inside',
    change: (i) => ({ ...unheated(i), sleepers: [...i.sleepers, sleeper({ id: 'two' })] }),
    measure: (o) => Math.max(...o.series.condensateG.map((g, row) => g + (o.series.frostG[row] ?? 0))),
    direction: 'never-less',
  },
  {
    says: 'more capacity never cools faster on a falling night',
    change: (i, by) =>
      withCabin(unheated({ ...i, sleepers: [], weather: fallingWeather(4, -10) }), {
        heatCapacityKJPerK: 140 * (1 + by),
      }),
    measure: lastC,
    direction: 'never-less',
  },
  {
    says: 'thicker bedding never leaves less in hand',
    change: (i, by) => ({
      ...unheated(i),
      sleepers: i.sleepers.map((s) => ({ ...s, bedding: { ...s.bedding, coverClo: s.bedding.coverClo + 3 * by } })),
    }),
    measure: margin,
    direction: 'never-less',
  },
  {
    says: 'a thicker mat never leaves less in hand',
    change: (i, by) => ({
      ...unheated(i),
      sleepers: i.sleepers.map((s) => ({ ...s, bedding: { ...s.bedding, matM2KPerW: s.bedding.matM2KPerW + by } })),
    }),
    measure: margin,
    direction: 'never-less',
  },
  {
    says: 'a bed heater never leaves less in hand',
    change: (i) => withDecisions(unheated(i), { bedHeaterIds: ['bed'] }),
    measure: margin,
    direction: 'never-less',
  },
  {
    says: 'a supply lost earlier never leaves a fuller battery',
    change: (i, by) => ({ ...i, fault: { kind: 'supply-lost', atUtc: at(12 - 8 * by) } }),
    measure: depart,
    direction: 'never-more',
  },
  {
    says: 'covers put up earlier never need more heat',
    change: (i, by) => withDecisions(i, { covers: false, coversFromUtc: at(12 - 10 * by) }),
    measure: heat,
    direction: 'never-more',
  },
  {
    says: 'more kept on all night never leaves a fuller battery',
    change: (i, by) => ({ ...i, supply: null, keepsOnW: 200 * by }),
    measure: depart,
    direction: 'never-more',
  },
  {
    says: 'a bigger inverter never leaves less heat where the site gives none',
    change: (i, by) => inverterVan(i, 1000 + 1000 * by),
    measure: heat,
    direction: 'never-less',
  },
  {
    says: 'a heater that switches itself off sooner never takes more',
    change: (i, by) => withHeater(i, { switchesOffAfterS: 3600 * (8 - 7 * by) }),
    measure: heating,
    direction: 'never-more',
  },
]

/** A van without a hookup, its fan heater on the leisure battery. */
const inverterVan = (input: NightInput, inverterMaxW: number): NightInput => ({
  ...withHeater(input, { kind: 'mains-fan-heater', maxHeatW: 2000, minHeatW: 0, awakeLoadW: 0, cop: [] }),
  supply: null,
  battery: null,
  leisure: { kind: 'lfp', usableWh: 5000, reserve01: 0.2, chargerW: 0, loadW: 20, arrive01: 1, inverterMaxW },
})

const BASELINES: Partial<Record<string, (input: NightInput) => NightInput>> = {
  'colder outside never leaves a warmer bed without heat': unheated,
  'colder outside never gives a sleeper more in hand': unheated,
  'thicker covers never need more heat': (input) => withDecisions(input, { covers: true }),
  'putting covers up never needs more heat': (input) => withDecisions(input, { covers: false }),
  'more wind never needs less heat': (input) => ({
    ...input,
    weather: input.weather.map((row) => ({ ...row, cloud01: 1 })),
  }),
  'a better heat pump never takes more electricity': (input) =>
    withHeater(input, {
      cop: [
        { outsideC: -20, value: 1.1 },
        { outsideC: 10, value: 2.6 },
      ],
    }),
  'a lower breaker never takes more from the site': (input) => ({ ...input, supply: supply({ siteLimitA: null }) }),
  'a lower breaker never charges more': (input) => ({ ...input, supply: supply({ siteLimitA: null }) }),
  'asking for less current never charges more': (input) => withDecisions(input, { currentA: 10 }),
  'a lower charge limit never leaves a fuller battery': (input) => withBattery(input, { arrive01: 0.4 }),
  'a lower charge limit never costs more': (input) => withBattery(input, { arrive01: 0.4 }),
  'more capacity never cools faster on a falling night': (input) =>
    unheated({ ...input, sleepers: [], weather: fallingWeather(4, -10) }),
  'more people never leave less water inside': unheated,
  'thicker bedding never leaves less in hand': unheated,
  'a thicker mat never leaves less in hand': unheated,
  'a bed heater never leaves less in hand': unheated,
  'covers put up earlier never need more heat': (input) =>
    withDecisions(input, { covers: false, coversFromUtc: at(12) }),
  'more kept on all night never leaves a fuller battery': (input) => ({ ...input, supply: null }),
  'a bigger inverter never leaves less heat where the site gives none': (input) => inverterVan(input, 1000),
  'a heater that switches itself off sooner never takes more': (input) =>
    withHeater(input, { switchesOffAfterS: 8 * 3600 }),
  'a supply lost earlier never leaves a fuller battery': (input) => ({
    ...input,
    fault: { kind: 'supply-lost', atUtc: at(12) },
  }),
}

describe(`laws of the night on ${NIGHTS} random nights each (seeds 1 to ${NIGHTS})`, () => {
  it.each(LAWS.map((law) => [law.says, law] as const))('%s', (says, law) => {
    for (let seed = 1; seed <= NIGHTS; seed += 1) {
      const random = randomFrom(seed)
      const plain = (BASELINES[says] ?? ((input: NightInput) => input))(plainNight(seed))
      const changed = law.change(plainNight(seed), 0.05 + 0.95 * random())
      const before = law.measure(simulateNight(plain), plain)
      const after = law.measure(simulateNight(changed), changed)
      const slack = (law.slack ?? SLACK) * Math.max(1, Math.abs(before))
      const holds = law.direction === 'never-less' ? after >= before - slack : after <= before + slack
      if (!holds) throw new Error(`seed ${seed}: ${says}: ${before} then ${after}`)
    }
    expect(LAWS.length).toBeGreaterThanOrEqual(20)
  })

  it('more insulation asked for the colder, and never more than 15 clo', () => {
    const model = sleeperModel(sleeper(), 1, [])
    let before = 0
    for (let tempC = 25; tempC >= -40; tempC -= 2) {
      const climate = { operativeC: tempC, floorC: tempC, feetC: tempC, bedAirC: tempC, vapourPa: 300 }
      const clo = requiredClo(model, climate)
      expect(clo).toBeGreaterThanOrEqual(before)
      expect(clo).toBeLessThanOrEqual(15)
      expect(Number.isFinite(balanceMarginK(model, climate))).toBe(true)
      before = clo
    }
  })

  it('a longer leg never needs less', () => {
    const leg = (distanceM: number): LegParameters => plainLeg({ distanceM, outsideC: 0 })
    expect(legNeedWh(leg(200_000))).toBeGreaterThan(legNeedWh(leg(100_000)))
  })
})
