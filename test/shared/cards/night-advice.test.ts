/** What the night card tells of the search, the failures, the glass and the sleepers, in both languages. */
import { describe, expect, it } from 'vitest'
import { nightCard } from '../../../shared/cards/index.ts'
import type { Block } from '../../../shared/cards/index.ts'
import { createText } from '../../../shared/text/index.ts'
import { planOf, sample, withNight } from '../plan/trips.ts'

const trip = withNight(sample('bats-by-the-quarry'), 0, (night) => ({
  ...night,
  covers: false,
  weather: { ...night.weather, lowC: -9, highC: -2, humidity01: 0.9 },
}))
const plan = planOf(trip, true)
const nightId = trip.nights[0]?.id ?? ''

const flat = (block: Block): readonly Block[] => (block.kind === 'together' ? block.blocks.flatMap(flat) : [block])
const said = (language: 'en' | 'de'): string =>
  nightCard({ plan, trip, text: createText(language, 'metric'), nightId, paper: 'a4' })
    .blocks.flatMap(flat)
    .flatMap((block) => (block.kind === 'paragraph' || block.kind === 'heading' ? [block.text] : []))
    .join('\n')
    .replaceAll(/[\u00a0\u202f]/g, ' ')

describe('the night card', () => {
  it('names the recommended plan with its reasons and what becomes of it on a worse night', () => {
    expect(said('en')).toMatch(/Recommended\n.*(in hand|short) at the bed\..*Bedding: /)
    expect(said('en')).toMatch(/If it is 5 K colder: .*\nIf the leg takes 10 % more: /)
    expect(said('de')).toMatch(/Empfohlen\n.*Bettzeug: /)
  })

  it('says of each failure what to do and until when, or that nothing need be done', () => {
    const drills = said('en')
      .split('\n')
      .filter((line) => /^(Supply lost|Breaker trips|Heater fails) at /.test(line))
    expect(drills).toHaveLength(plan.nights[0]?.faults.length ?? -1)
    for (const drill of drills) expect(drill).toMatch(/Nothing need be done|By \d\d:\d\d|turns cold|enough/)
  })

  it('says what ISO 7730 and ISO 11079 know of the night, and that they know nothing of a sleeper', () => {
    expect(said('en')).toMatch(/Sitting up at \d\d:\d\d in indoor clothes: (vote -?\d|not known)/)
    expect(said('en')).toMatch(/Asleep: not known by ISO 7730 or ISO 11079/)
    expect(said('en')).toMatch(/Light work outside at \d\d:\d\d: (\d\.\d clo keeps warm enough|clothing not known)/)
    expect(said('de')).toMatch(/Im Schlaf: nach ISO 7730 und ISO 11079 nicht bekannt/)
  })

  it('tells frost by pane and what an open window costs', () => {
    expect(said('en')).toMatch(/On the glass: windscreen .*\d+ g (dew|frost) from \d\d:\d\d/)
    expect(said('en')).toMatch(/A window open by, and the power it takes: 5 mm: \d+ W · 10 mm: \d+ W · 20 mm: \d+ W\./)
    expect(said('de')).toMatch(/Am Glas: Frontscheibe/)
  })

  it('says when someone turns cold or has cold feet as one says it', () => {
    const cold = plan.nights[0]?.outcome.sleepers.filter(
      ({ coldFromUtc, feetColdFromUtc }) => coldFromUtc !== null || feetColdFromUtc !== null,
    )
    expect(
      said('en').match(/Cold feet after \d\d:\d\d|is (cool|cold) from \d\d:\d\d/g)?.length ?? 0,
    ).toBeGreaterThanOrEqual(cold?.length ?? 0)
  })
})
