/** The checklist view in its states: steps by phase and by clock, ticked, with a clash, with nothing to do. */
import { describe, expect, it } from 'vitest'
import ChecklistView from '../../../../renderer/features/checklist/ChecklistView.vue'
import type { Plan } from '../../../../shared/plan/index.ts'
import { cardsPlan, cardsTrip } from '../../../support/cards-plan.ts'
import { show } from '../../window.ts'

const trip = cardsTrip()
const plan = cardsPlan(trip)
const bedtime = plan.nights[0]?.clock.bedtimeUtc
const open = (made: Plan = plan, full = false) =>
  show(ChecklistView, {
    trip,
    plan: made,
    props: { plan: made, nightIndex: 0, atUtc: bedtime, full, nowUtc: () => 1_800_000_000 },
  })

describe('the checklist view', () => {
  it('groups the steps of this night by phase, and by the clock when asked', async () => {
    const { view } = open()
    expect(view.findAll('.checklist-phase').map((head) => head.text())).toContain('Before leaving')
    await view.findAll('.panel-head .segments button').at(1)?.trigger('click')
    expect(view.findAll('.checklist-phase').some((head) => /\d/.test(head.text()))).toBe(true)
  })

  it('ticks an open step and takes the tick of a done one back', async () => {
    const { view, edits } = open()
    const boxes = view.findAll<HTMLInputElement>('.step-tick input')
    await boxes[0]?.trigger('change')
    await boxes[1]?.trigger('change')
    expect(edits.map(({ edit }) => edit.kind)).toEqual(['tick', 'untick'])
  })

  it('walks the list by arrow keys', async () => {
    const { view } = open()
    const boxes = view.findAll<HTMLInputElement>('.step-tick input')
    boxes[0]?.element.focus()
    await boxes[0]?.trigger('keydown', { key: 'ArrowDown' })
    await view.vm.$nextTick()
    expect(document.activeElement).toBe(boxes[1]?.element)
  })

  it('marks the step of the shared moment', () => {
    const { view } = open()
    expect(view.findAll('.step--now')).toHaveLength(1)
  })

  it('names the steps that clash', () => {
    const [first, second] = plan.checklist.steps
    const stepKeys = [first?.key ?? '', second?.key ?? '']
    const clash: Plan = {
      ...plan,
      checklist: { ...plan.checklist, conflicts: [{ kind: 'circle', stepKeys }] },
    }
    expect(open(clash).view.get('.checklist-conflict').text()).toContain('Put the blue adapter')
  })

  it('says what to do where there are no steps', () => {
    const empty: Plan = { ...plan, checklist: { ...plan.checklist, steps: [] } }
    expect(open(empty).view.get('.checklist-empty').text()).not.toBe('')
  })
})
