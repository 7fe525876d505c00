/** Where the focus goes when a group of fields comes and goes. */
import { describe, expect, it } from 'vitest'
import { nextTick } from 'vue'
import NightsScreen from '../../../renderer/features/trip/NightsScreen.vue'
import { editableTrip, show } from '../window.ts'

const trip = editableTrip()
const bare = { ...trip, nights: trip.nights.map(({ leg: _leg, target: _target, ...night }) => night) }

async function shown() {
  const { view, documents } = show(NightsScreen, { trip: bare })
  const press = async (said: string): Promise<void> => {
    const named = view.findAll('button').find((each) => `${each.text()}${each.attributes('aria-label') ?? ''}` === said)
    await named?.trigger('click')
    await nextTick()
  }
  return { documents, press }
}

describe('a group of fields that may be absent', () => {
  it('takes the focus to its first field when it comes, never to the button that removes it', async () => {
    const { documents, press } = await shown()
    await press('Add target')
    expect(documents.trip?.nights[0]?.target).toBeDefined()
    const field = document.activeElement
    expect(field).toBeInstanceOf(HTMLInputElement)
    expect(field?.closest('section')?.querySelector('input')).toBe(field)
  })

  it('marks the word in its first field, so that typing replaces it', async () => {
    const { press } = await shown()
    await press('Add target')
    const field = document.activeElement
    if (!(field instanceof HTMLInputElement)) throw new Error('no field has the focus')
    expect(field.value.length).toBeGreaterThan(0)
    expect([field.selectionStart, field.selectionEnd]).toEqual([0, field.value.length])
  })

  it('gives the focus to the button that brings it back when it goes', async () => {
    const { press } = await shown()
    await press('Add target')
    await press('Remove target')
    expect(document.activeElement?.tagName).toBe('BUTTON')
    expect(document.activeElement?.textContent.trim()).toBe('Add target')
  })
})
