/** Own rules: made with conditions, changed, left alone where they were written by hand; built-in ones switched off and on again. */
import { describe, expect, it } from 'vitest'
import type { VueWrapper } from '@vue/test-utils'
import ChecklistView from '../../../../renderer/features/checklist/ChecklistView.vue'
import RuleEditor from '../../../../renderer/features/checklist/RuleEditor.vue'
import { FACT_NAMES } from '../../../../renderer/features/checklist/rule-facts.ts'
import type { UserRule } from '../../../../shared/document/index.ts'
import { BUILT_IN_RULES } from '../../../../shared/plan/index.ts'
import { cardsPlan } from '../../../support/cards-plan.ts'
import { editableTrip, show } from '../../window.ts'

const trip = editableTrip()
const withRule = (when: UserRule['when']) =>
  editableTrip({
    checklist: {
      ...trip.checklist,
      rules: [
        {
          id: 'own-rule-1',
          phase: 'bedtime',
          step: 'Close the flap',
          reason: 'It rattles',
          when,
          after: [],
          durationMin: 2,
          enabled: true,
        },
      ],
    },
  })

const button = (view: VueWrapper, words: RegExp) =>
  view.findAll('button').find((each) => words.test(`${each.text()} ${each.attributes('aria-label') ?? ''}`))
const labelled = (view: VueWrapper, label: RegExp) => {
  const found = view.findAll('label').find((each) => label.test(each.text()))
  return view.get(`[id="${found?.attributes('for') ?? ''}"]`)
}

describe('the rule editor', () => {
  it('makes a rule for nights that are cold or windy', async () => {
    const { view, documents } = show(RuleEditor, { trip })
    await labelled(view, /^Step to do/).setValue('Crack the seals')
    await button(view, /Add condition/)?.trigger('click')
    await button(view, /Add condition/)?.trigger('click')
    await labelled(view, /Condition 2: what/).setValue('weather.windMPerS')
    await labelled(view, /Condition 2: how/).setValue('above')
    await labelled(view, /Condition 2: value/).setValue('36 km/h')
    await button(view, /any holds/)?.trigger('click')
    await view.get('form').trigger('submit')
    const rule = documents.trip?.checklist.rules.at(-1)
    expect(rule?.step).toBe('Crack the seals')
    expect(rule?.when).toEqual({
      or: [
        { and: [{ '!==': [{ var: 'weather.lowC' }, null] }, { '<': [{ var: 'weather.lowC' }, 0] }] },
        { and: [{ '!==': [{ var: 'weather.windMPerS' }, null] }, { '>': [{ var: 'weather.windMPerS' }, 10] }] },
      ],
    })
  })

  it('changes a rule where it stands and keeps its place and its name', async () => {
    const { view, documents } = show(RuleEditor, { trip: withRule({ and: [{ '===': [{ var: 'trip.pets' }, true] }] }) })
    await button(view, /Change rule/)?.trigger('click')
    const form = view.findAll('form').at(-1)
    await form?.findAll('input')[0]?.setValue('Close both flaps')
    await form?.findAll('input')[0]?.trigger('change')
    await form?.trigger('submit')
    expect(documents.trip?.checklist.rules).toEqual([
      expect.objectContaining({
        id: 'own-rule-1',
        step: 'Close both flaps',
        when: { and: [{ '===': [{ var: 'trip.pets' }, true] }] },
      }),
    ])
  })

  it('leaves a condition alone that was written by hand', async () => {
    const when = { '>': [{ '-': [{ var: 'weather.highC' }, { var: 'weather.lowC' }] }, 15] }
    const { view, documents } = show(RuleEditor, { trip: withRule(when) })
    await button(view, /Change rule/)?.trigger('click')
    expect(view.text()).toContain('written by hand')
    await view.findAll('form').at(-1)?.trigger('submit')
    expect(documents.trip?.checklist.rules[0]?.when).toEqual(when)
  })

  it('asks only about facts that the checklist knows', () => {
    const known = new Set(BUILT_IN_RULES.flatMap(({ reads }) => reads))
    expect(FACT_NAMES.length).toBeGreaterThan(10)
    expect(FACT_NAMES.filter((path) => !known.has(path))).toEqual([])
  })

  it('switches a built-in rule off for good from its step, and on again', async () => {
    const { view, documents } = show(ChecklistView, {
      trip,
      plan: cardsPlan(trip),
      props: { plan: cardsPlan(trip), nightIndex: 0, atUtc: 0, full: true, nowUtc: () => 1_800_000_000 },
    })
    await view
      .findAll('.step-skip')
      .find((each) => each.attributes('disabled') === undefined)
      ?.trigger('click')
    const dialog = document.querySelector('.skip-form')
    dialog?.querySelector<HTMLInputElement>('input[type=checkbox]')?.click()
    await view.vm.$nextTick()
    dialog?.dispatchEvent(new Event('submit', { cancelable: true }))
    await view.vm.$nextTick()
    const [off] = documents.trip?.checklist.switchedOffRuleIds ?? []
    expect(off).toBeDefined()
    expect(documents.trip?.checklist.ticks).toEqual(trip.checklist.ticks)
    await button(view, /Switch on again/)?.trigger('click')
    expect(documents.trip?.checklist.switchedOffRuleIds).toEqual([])
  })
})
