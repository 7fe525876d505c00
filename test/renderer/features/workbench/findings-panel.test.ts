/** The findings panel in its states: nothing to tell, a shortfall with remedies, one still being searched, one that nothing mends. */
import { flushPromises } from '@vue/test-utils'
import { describe, expect, it } from 'vitest'
import FindingsPanel from '../../../../renderer/features/workbench/FindingsPanel.vue'
import type { Finding, Remedy } from '../../../../shared/plan/index.ts'
import { cardsTrip } from '../../../support/cards-plan.ts'
import { show } from '../../window.ts'

const finding: Finding = {
  id: 'cold',
  severity: 'shortfall',
  area: 'night',
  nightId: null,
  problem: { code: 'not-a-known-code', path: [], params: {} },
}
const remedy: Remedy = {
  id: 'covers',
  mends: ['cold'],
  change: { kind: 'covers', nightId: 'n1' },
  cost: { degreesK: 2, charge01: -0.03, litres: 0, moves: 0, minutes: 5, money: 0 },
  score: 1,
  preview: [{ code: 'moves', nightId: 'n1', params: { before: 3, after: 4 } }],
}

const open = async (given: {
  readonly findings: readonly Finding[]
  readonly remedies?: readonly Remedy[]
  readonly searching?: boolean
}) => {
  const { view } = show(FindingsPanel, {
    props: {
      open: true,
      remedies: [],
      searching: false,
      trip: cardsTrip(),
      sayNight: (id: string) => id,
      ...given,
    },
  })
  await flushPromises()
  const said = (): string => (document.querySelector('[role=dialog]')?.textContent ?? '').replaceAll('\u00a0', ' ')
  return { view, said, close: () => view.unmount() }
}

describe('the findings panel', () => {
  it('says so where nothing falls short', async () => {
    const { said, close } = await open({ findings: [] })
    expect(said()).toContain('What the plan rests on')
    expect(said()).not.toContain('Show')
    close()
  })

  it('puts each remedy with its cost under what it mends, one press away', async () => {
    const { view, said, close } = await open({ findings: [finding], remedies: [remedy] })
    expect(said()).toContain('Hang the window covers')
    expect(said()).toMatch(/2 °C/)
    expect(said()).toMatch(/What changes: one thing.*4 moves at dusk instead of 3/)
    document.querySelector<HTMLButtonElement>('.remedies .button--strong')?.click()
    expect(view.emitted('apply')).toEqual([[remedy]])
    close()
  })

  it('tells a search that runs from one that found nothing', async () => {
    const searching = await open({ findings: [finding], searching: true })
    const first = searching.said()
    searching.close()
    const done = await open({ findings: [finding] })
    expect(done.said()).not.toBe(first)
    done.close()
  })
})
