import { afterEach, describe, expect, test, vi } from 'vitest'
import { createEvaluator } from '../../../shared/checklist/evaluate.ts'
import { asFacts, BUILT_IN_RULES, readsOf } from '../../../shared/checklist/index.ts'
import type { Condition, Json } from '../../../shared/checklist/index.ts'
import { CALM_FACTS } from './calm-facts.ts'

const FACTS = {
  weather: { lowC: -4, note: 'clear', snow: null },
  load: {
    fuel: [
      { id: 'a', massG: 300 },
      { id: 'b', massG: 900 },
    ],
    food: [],
  },
}

const answer = (when: Condition): boolean | string => {
  const held = createEvaluator().holds(when, FACTS)
  return held.ok ? held.value : `${held.problem.code} ${held.problem.at}`.trim()
}

const nested = (depth: number): Condition => {
  let condition: Json = true
  for (let level = 0; level < depth; level++) condition = { '!': [condition] }
  return condition
}

describe('conditions', () => {
  afterEach(() => {
    vi.restoreAllMocks()
  })

  // Expected values follow the operators' descriptions on https://jsonlogic.com/operations.html
  test.each<readonly [Condition, boolean]>([
    [true, true],
    [false, false],
    [{ '<': [{ var: 'weather.lowC' }, 0] }, true],
    [{ '<=': [-10, { var: 'weather.lowC' }, 0] }, true],
    [{ '===': [{ var: 'weather.note' }, 'clear'] }, true],
    [{ '!==': [{ var: 'weather.snow' }, null] }, false],
    [{ '!!': [{ var: 'load.fuel' }] }, true],
    [{ '!!': [{ var: 'load.food' }] }, false],
    [{ '!': [{ var: 'load.food' }] }, true],
    [{ some: [{ var: 'load.fuel' }, { '>': [{ var: 'massG' }, 500] }] }, true],
    [{ all: [{ var: 'load.fuel' }, { '>': [{ var: 'massG' }, 500] }] }, false],
    [{ none: [{ var: 'load.food' }, true] }, true],
    [{ and: [true, { or: [false, { in: ['lea', { var: 'weather.note' }] }] }] }, true],
    [{ '>': [{ '+': [{ var: 'weather.lowC' }, 10] }, 5] }, true],
    [{ if: [{ '<': [{ var: 'weather.lowC' }, 0] }, false, true] }, false],
    [{ '!!': [{ filter: [{ var: 'load.fuel' }, { '<': [{ var: 'massG' }, 100] }] }] }, false],
    [{ '===': [{ var: 'load.fuel.length' }, 2] }, true],
    [{ '===': [{ var: 'load.fuel.1.id' }, 'b'] }, true],
    [{ '!': { var: 'load.food' } }, true],
    [{ '!!': [[]] }, false],
  ])('%j is %s', (when, expected) => {
    expect(answer(when)).toBe(expected)
  })

  test.each<readonly [string, Condition, string]>([
    ['an unknown operator', { fetch: ['x'] }, 'unknown-operator fetch'],
    ['an empty object', {}, 'unknown-operator {}'],
    ['an element that a list does not have', { var: 'load.fuel.2.id' }, 'unknown-fact load.fuel.2.id'],
    ['a fact of an element that is no object', { var: 'load.fuel.0.id.first' }, 'unknown-fact load.fuel.0.id.first'],
    ['a fact without a name', { var: { '+': [1, 2] } }, 'unknown-fact'],
    ['a fact of nothing', { var: null }, 'unknown-fact'],
    ['text without bound', { cat: ['a', 'b'] }, 'unknown-operator cat'],
    ['a list without bound', { reduce: [{ var: 'load.fuel' }, [1], []] }, 'unknown-operator reduce'],
    ['thrown values', { throw: 'x' }, 'unknown-operator throw'],
    ['a fact that does not exist', { var: 'weather.depth' }, 'unknown-fact weather.depth'],
    ['a way up the prototype', { var: '__proto__.polluted' }, 'unknown-fact __proto__.polluted'],
    ['an inherited property', { var: 'weather.toString' }, 'unknown-fact weather.toString'],
    ['a computed path', { var: [{ var: 'weather.note' }] }, 'unknown-fact'],
    ['words compared with numbers', { '<': [{ var: 'weather.note' }, 3] }, 'not-comparable'],
    ['a division by nothing', { '/': [1, 0] }, 'not-comparable'],
    ['more depth than a person writes', nested(60), 'too-large'],
    ['more parts than a person writes', { and: Array.from({ length: 500 }, () => true) }, 'too-large'],
    [
      'lists inside lists inside lists',
      { some: [{ var: 'load.fuel' }, { some: [[1], { some: [[1], true] }] }] },
      'too-large',
    ],
  ])('%s is refused by name', (_, when, expected) => {
    expect(answer(when)).toBe(expected)
  })

  test('a condition that would run for long is stopped', () => {
    const list = Array.from({ length: 1000 }, (_, id) => id)
    const positive = { '>=': [{ var: '' }, 0] }
    const rows = (count: number): Json => list.slice(0, count).map(() => list)
    const when = { all: [{ var: 'rows' }, { all: [{ var: '' }, positive] }] }
    const evaluator = createEvaluator()
    expect(evaluator.holds(when, { rows: rows(100) })).toEqual({ ok: true, value: true })
    expect(evaluator.holds(when, { rows: rows(1000) })).toEqual({ ok: false, problem: { code: 'too-slow', at: '' } })
    expect(evaluator.holds(when, { rows: rows(100) })).toEqual({ ok: true, value: true })
  })

  test('nothing is compiled: rules work where the page may not evaluate text as code', () => {
    const compile = vi.spyOn(globalThis, 'eval')
    const construct = vi.spyOn(globalThis, 'Function')
    const evaluator = createEvaluator()
    for (const rule of BUILT_IN_RULES) {
      if (rule.forEach === undefined)
        evaluator.holds(rule.when, { ...asFacts(CALM_FACTS), checklist: { skippedRuleIds: [] } })
    }
    expect(compile).not.toHaveBeenCalled()
    expect(construct).not.toHaveBeenCalled()
  })

  test('facts stay as they are', () => {
    const frozen = Object.freeze({ weather: Object.freeze({ lowC: -4 }) })
    expect(createEvaluator().holds({ '<': [{ var: 'weather.lowC' }, 0] }, frozen)).toEqual({ ok: true, value: true })
  })
})

describe('what a rule reads', () => {
  test('is found in lists and beside numbers, and not in what is no condition', () => {
    expect(readsOf({ when: [{ var: 'a.b' }, { var: ['c.d', 0] }, { '!': { var: 'e.f' } }] })).toEqual([
      'a.b',
      'c.d',
      'e.f',
    ])
    expect(readsOf({ when: { '<': [{ var: 3 }, 4] } })).toEqual([])
    expect(readsOf({ when: null })).toEqual([])
    expect(readsOf({ when: { some: [] } })).toEqual([])
  })

  test('is found in its condition, its list and its placeholders, each once', () => {
    const when = {
      and: [
        { '<': [{ var: 'weather.lowC' }, 0] },
        { some: [{ var: 'load.fuel' }, { '>': [{ var: 'massG' }, 1] }] },
        { '===': [{ var: 'item.name' }, 'x'] },
      ],
    }
    const params = { lowC: 'weather.lowC', name: 'item.name', site: 'site.name' }
    expect(readsOf({ when, forEach: 'load.wet', params })).toEqual([
      'load.wet',
      'weather.lowC',
      'load.fuel',
      'site.name',
    ])
  })
})
