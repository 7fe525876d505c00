import { describe, expect, test } from 'vitest'
import { createEvaluator } from '../../../shared/checklist/evaluate.ts'
import { fromCondition, toCondition } from '../../../shared/checklist/index.ts'
import type { ConditionForm, Condition, FormTest } from '../../../shared/checklist/index.ts'

const FACTS = {
  weather: { lowC: -4, gustMPerS: null },
  site: { name: 'Low Meadow', fire: true },
  load: { wet: [], fuel: [1] },
}

const TESTS: readonly (readonly [FormTest, boolean])[] = [
  [{ path: 'site.fire', is: 'true' }, true],
  [{ path: 'site.fire', is: 'false' }, false],
  [{ path: 'weather.gustMPerS', is: 'known' }, false],
  [{ path: 'weather.gustMPerS', is: 'unknown' }, true],
  [{ path: 'load.fuel', is: 'filled' }, true],
  [{ path: 'load.wet', is: 'empty' }, true],
  [{ path: 'weather.lowC', is: 'below', value: 0 }, true],
  [{ path: 'weather.lowC', is: 'at-most', value: -4 }, true],
  [{ path: 'weather.lowC', is: 'above', value: -4 }, false],
  [{ path: 'weather.lowC', is: 'at-least', value: -4 }, true],
  [{ path: 'weather.gustMPerS', is: 'below', value: 10 }, false],
  [{ path: 'weather.gustMPerS', is: 'at-least', value: 0 }, false],
  [{ path: 'site.name', is: 'equals', value: 'Low Meadow' }, true],
  [{ path: 'site.name', is: 'differs', value: 'Low Meadow' }, false],
]

const holds = (when: Condition): boolean | string => {
  const held = createEvaluator().holds(when, FACTS)
  return held.ok ? held.value : held.problem.code
}

describe('conditions in a form', () => {
  test.each(TESTS)('%j holds as it says: %s', (one, expected) => {
    expect(holds(toCondition({ join: 'all', tests: [one] }))).toBe(expected)
  })

  test('all tests must hold, or any, as chosen; none at all always holds', () => {
    const tests = TESTS.map(([one]) => one)
    expect(holds(toCondition({ join: 'all', tests }))).toBe(false)
    expect(holds(toCondition({ join: 'any', tests }))).toBe(true)
    expect(holds(toCondition({ join: 'all', tests: [] }))).toBe(true)
  })

  test('a form survives being saved as a condition', () => {
    const forms: readonly ConditionForm[] = [
      { join: 'all', tests: [] },
      ...TESTS.map(([one]): ConditionForm => ({ join: 'any', tests: [one] })),
      { join: 'all', tests: TESTS.map(([one]) => one) },
    ]
    expect(forms.map((form) => fromCondition(toCondition(form)))).toEqual(forms)
  })

  test.each<readonly [Condition]>([
    [false],
    [{ '<': [{ var: 'weather.lowC' }, 0] }],
    [{ and: [{ or: [true] }] }],
    [{ and: [{ '<': [{ var: 'weather.lowC' }, 0] }] }],
    [{ and: [{ '===': [{ var: 'a' }, { var: 'b' }] }] }],
    [{ and: [{ and: [{ '!==': [{ var: 'a' }, null] }, { '<': [{ var: 'b' }, 1] }] }] }],
    [{ and: 3 }],
    [{ and: ['x'] }],
    [{ or: [[true]] }],
    [{ and: [{ '===': 'x' }] }],
    [{ and: [{ '===': [{ var: 'a' }, 1], '!': [{ var: 'a' }] }] }],
    [{ and: [{ '===': [{ var: 5 }, 1] }] }],
    [{ and: [{ '!==': [{ var: 'a' }, true] }] }],
    [{ and: [{ and: [true, { '<': 'x' }] }] }],
    [{ and: [{ and: [{ '!==': [{ var: 'a' }, null] }, { '<': [{ var: 'a' }, 'cold'] }] }] }],
    [{ and: [{ and: [{ '!==': [{ var: 'a' }, null] }, { '<': ['a', 1] }] }] }],
  ])('%j was written by hand and is left to hand', (when) => {
    expect(fromCondition(when)).toBe(null)
  })
})
