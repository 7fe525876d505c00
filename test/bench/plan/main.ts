/**
 * How long it takes to plan again after one number has changed, in milliseconds and as multiples of one simulated night in the
 * same process. Asked of climate and checklist together: under 50 ms. Prints; asserts nothing but that the plan is a new one.
 */
import { readFileSync } from 'node:fs'
import { simulateNight } from '../../../shared/climate/index.ts'
import { parseTrip } from '../../../shared/document/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { scenario } from '../../shared/plan/trips.ts'

const ASKED_MS = 50
const ROUNDS = 120
/** The first rounds are the compiler's. */
const WARM_UP = 40

const sample = (name: string): Trip => {
  const read = parseTrip(readFileSync(new URL(`../../../assets/samples/${name}.trip.json`, import.meta.url)))
  if (!read.ok) throw new Error(`${name} does not parse`)
  return read.value
}

type Change = { readonly name: string; readonly of: (trip: Trip, round: number) => Trip; readonly keepLoad: boolean }

const onFirstNight = (trip: Trip, change: (night: Trip['nights'][number]) => Trip['nights'][number]): Trip => ({
  ...trip,
  nights: trip.nights.map((night, index) => (index === 0 ? change(night) : night)),
})

const colder = (trip: Trip, round: number): Trip =>
  onFirstNight(trip, (night) => ({
    ...night,
    weather: { ...night.weather, coldMarginK: night.weather.coldMarginK + round / 1000 },
  }))

const CHANGES: readonly Change[] = [
  { name: 'a colder forecast', of: colder, keepLoad: false },
  { name: 'the same with the load kept', of: colder, keepLoad: true },
  {
    name: 'the charge limit',
    of: (trip, round) =>
      onFirstNight(trip, (night) => ({
        ...night,
        heating: { ...night.heating, chargeLimit01: 0.7 + (round % 25) / 100 },
      })),
    keepLoad: false,
  },
  { name: 'a tick', of: (trip, round) => ({ ...trip, title: `round ${round}` }), keepLoad: false },
]

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1] ?? NaN

function timed(count: number, run: (round: number) => void): number {
  const times: number[] = []
  for (let round = 1; round <= count; round += 1) {
    const began = performance.now()
    run(round)
    times.push(performance.now() - began)
  }
  return median(times.slice(Math.min(WARM_UP, count - 1)))
}

const trips: readonly (readonly [string, Trip])[] = [
  ['bats', sample('bats-by-the-quarry')],
  ['ridge', sample('ridge-run-with-a-dog')],
  ['scenario a', scenario('a')],
]

for (const [name, trip] of trips) {
  const first = derivePlan(trip, { seed: 1, iterations: 0, remedies: false })
  const nightMs = timed(ROUNDS, () => {
    for (const { input } of first.nights) simulateNight(input)
  })
  for (const change of CHANGES) {
    let previous: Plan = first
    const ms = timed(ROUNDS, (round) => {
      const next = derivePlan(change.of(trip, round), {
        seed: 1,
        iterations: 0,
        remedies: false,
        previous,
        keepLoad: change.keepLoad,
      })
      if (next === previous) throw new Error('no new plan')
      previous = next
    })
    const packed = previous.packing === first.packing ? 'load kept' : 'load searched anew'
    console.log(
      `${name}, ${change.name}: ${ms.toFixed(1)} ms (asked ${ASKED_MS}), ${(ms / nightMs).toFixed(1)} times its nights (${nightMs.toFixed(1)} ms), ${packed}`,
    )
  }
}
