/** The first steps lead from the vehicle to the plan, and can be left at any time. */
import { afterEach, describe, expect, it } from 'vitest'
import FirstSteps from '../../../renderer/app/FirstSteps.vue'
import { show, words } from '../window.ts'

let shown: ReturnType<typeof show> | null = null
afterEach(() => shown?.view.unmount())

describe('the first steps', () => {
  it('go from screen to screen, each with what to do there, and end at the plan', async () => {
    shown = show(FirstSteps)
    const { view, state } = shown
    state.set({ screen: 'vehicle', firstSteps: true })
    const seen: string[] = []
    for (let step = 0; step < 4; step += 1) {
      await view.vm.$nextTick()
      seen.push(state.state.screen)
      expect(words(view)).toContain(`${step + 1} of 5`)
      expect(view.get('p').text().length).toBeGreaterThan(20)
      await view.get('button').trigger('click')
    }
    expect(seen).toEqual(['vehicle', 'kit', 'travellers', 'nights'])
    expect(state.state.screen).toBe('workbench')
    await view.get('button').trigger('click')
    expect(state.state.firstSteps).toBe(false)
  })

  it('can be left on the way, in German too', async () => {
    shown = show(FirstSteps, { language: 'de' })
    shown.state.set({ screen: 'kit', firstSteps: true })
    await shown.view.vm.$nextTick()
    expect(words(shown.view)).toContain('Weiter: Reise')
    await shown.view.get('[aria-label="Erste Schritte verlassen"]').trigger('click')
    expect(shown.state.state.firstSteps).toBe(false)
  })
})
