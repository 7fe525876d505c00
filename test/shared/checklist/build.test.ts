import { describe, expect, test } from 'vitest'
import { asFacts, BUILT_IN_RULES, buildChecklist } from '../../../shared/checklist/index.ts'
import type {
  ChecklistNight,
  ChecklistOutcome,
  Condition,
  GivenStep,
  Json,
  Rule,
  Step,
  Tick,
} from '../../../shared/checklist/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { WINTER_MOMENTS, withFacts } from './calm-facts.ts'
import type { FactsPatch } from './calm-facts.ts'

const DAY_S = 86_400

const night = (index: number, count: number, patch: FactsPatch = {}): ChecklistNight => ({
  nightId: `n${index + 1}`,
  facts: asFacts(
    withFacts({
      ...patch,
      trip: { nightNumber: index + 1, firstNight: index === 0, lastNight: index === count - 1, ...patch.trip },
    }),
  ),
  moments: Object.fromEntries(
    Object.entries(WINTER_MOMENTS)
      .filter(([name]) => index === 0 || name !== 'leaveHome')
      .map(([name, at]) => [name, (at + index * DAY_S) as Utc]),
  ),
  given: [],
})

const build = (
  nights: readonly ChecklistNight[],
  ticks: readonly Tick[] = [],
  rules: readonly Rule[] = BUILT_IN_RULES,
): ChecklistOutcome => buildChecklist({ rules, switchedOffRuleIds: [], nights, ticks })

const stepAt = (outcome: ChecklistOutcome, key: string): Step | undefined =>
  outcome.steps.find((step) => step.key === key)

const own = (id: string, when: Condition, parts: Partial<Rule> = {}): Rule => ({
  id,
  phase: 'bedtime',
  text: { kind: 'own', step: 'Look at the moon', reason: 'It is there' },
  reads: [],
  when,
  after: [],
  durationS: 60,
  ...parts,
})

const tick = (stepKey: string, state: Tick['state'], atUtc = 1, reason?: string): Tick => ({
  stepKey,
  state,
  atUtc,
  ...(reason === undefined ? {} : { reason }),
})

const things = (...ids: readonly string[]): FactsPatch => ({
  load: { freezing: ids.map((id) => ({ id, name: id, place: 'footwell', freezesBelowC: 0 })) },
})

const move = (count: number, parts: Partial<GivenStep> = {}): GivenStep => ({
  key: `move-dusk:n1:${count}`,
  ruleId: 'move-dusk',
  nightId: 'n1',
  phase: 'before-dark',
  text: { kind: 'key', step: 'move.dusk.step', reason: 'move.dusk.reason' },
  params: {},
  after: count === 0 ? ['bed-prepare'] : [`move-dusk:n1:${count - 1}`],
  durationS: 45,
  notBeforeUtc: null,
  deadlineUtc: null,
  deadlineName: null,
  caution: false,
  ...parts,
})

const badRules = (outcome: ChecklistOutcome): readonly string[] =>
  outcome.conflicts.flatMap((one) => (one.kind === 'bad-rule' ? [`${one.ruleId} ${one.message} ${one.at}`] : []))

describe('ticks', () => {
  test('a done step stays done whatever numbers change in the plan', () => {
    const cold = { hookup: { present: true, usableA: 10 }, weather: { lowC: -11 } }
    const mild = { hookup: { present: true, usableA: 8 }, weather: { lowC: -2 } }
    const ticks = [tick('start-low:n1', 'done')]
    expect(stepAt(build([night(0, 1, cold)], ticks), 'start-low:n1')?.state).toBe('done')
    expect(stepAt(build([night(0, 1, mild)], ticks), 'start-low:n1')?.state).toBe('done')
  })

  test('the last tick of a step counts, and a step without one is open', () => {
    const ticks = [tick('check-in:n1', 'done', 5), tick('check-in:n1', 'skipped', 9, 'office closed')]
    const found = build([night(0, 1)], ticks)
    expect(stepAt(found, 'check-in:n1')).toMatchObject({ state: 'skipped', skipReason: 'office closed' })
    expect(stepAt(build([night(0, 1)]), 'check-in:n1')).toMatchObject({ state: 'open', skipReason: null })
  })

  test('what is done takes no more time, so a late morning can become possible', () => {
    const late = { ...night(0, 1, { weather: { lowC: -9, snowMm: 3 } }) }
    const short = { ...late, moments: { ...late.moments, wake: (WINTER_MOMENTS.depart - 600) as Utc } }
    expect(build([short]).conflicts.map((one) => one.kind)).toContain('window')
    const done = ['dress-and-drink', 'clear-glass', 'clear-roof'].map((id) => tick(`${id}:n1`, 'done'))
    expect(build([short], done).conflicts).toEqual([])
  })

  test('steps at home keep their tick when another night becomes the first', () => {
    const ticks = [tick('tell-someone:*', 'done')]
    const before = build([night(0, 1)], ticks)
    const after = build(
      [
        { ...night(0, 2), nightId: 'n0' },
        { ...night(1, 2), nightId: 'n1' },
      ],
      ticks,
    )
    expect([before, after].map((one) => stepAt(one, 'tell-someone:*')?.state)).toEqual(['done', 'done'])
  })

  test('a step of a thing keeps its tick when other things come and go', () => {
    const ticks = [tick('bring-in-from-frost:n1:can', 'done')]
    const found = build([night(0, 1, things('bottle', 'can', 'filter'))], ticks)
    expect(stepAt(found, 'bring-in-from-frost:n1:can')?.state).toBe('done')
    expect(stepAt(found, 'bring-in-from-frost:n1:bottle')?.state).toBe('open')
  })

  test('leaving the adapter out on purpose says which night has no supply', () => {
    const needs: FactsPatch = {
      hookup: { present: true, adapterNeeded: true, adapterOnBoard: true, adapterName: 'A18', domesticSocket: true },
      site: { name: 'Field Pitches' },
    }
    const nights = [night(0, 2), night(1, 2, needs)]
    const without = (ticks: readonly Tick[]): readonly Step[] =>
      build(nights, ticks).steps.filter((step) => step.ruleId === 'adapter-left-behind')
    expect(without([])).toEqual([])
    const [warning] = without([tick('adapter-on-board:n2', 'skipped', 1, 'lent it out')])
    expect(warning).toMatchObject({ nightId: 'n2', caution: true, params: { name: 'A18', site: 'Field Pitches' } })
  })
})

describe('carry-over', () => {
  const wet = { air: { condensateG: 90 } }

  test('what was skipped and still matters comes again on the next night', () => {
    const nights = [night(0, 2, wet), night(1, 2)]
    expect(stepAt(build(nights), 'dry-things:n2+')).toBe(undefined)
    const found = build(nights, [tick('dry-things:n1', 'skipped', 1, 'no drying room')])
    expect(stepAt(found, 'dry-things:n2+')).toMatchObject({ nightId: 'n2', phase: 'before-dark', state: 'open' })
    expect(stepAt(found, 'dry-things:n1')).toMatchObject({ state: 'skipped', skipReason: 'no drying room' })
  })

  test('it comes once where the next night asks for it anyway', () => {
    const found = build([night(0, 2, wet), night(1, 2, wet)], [tick('dry-things:n1', 'skipped')])
    expect(found.steps.filter((step) => step.ruleId === 'dry-things').map((step) => step.key)).toEqual([
      'dry-things:n1',
      'dry-things:n2',
    ])
  })

  test('skipped again it goes on, done it ends, and nothing follows the last night', () => {
    const nights = [night(0, 3, wet), night(1, 3), night(2, 3)]
    const once = tick('dry-things:n1', 'skipped')
    const keys = (ticks: readonly Tick[]): readonly string[] =>
      build(nights, ticks).steps.flatMap((step) => (step.ruleId === 'dry-things' ? [step.key] : []))
    expect(keys([once, tick('dry-things:n2+', 'skipped')])).toEqual([
      'dry-things:n1',
      'dry-things:n2+',
      'dry-things:n3+',
    ])
    expect(keys([once, tick('dry-things:n2+', 'done')])).toEqual(['dry-things:n1', 'dry-things:n2+'])
    expect(keys([once, tick('dry-things:n2+', 'skipped'), tick('dry-things:n3+', 'skipped')])).toHaveLength(3)
  })

  test('a skipped step of one night only does not come again', () => {
    const found = build([night(0, 2), night(1, 2)], [tick('keys-in-place:n1', 'skipped')])
    expect(found.steps.filter((step) => step.key.endsWith('+'))).toEqual([])
  })
})

describe('own rules', () => {
  test('a rule of the user is a step like any other', () => {
    const rule = own('moon', { '<': [{ var: 'weather.lowC' }, 20] }, { after: ['keys-in-place'] })
    const found = build([night(0, 1)], [], [...BUILT_IN_RULES, rule])
    const keys = found.steps.map((step) => step.key)
    expect(stepAt(found, 'moon:n1')?.text).toEqual({ kind: 'own', step: 'Look at the moon', reason: 'It is there' })
    expect(keys.indexOf('moon:n1')).toBeGreaterThan(keys.indexOf('keys-in-place:n1'))
  })

  test('a rule switched off gives no step', () => {
    const input = { rules: BUILT_IN_RULES, nights: [night(0, 1)], ticks: [] }
    const found = buildChecklist({ ...input, switchedOffRuleIds: ['check-in'] })
    expect(found.steps.some((step) => step.ruleId === 'check-in')).toBe(false)
  })

  test.each([
    ['an operator that rules do not know', { twist: [1] }, 'unknown-operator twist'],
    ['a fact that the plan lacks', { '<': [{ var: 'weather.lowK' }, 0] }, 'unknown-fact weather.lowK'],
    ['values that cannot be compared', { '>': [{ var: 'site.name' }, 3] }, 'not-comparable '],
    ['two operators in one place', { '!': [1], '!!': [1] }, 'unknown-operator !'],
  ])('%s is named and everything else still planned', (_, when, message) => {
    const found = build([night(0, 1), night(1, 2)], [], [own('bad', when), own('good', true)])
    expect(badRules(found)).toEqual([`bad ${message}`])
    expect(found.steps.map((step) => step.key)).toEqual(['good:n1', 'good:n2'])
  })

  test.each([
    ['load.nothing', 'unknown-fact load.nothing'],
    ['weather.lowC', 'not-a-list weather.lowC'],
  ])('a list at %s that is none is named', (forEach, message) => {
    expect(badRules(build([night(0, 1)], [], [own('each', true, { forEach })]))).toEqual([`each ${message}`])
  })

  test('a list whose things cannot be told apart is named', () => {
    const calm = night(0, 1)
    const each = (wet: Json): readonly string[] =>
      badRules(build([{ ...calm, facts: { ...calm.facts, wet } }], [], [own('each', true, { forEach: 'wet' })]))
    expect(each([{ id: 'a' }, { name: 'b' }])).toEqual(['each item-without-id wet'])
    expect(each([{ id: 4 }])).toEqual(['each item-without-id wet'])
    expect(each(['a'])).toEqual(['each item-without-id wet'])
    expect(each([{ id: 'a' }, { id: 'b' }, { id: 'a' }])).toEqual(['each item-twice a'])
    expect(each([{ id: 'a' }, { id: 'b' }])).toEqual([])
  })

  test('a placeholder, a moment or an id that does not work is named', () => {
    const rules = [
      own('shows', true, { params: { phone: 'site.mobile' } }),
      own('when', true, { deadline: 'teatime' }),
      own('twice', true),
      own('twice', false),
    ]
    expect(badRules(build([night(0, 1)], [], rules))).toEqual([
      'shows placeholder-without-value site.mobile',
      'when unknown-moment teatime',
      'twice id-taken twice',
    ])
  })

  test('of two ticks of one step the later one counts, however they stand; of two at once the last', () => {
    const state = (...ticks: readonly Tick[]): string | undefined =>
      stepAt(build([night(0, 1)], ticks, [own('moon', true)]), 'moon:n1')?.state
    const done = tick('moon:n1', 'done', 20)
    expect(state(tick('moon:n1', 'skipped', 10), done)).toBe('done')
    expect(state(done, tick('moon:n1', 'skipped', 10))).toBe('done')
    expect(state(done, tick('moon:n1', 'skipped', 20))).toBe('skipped')
  })

  test('two rules that wait for each other are a circle, and both are still listed', () => {
    const rules = [own('egg', true, { after: ['hen'] }), own('hen', true, { after: ['egg'] })]
    const found = build([night(0, 1)], [], rules)
    expect(found.conflicts).toEqual([{ kind: 'circle', stepKeys: ['egg:n1', 'hen:n1'] }])
    expect(found.steps).toHaveLength(2)
  })
})

describe('order and time', () => {
  const evening: FactsPatch = {
    vehicle: { bedPrepare: [{ id: 'fold', name: 'seats folded' }] },
    load: { bed: [{ id: 'bag', name: 'bag' }] },
    air: { covers: true },
  }

  test('moves given by the load stand between preparing the bed and the covers, in their own order', () => {
    const nights = [{ ...night(0, 1, evening), given: [move(1), move(0)] }]
    const keys = build(nights).steps.map((step) => step.key)
    const places = ['bed-prepare:n1:fold', 'move-dusk:n1:0', 'move-dusk:n1:1', 'make-bed:n1', 'covers-last:n1'].map(
      (key) => keys.indexOf(key),
    )
    expect(places).toEqual(places.toSorted((a, b) => a - b))
    expect(places).not.toContain(-1)
  })

  test('steps of bedtime begin late enough to end just before it, and never too late', () => {
    const rules = [own('moon', true, { durationS: 600 }), own('stars', true, { durationS: 300 })]
    const bedtimeUtc = WINTER_MOMENTS.bedtime ?? 0
    const { steps, conflicts } = build([night(0, 1)], [], rules)
    expect(conflicts).toEqual([])
    expect(steps.map(({ startUtc }) => startUtc)).toEqual([bedtimeUtc - 1500, bedtimeUtc - 900])
    for (const { startUtc, latestStartUtc } of steps) expect(startUtc ?? Infinity).toBeLessThan(latestStartUtc ?? 0)
  })

  describe('at home before leaving', () => {
    const HOUR_S = 3600
    const leaveUtc = WINTER_MOMENTS.leaveHome
    /** Leaving at 12:00: the rest before it is from 21:00 to 07:00. */
    const homeRest = { fromUtc: (leaveUtc - 15 * HOUR_S) as Utc, toUtc: (leaveUtc - 5 * HOUR_S) as Utc }
    const work = (...hours: readonly number[]) =>
      hours.map((each, index) =>
        own(`work-${index}`, true, { phase: 'before-leaving', durationS: each * HOUR_S, once: true }),
      )
    const starts = (rules: readonly Rule[], ticks: readonly Tick[] = []): readonly number[] =>
      buildChecklist({ rules, switchedOffRuleIds: [], nights: [night(0, 1)], ticks, homeRest }).steps.map(
        ({ startUtc }) => ((startUtc ?? NaN) - leaveUtc) / HOUR_S,
      )

    test('the work ends half an hour before leaving', () => {
      expect(starts(work(1, 2))).toEqual([-3.5, -2.5])
    })

    test('work that begins just as the rest ends is done that morning', () => {
      expect(starts(work(4.5))).toEqual([-5])
    })

    test('work that would run into the rest is done by its beginning, the evening before', () => {
      // 3 h and 2 h with half an hour in hand would begin at 06:30; so it begins 5 h before 21:00.
      expect(starts(work(3, 2))).toEqual([-20, -17])
    })

    test('work already done takes no time', () => {
      expect(starts(work(3, 2), [tick('work-0:*', 'done')])[1]).toBe(-2.5)
    })

    test('the latest start still reckons with the hour of leaving alone', () => {
      const { steps } = buildChecklist({
        rules: work(3, 2),
        switchedOffRuleIds: [],
        nights: [night(0, 1)],
        ticks: [],
        homeRest,
      })
      expect(steps.map(({ latestStartUtc }) => ((latestStartUtc ?? NaN) - leaveUtc) / HOUR_S)).toEqual([-5, -2])
    })

    test('what any night asks for stands in the order of the rules, what two ask for in the same words once', () => {
      const atHome = (id: string, parts: Partial<Rule> = {}): Rule =>
        own(id, true, { phase: 'before-leaving', ...parts })
      const rules = [atHome('call', { reads: ['site.name'], params: { site: 'site.name' } }), atHome('look')]
      const keysOf = (...sites: readonly string[]): readonly string[] =>
        build(
          sites.map((name, index) => night(index, sites.length, { site: { name } })),
          [],
          rules,
        ).steps.map(({ key }) => key)
      expect(keysOf('Dune pitches', 'Upper meadow')).toEqual(['call:n1', 'call:n2', 'look:n1'])
      expect(keysOf('Dune pitches', 'Dune pitches')).toEqual(['call:n1', 'look:n1'])
    })

    test('two things of one name are two steps', () => {
      const things = [
        { id: 'one', name: 'bag', place: 'roof' },
        { id: 'two', name: 'bag', place: 'roof' },
      ]
      const rule = own('strap', true, {
        phase: 'before-leaving',
        forEach: 'load.unrestrained',
        params: { name: 'item.name' },
      })
      const { steps } = build([night(0, 1, { load: { unrestrained: things } })], [], [rule])
      expect(steps.map(({ key }) => key)).toEqual(['strap:n1:one', 'strap:n1:two'])
    })
  })

  test('what is done back home begins on coming back, and has no clock where that is not known', () => {
    const rules = [own('dry', true, { phase: 'back-home', durationS: 600 })]
    const backHome = (WINTER_MOMENTS.checkOutBy + 7200) as Utc
    const [away] = [night(0, 1)]
    expect(build([away], [], rules).steps.map(({ startUtc }) => startUtc)).toEqual([null])
    const back = { ...away, moments: { ...away.moments, backHome } }
    expect(build([back], [], rules).steps.map(({ startUtc }) => startUtc)).toEqual([backHome])
  })

  test.each([
    ['arriving', 'leaveHome', WINTER_MOMENTS.arrive],
    ['arriving', 'sunset', WINTER_MOMENTS.sunset],
    ['morning', 'bedtime', WINTER_MOMENTS.wake],
    ['bedtime', 'arrive', WINTER_MOMENTS.bedtime - 660],
  ] as const)(
    'a step of %s that may start from %s waits for the later of that and its phase',
    (phase, from, expected) => {
      const { steps } = build([night(0, 1)], [], [own('moon', true, { phase, notBefore: from })])
      expect(steps.map(({ startUtc }) => startUtc)).toEqual([expected])
    },
  )

  test.each([
    ['morning', 'checkOutBy', WINTER_MOMENTS.depart - 60],
    ['morning', 'unplug', WINTER_MOMENTS.unplug - 60],
    ['bedtime', 'quietFrom', WINTER_MOMENTS.bedtime - 60],
  ] as const)('a step of %s due by %s keeps the earlier of that and its phase', (phase, by, expected) => {
    const { steps } = build([night(0, 1)], [], [own('moon', true, { phase, deadline: by })])
    expect(steps.map(({ latestStartUtc }) => latestStartUtc)).toEqual([expected])
  })

  test('a step of bedtime with a deadline of its own still begins in time for it', () => {
    const rules = [own('bang', true, { durationS: 600, deadline: 'bedtime', deadlineOffsetS: -1800 })]
    const { steps, conflicts } = build([night(0, 1)], [], rules)
    expect(conflicts).toEqual([])
    const step = steps[0]
    expect(step?.deadlineUtc).toBe((WINTER_MOMENTS.bedtime ?? 0) - 1800)
    expect((step?.startUtc ?? Infinity) + 600).toBeLessThanOrEqual(step?.deadlineUtc ?? 0)
  })

  test('moves planned for bedtime do not contradict the built-in order', () => {
    const nights = [{ ...night(0, 1, evening), given: [move(0, { phase: 'bedtime', after: [] })] }]
    expect(build(nights).conflicts).toEqual([])
  })

  test('connecting runs vehicle end first after the test, leaving runs post first before stowing', () => {
    const hooked = {
      hookup: { present: true, roundPin: true, usableA: 10, leadName: 'lead', cableRunMm: 9000 },
      energy: { depart01: 0.66 },
    }
    const keys = build([night(0, 1, hooked)]).steps.map((step) => step.ruleId)
    const order = [
      'check-in',
      'walk-the-pitch',
      'test-post-before-parking',
      'inlet-to-post',
      'uncoil-lead',
      'connect-round-pin',
      'start-low',
      'feel-plug-10',
      'feel-plug-60',
      'supply-check',
      'unplug-post-first',
      'lead-stow',
      'walk-round',
    ].map((id) => keys.indexOf(id))
    expect(order).toEqual(order.toSorted((a, b) => a - b))
    expect(order).not.toContain(-1)
  })

  test('the plug is felt ten minutes and an hour after plugging in', () => {
    const found = build([night(0, 1, { hookup: { present: true, roundPin: true } })])
    const after = (key: string): number => (stepAt(found, key)?.notBeforeUtc ?? 0) - WINTER_MOMENTS.plugIn
    expect([after('feel-plug-10:n1'), after('feel-plug-60:n1')]).toEqual([600, 3600])
  })

  test('a morning too short for frost and snow is named with the fewest steps and how late it ends', () => {
    const snowy = night(0, 1, { weather: { lowC: -9, snowMm: 3 }, air: { covers: true, frostG: 10 } })
    const short = { ...snowy, moments: { ...snowy.moments, wake: (WINTER_MOMENTS.depart - 900) as Utc } }
    const found = build([short])
    const morning = found.steps.filter((step) => step.phase === 'morning')
    const needS = morning.reduce((sum, step) => sum + step.durationS, 0)
    const [window] = found.conflicts.flatMap((one) => (one.kind === 'window' ? [one] : []))
    expect(found.conflicts).toHaveLength(1)
    expect(window?.lateByS).toBe(needS - 900)
    const named = morning.filter((step) => window?.stepKeys.includes(step.key))
    expect(named.reduce((sum, step) => sum + step.durationS, 0)).toBeGreaterThan(900)
    expect(named.map((step) => step.ruleId)).toEqual(['dress-and-drink', 'clear-glass', 'clear-roof'])
  })

  test('every short morning of a long trip is named once, with steps of its own night only', () => {
    const short = Array.from({ length: 9 }, (_, index) => {
      const one = night(index, 9, { weather: { lowC: -9, snowMm: 3 } })
      const wake = (WINTER_MOMENTS.depart + index * DAY_S - 900) as Utc
      return { ...one, moments: { ...one.moments, wake } }
    })
    const windows = build(short).conflicts.flatMap((one) => (one.kind === 'window' ? [one.stepKeys] : []))
    const nightsOf = windows.map((keys) => [...new Set(keys.map((key) => key.split(':')[1]))].join())
    expect(nightsOf.toSorted()).toEqual(short.map(({ nightId }) => nightId))
  })

  test('a night without hours, target or dusk has steps and no conflicts', () => {
    const found = build([{ ...night(0, 1), moments: {} }])
    expect(found.conflicts).toEqual([])
    expect(found.steps.every((step) => step.startUtc === null && step.deadlineUtc === null)).toBe(true)
  })

  test('what is done at home comes before the first road, for every night', () => {
    const second = night(1, 2, { site: { sleepAllowed: 'not-known' } })
    const steps = build([night(0, 2), second]).steps
    const asked = steps.findIndex((step) => step.key === 'ask-sleep-in-vehicle:n2')
    const road = steps.findIndex((step) => step.phase === 'on-the-road')
    expect(asked).toBeGreaterThanOrEqual(0)
    expect(asked).toBeLessThan(road)
  })

  test('drills have an order but no clock', () => {
    const drills = build([night(0, 1, { hookup: { present: true } })]).steps.filter(
      (step) => step.phase === 'in-the-night',
    )
    expect(drills.length).toBeGreaterThan(2)
    expect(drills.filter((step) => step.startUtc !== null || step.latestStartUtc !== null)).toEqual([])
  })

  test('the same trip gives the same checklist', () => {
    const nights = [night(0, 2, evening), night(1, 2)]
    expect(build(nights)).toEqual(build(nights))
  })
})
