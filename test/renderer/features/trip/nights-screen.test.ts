/** The nights screen in its states: a night with a post, one without, a time that is none. */
import { describe, expect, it } from 'vitest'
import NightsScreen from '../../../../renderer/features/trip/NightsScreen.vue'
import { CHOICES } from '../../../../shared/document/index.ts'
import { editableTrip, show } from '../../window.ts'

const trip = editableTrip()
const without = editableTrip({
  nights: trip.nights.map(({ hookup: _hookup, ...night }) => night),
})

describe('the nights screen', () => {
  it('offers every connector that a trip may name', () => {
    const withPost = trip.nights.some(({ hookup }) => hookup !== undefined)
    const { view, edits } = show(NightsScreen, { trip })
    expect(withPost).toBe(true)
    const values = view.findAll('option').map((option) => option.attributes('value'))
    expect(CHOICES.connectors.every((connector) => values.includes(connector))).toBe(true)
    expect(edits).toHaveLength(0)
  })

  it('adds a post where there is none', async () => {
    const { view, documents } = show(NightsScreen, { trip: without })
    const add = view.findAll('.editor-section button').find((button) => button.text().includes('hookup'))
    await add?.trigger('click')
    expect(documents.trip?.nights[0]?.hookup?.readings).toEqual([])
  })

  it('refuses a clock that is none, in words at the field', async () => {
    const { view, documents } = show(NightsScreen, { trip })
    const arrival = view.findAll('.typed').find((field) => field.get('label').text().toLowerCase() === 'arrival')
    await arrival?.get('input').setValue('late')
    await arrival?.get('input').trigger('change')
    expect(arrival?.find('[role=alert]').exists()).toBe(true)
    expect(documents.trip).toBe(trip)
  })

  it('makes the same night again', async () => {
    const { view, documents } = show(NightsScreen, { trip })
    const again = view.findAll('button').find((button) => button.text().includes('Same night again'))
    await again?.trigger('click')
    expect(documents.trip?.nights).toHaveLength(trip.nights.length + 1)
  })
})
