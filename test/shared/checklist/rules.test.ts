import { describe, expect, test } from 'vitest'
import { asFacts, BUILT_IN_RULES, buildChecklist, MOMENT_NAMES, PHASES } from '../../../shared/checklist/index.ts'
import type { ChecklistOutcome, Rule } from '../../../shared/checklist/index.ts'
import { valueAt } from '../../../shared/checklist/evaluate.ts'
import { ENGLISH, GERMAN } from '../../../shared/text/index.ts'
import { CALM_FACTS, WINTER_MOMENTS, withFacts } from './calm-facts.ts'
import type { FactsPatch } from './calm-facts.ts'
import { over } from './rule-cases.ts'
import { ARRIVAL_CASES } from './rule-cases-arrival.ts'
import { EVENING_CASES } from './rule-cases-evening.ts'
import { HOME_CASES } from './rule-cases-home.ts'
import { MORNING_CASES } from './rule-cases-morning.ts'

const CASES = [...HOME_CASES, ...ARRIVAL_CASES, ...EVENING_CASES, ...MORNING_CASES]
/** The one fact that the engine adds itself. */
const SKIPPED = 'checklist.skippedRuleIds'
const EN: Readonly<Record<string, string>> = ENGLISH
const DE: Readonly<Record<string, string>> = GERMAN

/** Facts that may be not known, by the type `ChecklistFacts`. */
const NULLABLE = new Set([
  'clock.arriveAfterCheckInMin',
  'clock.arriveAfterSunsetMin',
  'clock.departInBanMin',
  'clock.departInGateMin',
  'clock.unplugAfterDepartMin',
  'energy.arrive01',
  'energy.depart01',
  'energy.heatLeftOnFaultH',
  'energy.reserve01',
  'heating.setPointC',
  'hookup.adapterName',
  'hookup.cableRunMm',
  'hookup.connector',
  'hookup.extensionName',
  'hookup.heldA',
  'hookup.leadName',
  'hookup.sag01',
  'hookup.stepDownV',
  'hookup.stopV',
  'hookup.usableA',
  'site.indoorFallback',
  'site.phone',
  'sleepers.hottestBedC',
  'target.name',
  'vehicle.exitDoor',
  'vehicle.heaterStopsAfterH',
])

const checklist = (patch: FactsPatch, switchedOffRuleIds: readonly string[] = []): ChecklistOutcome =>
  buildChecklist({
    rules: BUILT_IN_RULES,
    switchedOffRuleIds,
    nights: [{ nightId: 'n1', facts: asFacts(withFacts(patch)), moments: WINTER_MOMENTS, given: [] }],
    ticks: [],
  })

const stepsOf = (outcome: ChecklistOutcome, ruleId: string): number =>
  outcome.steps.filter((step) => step.ruleId === ruleId).length

const textKeys = (rule: Rule): readonly [string, string] =>
  rule.text.kind === 'key' ? [rule.text.step, rule.text.reason] : ['', '']

describe('built-in rules', () => {
  test('every rule has a case and every case a rule', () => {
    // What a skipped step means is tested with the ticks.
    const others = BUILT_IN_RULES.filter((rule) => !rule.reads.includes(SKIPPED)).map((rule) => rule.id)
    expect(CASES.map((one) => one.ruleId).toSorted()).toEqual(others.toSorted())
  })

  test.each(CASES)('$ruleId appears on its facts and only there', ({ ruleId, appearsWhen, goneWhen }) => {
    const found = checklist(appearsWhen)
    expect(found.conflicts.filter((conflict) => conflict.kind === 'bad-rule')).toEqual([])
    expect(stepsOf(found, ruleId)).toBe(1)
    const gone = goneWhen === null ? checklist(appearsWhen, [ruleId]) : checklist(over(appearsWhen, goneWhen))
    expect(gone.conflicts.filter((conflict) => conflict.kind === 'bad-rule')).toEqual([])
    expect(stepsOf(gone, ruleId)).toBe(0)
  })

  test('on a calm night without supply only the steps of every night remain', () => {
    const nightly = CASES.filter((one) => one.goneWhen === null).map((one) => one.ruleId)
    const calmOnly = ['walk-the-pitch', 'open-for-air-bare', 'insect-net', 'co-signs-drill']
    const found = new Set(checklist({}).steps.map((step) => step.ruleId))
    expect([...found].toSorted()).toEqual([...nightly, ...calmOnly].toSorted())
  })

  const HANDLED_AT_THE_POST = {
    hookup: {
      present: true,
      roundPin: true,
      usableA: 10,
      sag01: 0.06,
      stepDownV: 210,
      stopV: 205,
      measured: false,
      adapterNeeded: true,
      adapterOnBoard: true,
      adapterName: 'pin adapter',
      otherLoadW: 300,
      meteredPerKWh: true,
    },
    energy: { depart01: 0.7, heatLeftOnFaultH: 9 },
    weather: { lowC: -2, rainMm: 3 },
  } as const satisfies FactsPatch
  const DRAWING = [
    'start-low',
    'sagging-post',
    'feel-plug-10',
    'feel-plug-60',
    'supply-check',
    'warm-before-unplugging',
  ]
  const CONNECTED = ['uncoil-lead', 'connect-round-pin', 'read-volts', 'enter-readings', 'drip-loop', 'joint-dry']
  const AFTERWARDS = ['supply-failure-drill', 'plug-smell-drill', 'unplug-post-first', 'adapter-back', 'lead-stow']
  const ruleIds = (patch: FactsPatch): readonly string[] => checklist(patch).steps.map(({ ruleId }) => ruleId)

  test('nothing is plugged in, felt, read or unplugged at a post without earth', () => {
    const sound = ruleIds(HANDLED_AT_THE_POST)
    expect(sound).toEqual(expect.arrayContaining([...DRAWING, ...CONNECTED, ...AFTERWARDS]))
    const dead = ruleIds(over(HANDLED_AT_THE_POST, { hookup: { earth: 'no' } }))
    expect(dead).toEqual(expect.arrayContaining(['test-post-before-parking', 'earth-missing', 'report-damage']))
    expect(dead.filter((id) => [...DRAWING, ...CONNECTED, ...AFTERWARDS].includes(id))).toEqual([])
    expect(dead).not.toContain('read-meter-start')
  })

  test('no current is raised, felt or counted on for a battery that may not or cannot charge there', () => {
    const drawing = (patch: FactsPatch): readonly string[] =>
      ruleIds(over(HANDLED_AT_THE_POST, patch)).filter((id) => DRAWING.includes(id))
    expect(drawing({ site: { chargeAllowed: 'no' } })).toEqual([])
    expect(drawing({ hookup: { belowMinimum: true } })).toEqual([])
    expect(drawing({ site: { chargeAllowed: 'not-known' } }).toSorted()).toEqual(DRAWING.toSorted())
    // A fan heater in a vehicle without a driving battery draws all the same.
    expect(drawing({ site: { chargeAllowed: 'no' }, vehicle: { drive: 'combustion' } })).toContain('start-low')
  })

  test('snow asks for an hour and a half of light on arriving, bare ground for an hour', () => {
    const asked = (arriveAfterSunsetMin: number, snowMm: number): boolean =>
      ruleIds({ clock: { arriveAfterSunsetMin }, weather: { snowMm } }).includes('arrive-with-light')
    expect([asked(-61, 0), asked(-59, 0), asked(-89, 5), asked(-91, 5), asked(1, 5)]).toEqual([
      false,
      true,
      true,
      false,
      false,
    ])
  })

  test('glass is cleared in the last half hour, so that it does not freeze over again', () => {
    const step = checklist({ weather: { lowC: -3 } }).steps.find(({ ruleId }) => ruleId === 'clear-glass')
    expect(step?.startUtc).toBeGreaterThanOrEqual(WINTER_MOMENTS.depart - 1800)
    expect(step?.startUtc).toBeLessThan(WINTER_MOMENTS.depart)
  })

  test('only a battery that is on board can be charged tonight for the sake of tomorrow', () => {
    const short = { tomorrow: { site: 'Upper meadow', heatRunsOut: true } } as const
    const asked = (vehicle: FactsPatch['vehicle']): boolean =>
      ruleIds({ ...short, ...(vehicle === undefined ? {} : { vehicle }) }).includes('tomorrow-short-of-charge')
    expect([asked({ drive: 'electric' }), asked({ drive: 'combustion', leisureKind: 'lead' })]).toEqual([true, true])
    expect(asked({ drive: 'combustion', leisureKind: null })).toBe(false)
  })

  test('the plug stays in while the night counts on it, and is out before leaving where that comes first', () => {
    const stepOf = (patch: FactsPatch, ruleId: string) =>
      checklist(over(HANDLED_AT_THE_POST, patch)).steps.find((step) => step.ruleId === ruleId)
    const planned = stepOf({}, 'unplug-post-first')
    expect((planned?.startUtc ?? 0) - WINTER_MOMENTS.unplug).toBeGreaterThanOrEqual(-600)
    expect((planned?.startUtc ?? 0) + 180).toBeLessThanOrEqual(WINTER_MOMENTS.unplug)
    const late = { clock: { unplugAfterDepartMin: 12 } } as const
    expect(stepOf(late, 'unplug-post-first')).toBeUndefined()
    const leaving = stepOf(late, 'unplug-to-leave')
    expect((leaving?.startUtc ?? Infinity) + 180).toBeLessThanOrEqual(WINTER_MOMENTS.depart)
  })

  test('so does the connector of a charging point', () => {
    const point = { hookup: { present: true, chargingPoint: true } } as const
    const startOf = (patch: FactsPatch, id: string): number =>
      checklist(over(point, patch)).steps.find(({ ruleId }) => ruleId === id)?.startUtc ?? NaN
    expect(startOf({}, 'unplug-charging-point') - WINTER_MOMENTS.unplug).toBeGreaterThanOrEqual(-600)
    expect(startOf({}, 'unplug-charging-point') + 60).toBeLessThanOrEqual(WINTER_MOMENTS.unplug)
    const late = { clock: { unplugAfterDepartMin: 12 } } as const
    expect(startOf(late, 'unplug-charging-point')).toBeNaN()
    expect(startOf(late, 'end-charge-to-leave') + 60).toBeLessThanOrEqual(WINTER_MOMENTS.depart)
  })

  test('polarity is read before anything is connected', () => {
    const order = ruleIds(over(HANDLED_AT_THE_POST, { hookup: { polarityReversed: 'not-known', earth: 'not-known' } }))
    expect(order.indexOf('polarity-not-known')).toBeGreaterThan(-1)
    expect(order.indexOf('polarity-not-known')).toBeLessThan(order.indexOf('connect-round-pin'))
    const known = ruleIds(over(HANDLED_AT_THE_POST, { hookup: { polarityReversed: 'yes' } }))
    expect(known.indexOf('polarity-reversed')).toBeLessThan(known.indexOf('connect-round-pin'))
  })

  test('a fact that is not known never makes a rule fail', () => {
    const faults: string[] = []
    for (const { ruleId, appearsWhen } of CASES) {
      for (const path of Object.values(BUILT_IN_RULES.find((rule) => rule.id === ruleId)?.params ?? {})) {
        const [area = '', name = ''] = path.split('.')
        if (area === 'item' || !NULLABLE.has(path)) continue
        const found = checklist(over(appearsWhen, { [area]: { [name]: null } }))
        const bad = found.conflicts.filter((conflict) => conflict.kind === 'bad-rule')
        if (bad.length > 0) faults.push(`${ruleId} ${path}`)
      }
    }
    expect(faults).toEqual([])
  })

  test('each has a step and a reason in both languages, with the same placeholders as its facts fill', () => {
    const faults: string[] = []
    for (const rule of BUILT_IN_RULES) {
      const given = Object.keys(rule.params ?? {}).toSorted()
      for (const texts of [EN, DE]) {
        const [step = '', reason = ''] = textKeys(rule).map((key) => texts[key] ?? '')
        const shown = new Set([...`${step} ${reason}`.matchAll(/\{(\w+)\}/g)].map((match) => match[1] ?? ''))
        if (step === '' || reason === '') faults.push(`${rule.id} lacks a text`)
        if ([...shown].toSorted().join() !== given.join()) faults.push(`${rule.id} ${[...shown].join()}`)
      }
      if (DE[textKeys(rule)[0]] === EN[textKeys(rule)[0]]) faults.push(`${rule.id} is not translated`)
    }
    expect(faults).toEqual([])
  })

  test('no step or reason promises that something is without danger', () => {
    const all = BUILT_IN_RULES.flatMap((rule) => textKeys(rule).flatMap((key) => [EN[key] ?? '', DE[key] ?? '']))
    expect(all.filter((text) => /\b(safe|safely|safety|sicher|ungefährlich|gefahrlos)\b/i.test(text))).toEqual([])
  })

  test('a placeholder is named with the unit of the fact that fills it', () => {
    const unit = /(Mm3|Mm|MPerS|Wh|Ppm|01|Min|H|[a-z0-9](?:C|K|G|W|A|V|M))$/
    const unitOf = (name: string): string => unit.exec(name)?.[1]?.slice(-1) ?? ''
    const wrong = BUILT_IN_RULES.flatMap((rule) =>
      Object.entries(rule.params ?? {})
        .filter(([name, path]) => unitOf(name) !== unitOf(path))
        .map(([name, path]) => `${rule.id} ${name} ${path}`),
    )
    expect(wrong).toEqual([])
  })

  test('each reads only facts that exist, and says which', () => {
    const unknown = BUILT_IN_RULES.flatMap((rule) =>
      rule.reads.filter((path) => path !== SKIPPED && valueAt(asFacts(CALM_FACTS), path) === undefined),
    )
    const silent = BUILT_IN_RULES.filter((rule) => rule.reads.length === 0 && rule.when !== true)
    expect([unknown, silent]).toEqual([[], []])
  })

  test('each names known moments, known phases and predecessors that exist', () => {
    const ids = new Set([...BUILT_IN_RULES.map((rule) => rule.id), 'move-dusk', 'move-dawn'])
    const moments = new Set<string | undefined>([...MOMENT_NAMES, undefined])
    const wrong = BUILT_IN_RULES.filter(
      (rule) =>
        !PHASES.includes(rule.phase) ||
        !moments.has(rule.notBefore) ||
        !moments.has(rule.deadline) ||
        !rule.after.every((id) => ids.has(id)),
    )
    expect(wrong).toEqual([])
  })

  test('all rules at once have no circle', () => {
    const all = BUILT_IN_RULES.map((rule): Rule => ({
      id: rule.id,
      phase: rule.phase,
      text: rule.text,
      reads: [],
      when: true,
      after: rule.after,
      durationS: rule.durationS,
    }))
    const nights = [{ nightId: 'n1', facts: asFacts(CALM_FACTS), moments: {}, given: [] }]
    const found = buildChecklist({ rules: all, switchedOffRuleIds: [], nights, ticks: [] })
    expect(found.conflicts).toEqual([])
    expect(found.steps.length).toBe(BUILT_IN_RULES.length)
  })

  test('there are at least seventy, and every phase has at least five', () => {
    expect(BUILT_IN_RULES.length).toBeGreaterThanOrEqual(70)
    expect(PHASES.filter((phase) => BUILT_IN_RULES.filter((rule) => rule.phase === phase).length < 5)).toEqual([])
  })
})
