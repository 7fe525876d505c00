/** The verdict line in its states: it holds, it falls short, it is being worked out, it was stopped. */
import { mount } from '@vue/test-utils'
import { computed } from 'vue'
import { describe, expect, it } from 'vitest'
import VerdictLine from '../../../../renderer/features/workbench/VerdictLine.vue'
import type { PlanJob } from '../../../../renderer/stores/plan.ts'
import { TEXT } from '../../../../renderer/ui/text.ts'
import type { Verdict } from '../../../../shared/plan/index.ts'
import { createText } from '../../../../shared/text/index.ts'
import { localToUtc } from '../../../../shared/units/index.ts'
import type { Clock, LocalDate } from '../../../../shared/units/index.ts'

const coldest = localToUtc({ date: '2027-02-13' as LocalDate, clock: '05:40' as Clock, zone: 'Europe/Berlin' })
if (!coldest.ok) throw new Error('the test has a time that is skipped')

const HOLDS: Verdict = {
  holds: true,
  shortfalls: 0,
  depart01: 0.64,
  legMarginWh: 6900,
  coldestBedC: 7,
  coldestBedUtc: coldest.value,
  movesAtDusk: 4,
}

type Given = { readonly verdict?: Verdict; readonly job?: PlanJob | null; readonly stopped?: boolean }

const line = ({ verdict = HOLDS, job = null, stopped = false }: Given = {}) =>
  mount(VerdictLine, {
    props: { verdict, zone: 'Europe/Berlin', job, stopped, severalNights: false, otherNightsFail: false },
    global: { provide: { [TEXT]: computed(() => createText('en', 'metric')) } },
  })

describe('the verdict line', () => {
  it('says that the plan holds, with charge, margin, coldest hour and moves, each with its unit', () => {
    const words = line().text().replaceAll('\u00a0', ' ')
    for (const part of ['Holds', '64 %', '6.9 kWh', '7 °C', '05:40', '4 moves']) expect(words).toContain(part)
  })

  it('says that it does not hold and how many reasons there are, and never the word safe', () => {
    const words = line({ verdict: { ...HOLDS, holds: false, shortfalls: 3, legMarginWh: -2000 } }).text()
    expect(words).toContain('Does not hold')
    expect(words).toContain('3')
    expect(words.toLowerCase()).not.toContain('safe')
  })

  it('leaves charge and leg out where the vehicle has no driving battery', () => {
    const words = line({ verdict: { ...HOLDS, depart01: null, legMarginWh: null } }).text()
    expect(words).not.toContain('departure')
    expect(words).not.toContain('kWh')
  })

  it('leads from each part to where it comes from', async () => {
    const shown = line()
    for (const button of shown.findAll('button.verdict-part')) await button.trigger('click')
    expect(shown.emitted('go')).toEqual([['findings'], ['charge'], ['leg'], ['coldest'], ['dusk']])
  })

  it('shows how far a search is, and takes a cancel', async () => {
    const shown = line({ job: { effort: 'thorough', done01: 0.4, note: 'packing' } })
    expect(shown.get('progress').attributes('value')).toBe('0.4')
    await shown.get('button.button').trigger('click')
    expect(shown.emitted('cancel')).toHaveLength(1)
  })

  it('says so when the search was stopped', () => {
    expect(line({ stopped: true }).get('[role=status]').text()).not.toBe('')
    expect(line().get('[role=status]').text()).toBe('')
  })
})
