/** A whole scenario becomes a trip. */
import { FORMAT_NAME, FORMAT_VERSION } from '../../../shared/document/index.ts'
import type { Trip, Traveller } from '../../../shared/document/index.ts'
import { chargingRuleOf } from './hookup.ts'
import { piecesOf } from './items.ts'
import { nightsOf } from './nights.ts'
import { scenarioSchema } from './scenario.ts'
import type { Scenario } from './scenario.ts'
import { gramsOf, leftoversOf, noteOf, numberLike, textLike } from './words.ts'
import type { Loose } from './words.ts'
import { bedOf, vehicleOf } from './vehicle.ts'

/** Values where a scenario is silent: mean adult and long sleepwear, common practice. */
const ADULT_KG = 75
const SLEEPER_MM = 1750
const SLEEPWEAR_CLO = 0.8

function travellersOf(scenario: Scenario): Traveller[] {
  const party = scenario.party
  return Array.from({ length: party.sleepers }, (_, index) => ({
    id: `sleeper-${String(index + 1)}`,
    label: index === 0 ? 'Driver' : `Sleeper ${String(index + 1)}`,
    // Only the tallest is stated: every sleeper is given that length, so that the bed is judged for the longest.
    heightMm: Math.round(party.tallest_sleeper_mm ?? SLEEPER_MM),
    massG: gramsOf(index === 0 ? party.heaviest_kg : (party.second_adult_kg ?? ADULT_KG)),
    drives: index === 0,
    sleeps: party.sleeps_cold === true ? 'cold' : 'average',
    sleepwearClo: SLEEPWEAR_CLO,
  }))
}

const PARTY_KNOWN = ['sleepers', 'tallest_sleeper_mm', 'heaviest_kg', 'second_adult_kg', 'sleeps_cold']

function currencyOf(scenario: Scenario): string | undefined {
  return scenario.nights
    .map((night) => chargingRuleOf(textLike(night.rules ?? {}, /charging/) ?? '').currency)
    .find((one) => one !== undefined)
}

export function tripFromScenario(value: unknown): Trip {
  const scenario = scenarioSchema.parse(value)
  const travellers = travellersOf(scenario)
  const nightIds = scenario.nights.map((_, index) => `night-${String(index + 1)}`)
  const bed = bedOf(scenario)
  const pieces = piecesOf(scenario, nightIds, travellers, bed.sizeMm[2])
  const currency = currencyOf(scenario)
  const american =
    currency === 'USD' || scenario.nights.some((night) => (numberLike(night.hookup ?? {}, /nominal_v/) ?? 230) < 200)
  const note: Loose = scenario
  return {
    format: FORMAT_NAME,
    version: FORMAT_VERSION,
    title: scenario.title.slice(0, 200),
    ...noteOf(
      scenario.note,
      leftoversOf(scenario.party, PARTY_KNOWN),
      leftoversOf(note, [
        'schema',
        'id',
        'title',
        'note',
        'units',
        'axes',
        'party',
        'vehicle',
        'items',
        'nights',
        'legs',
        'reference',
      ]),
    ),
    preferences: {
      units: american ? 'us' : 'metric',
      language: 'en',
      currency: currency ?? (american ? 'USD' : 'EUR'),
      paper: american ? 'letter' : 'a4',
    },
    vehicle: vehicleOf(scenario),
    travellers,
    kit: { pieces, bins: [], freeShare01: 0 },
    nights: nightsOf(scenario, nightIds, pieces),
    checklist: { rules: [], switchedOffRuleIds: [], ticks: [], lessons: [] },
    measured: [],
    ledger: [],
  }
}
