import { describe, expect, test } from 'vitest'
import { asFacts, buildChecklist, ruleFromLesson, ruleFromOwn, unusedPieces } from '../../../shared/checklist/index.ts'
import type { Facts, LessonScope } from '../../../shared/checklist/index.ts'
import { withFacts } from './calm-facts.ts'
import type { FactsPatch } from './calm-facts.ts'

const TAUGHT: FactsPatch = {
  weather: { lowC: -8, highC: 3, rainMm: 2 },
  hookup: { present: true, connector: 'nema-tt-30' },
  site: { foodLockerRequired: true },
  target: { present: true },
}

/** Whether a lesson of the taught night gives a step on another night. */
function speaksOn(scope: LessonScope, patch: FactsPatch): boolean {
  const lesson = {
    id: 'l1',
    text: 'Put the lid on',
    phase: 'before-dark',
    scope,
    reason: 'Learned at Low Meadow',
  } as const
  const own = ruleFromLesson(lesson, asFacts(withFacts(TAUGHT)))
  const night = { nightId: 'n9', facts: asFacts(withFacts(patch)), moments: {}, given: [] }
  const found = buildChecklist({ rules: [ruleFromOwn(own)], switchedOffRuleIds: [], nights: [night], ticks: [] })
  expect(found.conflicts).toEqual([])
  return found.steps.some((step) => step.key === 'lesson-l1:n9')
}

describe('lessons', () => {
  test.each<readonly [LessonScope, FactsPatch, FactsPatch | null]>([
    ['every-night', {}, null],
    ['as-cold', { weather: { lowC: -6 } }, { weather: { lowC: -5 } }],
    ['as-warm', { weather: { highC: 1 } }, { weather: { highC: 0 } }],
    ['wet', { weather: { snowMm: 1 } }, { weather: { snowMm: 0, rainMm: 0 } }],
    ['same-connector', { hookup: { connector: 'nema-tt-30' } }, { hookup: { connector: 'bs-1363' } }],
    ['food-locker', { site: { foodLockerRequired: true } }, {}],
    ['with-target', { target: { present: true } }, {}],
  ])('a lesson for %s speaks on such nights and no others', (scope, on, off) => {
    expect(speaksOn(scope, on)).toBe(true)
    expect(off !== null && speaksOn(scope, off)).toBe(false)
  })

  test.each<readonly [LessonScope, string]>([
    ['as-cold', 'lowC'],
    ['as-warm', 'highC'],
  ])('a lesson for nights %s speaks on every night where the one that taught it had no forecast', (scope, missing) => {
    const facts = asFacts(withFacts({}))
    const weather = Object.fromEntries(Object.entries(Object(facts['weather'])).filter(([name]) => name !== missing))
    const lesson = { id: 'l1', text: 'x', phase: 'bedtime', scope, reason: 'y' } as const
    const rule = ruleFromLesson(lesson, { ...facts, weather: weather as Facts })
    expect(rule.when).toEqual(ruleFromLesson({ ...lesson, scope: 'every-night' }, facts).when)
  })

  test('a lesson for the same connector, taught without a post, speaks on nights without one', () => {
    const lesson = { id: 'l1', text: 'x', phase: 'bedtime', scope: 'same-connector', reason: 'y' } as const
    const taught = ruleFromLesson(lesson, asFacts(withFacts({ hookup: { present: false, connector: null } })))
    const speaks = (present: boolean): boolean =>
      buildChecklist({
        rules: [ruleFromOwn(taught)],
        switchedOffRuleIds: [],
        nights: [{ nightId: 'n9', facts: asFacts(withFacts({ hookup: { present } })), moments: {}, given: [] }],
        ticks: [],
      }).steps.length > 0
    expect([speaks(false), speaks(true)]).toEqual([true, false])
  })

  test('a lesson keeps its words and its reason, and makes the same rule each time', () => {
    const lesson = { id: 'l7', text: 'Bring the mat in', phase: 'bedtime', scope: 'wet', reason: 'Night 2' } as const
    const facts = asFacts(withFacts({}))
    expect(ruleFromLesson(lesson, facts)).toEqual(ruleFromLesson(lesson, facts))
    const rule = ruleFromOwn(ruleFromLesson(lesson, facts))
    expect(rule.text).toEqual({ kind: 'own', step: 'Bring the mat in', reason: 'Night 2' })
    expect(rule.reads).toEqual(['weather.rainMm', 'weather.snowMm'])
  })
})

const night = (...unusedPieceIds: readonly string[]) => ({ unusedPieceIds })

describe('pieces not used', () => {
  test('three nights in a row without a use suggest to leave a piece at home', () => {
    const nights = [night('axe', 'chair', 'net'), night('chair', 'axe'), night('axe', 'chair', 'net')]
    expect(unusedPieces(nights, new Set())).toEqual(['axe', 'chair'])
  })

  test('two nights are too few, and a use in between starts the count again', () => {
    expect(unusedPieces([night('axe'), night('axe')], new Set())).toEqual([])
    expect(unusedPieces([night('axe'), night('axe'), night(), night('axe')], new Set())).toEqual([])
  })

  test('what must be on board is never suggested', () => {
    const nights = [night('first-aid', 'axe'), night('first-aid', 'axe'), night('first-aid', 'axe')]
    expect(unusedPieces(nights, new Set(['first-aid']))).toEqual(['axe'])
  })
})
