/**
 * How long a night and a search take, as milliseconds and as multiples of a named reference run in the same process.
 * Budgets: a 14-hour night under 3 ms, the whole search under 250 ms, growth in steps and options linear. Exit code 1 where one is missed.
 */
import { cabinDefaults, searchNight, simulateNight } from '../../../shared/climate/index.ts'
import { prepareNight } from '../../../shared/climate/night-prepare.ts'
import { runNight } from '../../../shared/climate/night-run.ts'
import type { NightInput, WeatherStep } from '../../../shared/climate/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

const NIGHT_BUDGET_MS = 3
const SEARCH_BUDGET_MS = 250
/** Time for each step or option may grow by this much from the least to the most: then growth is linear. */
const LINEAR_WITHIN = 1.5

const ARRIVE = 1_800_032_400
const at = (hour: number): Utc => Math.round(ARRIVE + hour * 3600) as Utc

const weather: readonly WeatherStep[] = Array.from({ length: 15 }, (_, hour) => ({
  atUtc: at(hour),
  tempC: -2 - hour,
  windMPerS: 2 + Math.sin(hour),
  humidity01: 0.85,
  cloud01: 0.4,
}))

/** 14 h, five-minute steps, one cold sleeper, underblanket, covers, a metered 10 A post and a leg of 138 km. */
const night: NightInput = {
  latitudeDeg: 61,
  longitudeDeg: 10,
  elevationM: 400,
  arriveUtc: at(0),
  sleepFromUtc: at(4),
  sleepToUtc: at(12),
  departUtc: at(14),
  weather,
  cabin: cabinDefaults('estate'),
  heater: {
    kind: 'heat-pump',
    maxHeatW: 5200,
    minHeatW: 600,
    cop: [],
    canCool: true,
    awakeLoadW: 230,
    mayRunAllNight: true,
    switchesOffAfterS: null,
    switchesOffBelow01: null,
  },
  bedHeaters: [{ id: 'bed', kind: 'underblanket', powerW: 50 }],
  sleepers: [
    {
      id: 'one',
      label: 'One',
      heightMm: 1790,
      massG: 78_000,
      sleeps: 'cold',
      bedding: { comfortC: -9, coverClo: 7, matM2KPerW: 0.9 },
    },
  ],
  supply: {
    connector: 'iec-60309-16-blue',
    nominalV: 230,
    breakerA: 16,
    siteLimitA: 10,
    leadLimitA: 16,
    adapterLimitA: null,
    chargingUnitLimitA: 16,
    heldA: null,
    onboardMaximumA: 16,
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
    pricePerKWh: 0.42,
    fixedPrice: 0,
    chargeAllowed: true,
  },
  battery: {
    usableWh: 72_000,
    reserve01: 0.1,
    chargeLimit01: 0.9,
    efficiency01: 0.88,
    overheadW: 150,
    coldOverheadW: 200,
    arrive01: 0.41,
    fastMaxW: 100_000,
  },
  leisure: null,
  leg: {
    distanceM: 138_000,
    whPerKm: 232,
    speedKmPerH: null,
    climbM: 0,
    outsideC: -10,
    reserve01: 0.1,
    massG: 1_900_000,
    dragAreaM2: null,
    rollingCoefficient: null,
    auxiliaryW: null,
    fastChargers: [{ atM: 92_000, powerW: 100_000, name: null }],
  },
  decisions: {
    setPoints: [{ fromUtc: at(3), tempC: 12 }],
    bedHeaterIds: [],
    currentA: null,
    chargeLimit01: 0.9,
    windowGapMm: 10,
    windowSides: 2,
    covers: true,
  },
  stepS: 300,
  fault: null,
}

/** Best of many runs after a warm-up, ms: what the code takes when nothing else does. */
function bestMs(work: () => unknown, runs: number): number {
  for (let run = 0; run < Math.ceil(runs / 3); run += 1) work()
  let best = Infinity
  for (let run = 0; run < runs; run += 1) {
    const start = performance.now()
    work()
    best = Math.min(best, performance.now() - start)
  }
  return best
}

/** The reference: 100,000 exponentials and logarithms, about what a night's saturation pressures take. */
function reference(): number {
  let sum = 0
  for (let turn = 1; turn <= 100_000; turn += 1) sum += Math.exp(-turn / 50_000) + Math.log(turn)
  return sum
}

const referenceMs = bestMs(reference, 60)
const misses: string[] = []

function tell(name: string, ms: number, budgetMs: number | null): void {
  const over = budgetMs !== null && ms > budgetMs
  if (over) misses.push(name)
  const budget = budgetMs === null ? '' : `  budget ${budgetMs} ms${over ? '  MISSED' : ''}`
  console.log(
    `${name.padEnd(46)} ${ms.toFixed(3).padStart(9)} ms  ${(ms / referenceMs).toFixed(2).padStart(7)} x reference${budget}`,
  )
}

/** Least and most time for each unit of work; a ratio near 1 is linear growth. */
function tellGrowth(name: string, points: readonly (readonly [number, number])[]): void {
  const each = points.map(([size, ms]) => ms / size)
  const ratio = (each.at(-1) ?? 1) / (each[0] ?? 1)
  if (ratio > LINEAR_WITHIN) misses.push(name)
  const told = points.map(([size, ms]) => `${size}: ${ms.toFixed(2)} ms`).join(', ')
  console.log(`${name.padEnd(46)} ${told}; each unit ${ratio.toFixed(2)} x from least to most`)
}

console.log('reference: 100,000 Math.exp and Math.log')
tell('reference', referenceMs, null)
tell(
  'one 14-hour night, everything told',
  bestMs(() => simulateNight(night), 60),
  NIGHT_BUDGET_MS,
)
const prepared = prepareNight(night)
tell(
  'one 14-hour night, run alone',
  bestMs(() => runNight(prepared, night.decisions), 60),
  NIGHT_BUDGET_MS,
)
tell(
  'whole search',
  bestMs(() => searchNight(night), 12),
  SEARCH_BUDGET_MS,
)
const bedding = (id: string, comfortC: number, coverClo: number, moves: number) => ({
  id,
  bySleeper: [{ sleeperId: 'one', bedding: { comfortC, coverClo, matM2KPerW: 0.9 } }],
  moves,
  volumeMm3: moves * 1e7,
})
const choosing: NightInput = {
  ...night,
  coversOwned: true,
  beddingSets: [bedding('light', 8, 3, 1), bedding('winter', -9, 7, 2), bedding('both', -18, 10, 3)],
}
tell(
  'whole search over three bedding sets',
  bestMs(() => searchNight(choosing), 12),
  SEARCH_BUDGET_MS,
)
tellGrowth(
  'growth in steps',
  [300, 150, 75, 38].map((stepS) => {
    const fine = prepareNight({ ...night, stepS }, stepS)
    return [fine.steps, bestMs(() => runNight(fine, night.decisions), 20)] as const
  }),
)
tellGrowth(
  'growth in options',
  [4, 8, 16, 32].map((count) => {
    const setPointsC = Array.from({ length: count }, (_, index) => 5 + (15 * index) / count)
    const evaluated = searchNight(night, { setPointsC }).evaluated
    return [evaluated, bestMs(() => searchNight(night, { setPointsC }), 4)] as const
  }),
)
if (misses.length > 0) {
  console.log(`missed: ${misses.join(', ')}`)
  process.exitCode = 1
}
