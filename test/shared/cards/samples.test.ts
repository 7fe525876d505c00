/** The sample trips, planned for real: nothing is missing on the cards, every sentence is known, the pocket sheet is small. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import {
  checklistCard,
  loadCard,
  nightCard,
  pocketSheet,
  POCKET_MAX_BYTES,
  siteSheet,
} from '../../../shared/cards/index.ts'
import type { CardInput } from '../../../shared/cards/index.ts'
import { parseTrip } from '../../../shared/document/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import { createText } from '../../../shared/text/index.ts'

const SAMPLES = ['bats-by-the-quarry', 'ridge-run-with-a-dog']

function sample(name: string): Trip {
  const parsed = parseTrip(readFileSync(new URL(`../../../assets/samples/${name}.trip.json`, import.meta.url)))
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.problem))
  return parsed.value
}

describe.each(SAMPLES)('%s', (name) => {
  const trip = sample(name)
  const plan = derivePlan(trip, { seed: 1, iterations: 2, remedies: false })
  const inputs = (['en', 'de'] as const).map((language): CardInput => ({
    plan,
    trip,
    text: createText(language, trip.preferences.units),
    nightId: null,
    paper: trip.preferences.paper,
  }))

  it('has a sentence for everything, in both languages', () => {
    for (const input of inputs) {
      for (const make of [loadCard, nightCard, checklistCard, siteSheet]) {
        const said = JSON.stringify(make(input))
        expect(said.match(/has no sentence yet[^"]*|hat noch keinen Satz[^"]*/g)).toBeNull()
        expect(said.match(/"[^"]*\{[a-z][A-Za-z0-9]*\}[^"]*"/g)).toBeNull()
        expect(said.match(/"(?:step|reason|cards|phase|finding)\.[a-zA-Z.-]+"/g)).toBeNull()
      }
    }
  })

  it('names every unit that is packed, and every step', () => {
    const [input] = inputs
    if (input === undefined) throw new Error('no input')
    const load = JSON.stringify(loadCard(input))
    const names = new Map([...trip.kit.pieces, ...trip.kit.bins].map((one) => [one.id, one.name]))
    const missing = plan.packing.units.filter(
      (unit) => !load.includes(JSON.stringify(names.get(unit.id) ?? '?').slice(1, -1)),
    )
    expect(missing).toEqual([])
    const ticks = checklistCard(input).blocks.flatMap((block) => (block.kind === 'ticks' ? block.items : []))
    expect(ticks).toHaveLength(plan.checklist.steps.length)
  })

  it('fits the pocket sheet in both languages', () => {
    for (const { text } of inputs) {
      const html = pocketSheet({ trip, plan, text })
      expect(Buffer.byteLength(html)).toBeLessThan(POCKET_MAX_BYTES)
      expect(html).toContain(text.t('cards.load.steps'))
      expect(html).not.toMatch(/has no sentence yet|hat noch keinen Satz/)
      expect(html.match(/data-step=/g)).toHaveLength(plan.checklist.steps.length)
    }
  })
})
