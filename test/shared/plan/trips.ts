/** Trips that the plan's tests share, read from the samples and converted from the scenarios. */
import { readFileSync } from 'node:fs'
import { parseTrip } from '../../../shared/document/index.ts'
import type { Night, Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { tripFromScenario } from '../../support/from-scenario/convert.ts'

const at = (path: string): URL => new URL(`../../../${path}`, import.meta.url)

export function sample(name: string): Trip {
  const parsed = parseTrip(readFileSync(at(`assets/samples/${name}.trip.json`)))
  if (!parsed.ok) throw new Error(`${name} does not parse`)
  return parsed.value
}

export const scenario = (letter: 'a' | 'b'): Trip =>
  tripFromScenario(JSON.parse(readFileSync(at(`test/fixtures/scenarios/scenario-${letter}.json`), 'utf8')))

export const planOf = (trip: Trip, remedies = false): Plan => derivePlan(trip, { seed: 1, iterations: 40, remedies })

/** The trip with one night changed. */
export const withNight = (trip: Trip, index: number, change: (night: Night) => Night): Trip => ({
  ...trip,
  nights: trip.nights.map((night, position) => (position === index ? change(night) : night)),
})

export const codes = (plan: Plan, severity?: string): readonly string[] =>
  plan.findings
    .filter((found) => severity === undefined || found.severity === severity)
    .map(({ problem }) => problem.code)
