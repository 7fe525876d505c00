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

  it('adds a leg with a fast charger on it, and takes the charger away again', async () => {
    const bare = editableTrip({ nights: trip.nights.map(({ leg: _leg, ...night }) => night) })
    const { view, documents } = show(NightsScreen, { trip: bare })
    const press = async (said: string) =>
      await view
        .findAll('button')
        .find((each) => `${each.text()}${each.attributes('aria-label') ?? ''}` === said)
        ?.trigger('click')
    await press('Add next leg')
    await press('Add fast charger')
    expect(documents.trip?.nights[0]?.leg?.fastChargers).toEqual([{ atM: 50_000, powerW: 50_000 }])
    expect(document.activeElement?.closest('.form-row')).not.toBeNull()
    await press('Remove fast charger 1')
    expect(documents.trip?.nights[0]?.leg?.fastChargers).toEqual([])
    expect(document.activeElement?.textContent).toContain('Add fast charger')
    await press('Remove next leg')
    expect(documents.trip?.nights[0]?.leg).toBeUndefined()
    expect(document.activeElement?.textContent).toContain('Add next leg')
  })

  it('asks for a price where electricity is paid by the unit', async () => {
    const { view, documents } = show(NightsScreen, { trip })
    const choice = view
      .findAll('select')
      .find((each) => each.findAll('option').some(({ element }) => element.value === 'per-kwh'))
    await choice?.setValue('per-kwh')
    expect(documents.trip?.nights[0]?.hookup?.tariff).toEqual({ kind: 'per-kwh', price: 0.4 })
    await choice?.setValue('included')
    expect(documents.trip?.nights[0]?.hookup?.tariff).toEqual({ kind: 'included' })
  })

  it('says at the list why a row is refused', async () => {
    const short = editableTrip({
      nights: trip.nights.map((night) => ({ ...night, leg: { distanceM: 30_000, fastChargers: [] } })),
    })
    const { view, documents } = show(NightsScreen, { trip: short })
    const add = view.findAll('button').find((each) => each.text() === 'Add fast charger')
    await add?.trigger('click')
    expect(view.get('.form-rows [role=alert]').text()).toMatch(/the drive ends after/)
    expect(documents.trip).toBe(short)
  })
})
