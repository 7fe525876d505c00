/** The load of a field scenario, its heated bays at a fixed temperature: what packing is tested on without the climate engine. */
import { readFileSync } from 'node:fs'
import type { PackingInput } from '../../shared/packing/index.ts'
import { packingInput } from '../../shared/plan/inputs/packing.ts'
import { tripFromScenario } from './from-scenario/convert.ts'

/** A heated bay's lowest temperature that night, °C: the climate engine's business, fixed here. */
const HEATED_C = 8

export function scenarioLoad(name: 'scenario-a' | 'scenario-b'): PackingInput {
  const path = new URL(`../fixtures/scenarios/${name}.json`, import.meta.url)
  const scenario: unknown = JSON.parse(readFileSync(path, 'utf8'))
  const input = packingInput(tripFromScenario(scenario), [])
  const warm = input.bays.filter((bay) => bay.heatedAtNight).map((bay) => [bay.id, HEATED_C] as const)
  return {
    ...input,
    nights: input.nights.map((night) => ({ ...night, lowTempC: { ...night.lowTempC, ...Object.fromEntries(warm) } })),
  }
}
