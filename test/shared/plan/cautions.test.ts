/** What must be minded stands where it is decided: among the findings, on the night card beside the supply, and as steps at their hour. */
import { beforeAll, describe, expect, it } from 'vitest'
import { nightCard } from '../../../shared/cards/index.ts'
import type { Block } from '../../../shared/cards/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { createText } from '../../../shared/text/index.ts'
import { TIME_LIMIT_MS } from '../../support/generators/runs.ts'
import { codes, planOf, sample, withNight } from './trips.ts'

/** The sentences of a night card, notices with the rest. */
function wordsOf(trip: Trip, plan: Plan, language: 'en' | 'de' = 'en'): string {
  const text = createText(language, 'metric')
  const flat = (blocks: readonly Block[]): readonly string[] =>
    blocks.flatMap((block) => {
      if (block.kind === 'together') return flat(block.blocks)
      return block.kind === 'notice' || block.kind === 'paragraph' ? [block.text] : []
    })
  const card = nightCard({ plan, trip, text, nightId: null, paper: 'a4' })
  return [...flat(card.blocks), card.footer].join('\n')
}

const stepsOf = (plan: Plan): readonly string[] => plan.checklist.steps.map(({ ruleId }) => ruleId)

describe('two autumn nights on posts, one of them a household outlet', () => {
  const trip = sample('bats-by-the-quarry')
  let plan: Plan
  beforeAll(() => {
    plan = planOf(trip)
  }, TIME_LIMIT_MS)

  it('finds what the supply asks to be minded: wiring, lead, adapter, outlet', () => {
    expect(codes(plan)).toEqual(
      expect.arrayContaining([
        'night-shared-wiring',
        'night-extension-lead',
        'night-adapter',
        'night-domestic-socket',
        'night-carbon-monoxide',
      ]),
    )
  })

  it('defers to site rules, local code and licensed electricians on every night with a post', () => {
    const told = plan.findings.filter(({ problem }) => problem.code === 'site-and-codes-decide')
    expect(told.map(({ nightId }) => nightId)).toEqual(trip.nights.map(({ id }) => id))
    expect(new Set(told.map(({ severity }) => severity))).toEqual(new Set(['caution']))
  })

  it.each([
    ['en', [/local electrical code/, /licensed electrician/, /thin or shared/, /adapter carries/, /Unroll the lead/]],
    ['de', [/örtliche Vorschriften/, /Elektrofachkraft/, /dünn oder geteilt/, /Adapter trägt/, /ganz abrollen/]],
  ] as const)('the night card says so in %s, with fire and cold', (language, sayings) => {
    const words = wordsOf(trip, plan, language)
    for (const saying of sayings) expect(words).toMatch(saying)
    expect(words).toMatch(/carbon monoxide alarm|Kohlenmonoxid/)
    expect(words).toMatch(/shivers or is confused|zittert oder verwirrt/)
  })

  it('the checklist tests post and earth, uncoils the lead, holds the current low and sets the alarm, each as a step', () => {
    const steps = stepsOf(plan)
    expect(steps).toEqual(
      expect.arrayContaining(['test-post-before-parking', 'uncoil-lead', 'co-alarm-on', 'hold-household-current']),
    )
  })
})

describe('the same trip in a night without a post, and in heat', () => {
  const base = sample('bats-by-the-quarry')
  // An arctic first night with neither post nor heat, a tropical second one.
  const changed = withNight(
    withNight(base, 0, ({ hookup: _hookup, ...night }) => ({
      ...night,
      weather: { ...night.weather, highC: -14, lowC: -24, hours: [] },
      heating: { setPoints: [], bedHeaterIds: [] },
      ventilation: { ...night.ventilation, gapMm: 0 },
    })),
    1,
    (night) => ({
      ...night,
      weather: { ...night.weather, highC: 40, lowC: 33, hours: [] },
      heating: { setPoints: [], bedHeaterIds: [] },
    }),
  )
  let plan: Plan
  beforeAll(() => {
    plan = planOf(changed)
  }, TIME_LIMIT_MS)
  const onNight = (index: number): readonly string[] =>
    plan.findings.filter(({ nightId }) => nightId === changed.nights[index]?.id).map(({ problem }) => problem.code)

  it('warns of cold illness and stale air in the one, of heat illness in the other', () => {
    expect(onNight(0)).toEqual(expect.arrayContaining(['night-cold-illness', 'night-carbon-monoxide']))
    expect(onNight(0)).toEqual(expect.arrayContaining(['night-no-fresh-air']))
    expect(onNight(0)).not.toContain('site-and-codes-decide')
    expect(onNight(1)).toEqual(expect.arrayContaining(['night-heat-illness', 'site-and-codes-decide']))
    const stepsOn = (index: number): readonly string[] =>
      plan.checklist.steps.filter(({ nightId }) => nightId === changed.nights[index]?.id).map(({ ruleId }) => ruleId)
    expect(stepsOn(0)).toEqual(
      expect.arrayContaining(['cold-wake-drill', 'indoor-fallback', 'no-air-gap', 'co-alarm-on', 'co-alarm-drill']),
    )
    expect(stepsOn(0)).not.toContain('heat-drill')
    expect(stepsOn(1)).toEqual(expect.arrayContaining(['heat-drill', 'open-for-air', 'supply-failure-drill']))
    expect(stepsOn(1)).not.toContain('cold-wake-drill')
    const words = wordsOf(changed, plan)
    expect(words).toMatch(/Shivering, confusion or slurred speech is an emergency/)
    expect(words).toMatch(/hot dry skin or confusion is an emergency/)
  })
})

describe('an outlet that has no earth at all', () => {
  it('is not to be plugged into, whatever the trip says of its earth', () => {
    const base = sample('bats-by-the-quarry')
    const trip = withNight({ ...base, nights: base.nights.slice(0, 1) }, 0, (night) =>
      night.hookup === undefined
        ? night
        : {
            ...night,
            hookup: { ...night.hookup, connector: 'nema-10-30', nominalV: 240, breakerA: 30, earthOk: 'yes' },
          },
    )
    const plan = planOf(trip)
    expect(codes(plan, 'shortfall')).toContain('night-earth-missing')
    expect(stepsOf(plan)).toContain('earth-missing')
    // Row HKP-005: 24 A of 30 for hours.
    expect(plan.nights[0]?.outcome.supply?.limits).toContainEqual({ part: 'socket', currentA: 24 })
  })
})

describe('a lead whose copper is known', () => {
  const base = sample('bats-by-the-quarry')
  const lead = base.kit.pieces.find(({ purpose }) => purpose === 'lead')
  const trip: Trip = {
    ...base,
    nights: base.nights.slice(0, 1),
    kit: {
      ...base.kit,
      pieces: base.kit.pieces.map((piece) =>
        piece.id === lead?.id ? { ...piece, electrical: { ...piece.electrical, areaMm2: 2.5 } } : piece,
      ),
    },
  }

  it('is reckoned in the supply and told on the card, with the pilot duty cycle', () => {
    const plan = planOf(trip)
    const supply = plan.nights[0]?.outcome.supply
    expect(lead?.electrical?.lengthMm).toBe(25_000)
    expect(supply?.pathOhm ?? 0).toBeGreaterThanOrEqual(0.39)
    const card = nightCard({ plan, trip, text: createText('en', 'metric'), nightId: null, paper: 'a4' })
    const shown = JSON.stringify(card.blocks)
    expect(shown).toContain('Of it in known leads and adapter')
    expect(shown).toMatch(/Pilot duty cycle for 12\sA","20\s%/)
  })
})

describe('a post that gives less than charging control can ask for', () => {
  it('names both currents, its own and the smallest that can be asked for', () => {
    const base = sample('bats-by-the-quarry')
    const trip = withNight({ ...base, nights: base.nights.slice(0, 1) }, 0, (night) =>
      night.hookup === undefined ? night : { ...night, hookup: { ...night.hookup, siteLimitA: 4 } },
    )
    const found = planOf(trip).findings.find(({ problem }) => problem.code === 'night-below-minimum-current')
    expect(found?.problem.params).toMatchObject({ allowedA: 4, limitA: 6 })
    const said = found === undefined ? '' : createText('en', 'metric').problem(found.problem)
    expect(said).toMatch(/allows 4\sA, less than the 6\sA/)
  })
})
