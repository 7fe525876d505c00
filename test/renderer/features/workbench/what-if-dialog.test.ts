/** The what-if dialog in its states: nothing asked, working, a second plan beside the first, nothing to act on, stopped, failed. */
import { flushPromises } from '@vue/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import WhatIfDialog from '../../../../renderer/features/workbench/WhatIfDialog.vue'
import type { WhatIfAnswer, WhatIfQuestion } from '../../../../renderer/stores/plan.ts'
import type { WhatIfOutcome } from '../../../../renderer/workers/index.ts'
import { cardsPlan } from '../../../support/cards-plan.ts'
import { editableTrip, show } from '../../window.ts'

const trip = editableTrip()
const plan = cardsPlan(trip)
const verdicts = { verdict: plan.verdict, nightVerdicts: plan.nightVerdicts }
const nightId = plan.nights[0]?.nightId ?? ''

const colder: WhatIfAnswer = {
  kind: 'colder',
  params: { byK: 5 },
  trip: {
    ...trip,
    nights: trip.nights.map((night) => ({ ...night, weather: { ...night.weather, coldMarginK: 7 } })),
  },
  differences: [
    { code: 'depart', nightId, params: { before01: 0.6, after01: 0.5 } },
    { code: 'shortfall-added', nightId, params: {}, problem: { code: 'bed-too-narrow', path: [], params: {} } },
  ],
  before: verdicts,
  after: { ...verdicts, nightVerdicts: verdicts.nightVerdicts.map((each) => ({ ...each, coldestBedC: 1 })) },
}

async function open(answer: (question: WhatIfQuestion) => Promise<WhatIfOutcome>, language: 'en' | 'de' = 'en') {
  const made = show(WhatIfDialog, {
    trip,
    plan,
    language,
    planner: { whatIf: answer },
    props: { open: true, nightIndex: 0, sayNight: () => 'Friday' },
  })
  await flushPromises()
  return made
}
const dialog = (): HTMLElement => {
  const found = document.querySelector<HTMLElement>('[role=dialog]')
  if (found === null) throw new Error('no dialog is open')
  return found
}
const said = (): string => (dialog().textContent ?? '').replaceAll(/[\u00a0\u202f]/g, ' ')
const press = async (name: string): Promise<void> => {
  const button = [...dialog().querySelectorAll('button')].find((each) => each.textContent?.trim() === name)
  if (button === undefined) throw new Error(`no button says ${name}`)
  button.click()
  await flushPromises()
}

let shown: ReturnType<typeof show> | null = null
afterEach(() => shown?.view.unmount())

describe('the what-if dialog', () => {
  it('asks nothing until it is asked to compare, and names every change', async () => {
    let asked = 0
    shown = await open(async () => {
      asked += 1
      return { kind: 'stopped' }
    })
    expect(said()).toContain('Choose what changes')
    expect(dialog().querySelectorAll('input[type=radio]')).toHaveLength(5)
    expect(asked).toBe(0)
  })

  it('says how far the second plan is, and gives it up when told to', async () => {
    let signal: AbortSignal | null = null
    shown = await open(async (question) => {
      signal = question.signal
      // What is asked goes to a worker: it must be plain.
      structuredClone(question.amounts)
      question.onProgress(0.4, 'night')
      return await new Promise(() => undefined)
    })
    await press('Compare')
    expect(said()).toContain('Planning it a second time: Reckoning the night')
    expect(dialog().querySelector('progress')?.getAttribute('value')).toBe('0.4')
    await press('Stop')
    expect(signal).toMatchObject({ aborted: true })
    expect(said()).toContain('Nothing was compared')
  })

  it('sets both plans side by side and says each difference in a sentence', async () => {
    shown = await open(async () => ({ kind: 'compared', told: colder }))
    await press('Compare')
    const rows = [...dialog().querySelectorAll('tbody tr')].map((row) => row.textContent)
    expect(rows.some((row) => row?.includes('Coldest at the bed'))).toBe(true)
    expect(said()).toContain('50 % at departure instead of 60 %')
    expect(said()).toContain('Falls short: ')
    expect(said()).toContain('Friday')
  })

  it('keeps the change as one edit that undo takes back', async () => {
    shown = await open(async () => ({ kind: 'compared', told: colder }))
    await press('Compare')
    await press('Plan with this change')
    expect(shown.edits.at(-1)?.edit).toMatchObject({ kind: 'set-value', path: ['nights'] })
    expect(shown.documents.trip?.nights[0]?.weather.coldMarginK).toBe(7)
    expect(shown.told.at(-1)).toMatch(/^Kept: 5/)
    shown.documents.undo()
    expect(shown.documents.trip).toEqual(trip)
  })

  it('does not offer to plan with a failure', async () => {
    shown = await open(async () => ({
      kind: 'compared',
      told: { ...colder, kind: 'fault-at-three', params: { clock: '03:00' } },
    }))
    await press('Compare')
    expect(said()).toContain('A failure is not planned for')
    expect([...dialog().querySelectorAll('button')].some(({ textContent }) => textContent?.includes('Plan with'))).toBe(
      false,
    )
  })

  it('refuses an amount out of its range and says the range', async () => {
    shown = await open(async () => ({ kind: 'stopped' }))
    const field = dialog().querySelector<HTMLInputElement>('.fields input')
    if (field === null) throw new Error('the amount has a field')
    field.value = '90'
    field.dispatchEvent(new Event('input', { bubbles: true }))
    field.dispatchEvent(new Event('change', { bubbles: true }))
    await flushPromises()
    expect(dialog().querySelector('[role=alert]')?.textContent).toMatch(/Between/)
  })

  it.each([
    [async (): Promise<WhatIfOutcome> => ({ kind: 'compared', told: null }), 'Hier gibt es nichts'],
    [async (): Promise<WhatIfOutcome> => ({ kind: 'stopped' }), 'Angehalten'],
    [
      async (): Promise<WhatIfOutcome> => ({ kind: 'failed', errorName: 'E', message: 'x1' }),
      'Die Reise ist unversehrt',
    ],
  ])('says in German what came of it where nothing was compared', async (answer, words) => {
    shown = await open(answer, 'de')
    await press('Vergleichen')
    expect(said()).toContain(words)
  })
})
