/** The vehicle screen: bays come and go, and what the trip would refuse is said where it was pressed. */
import { describe, expect, it } from 'vitest'
import VehicleScreen from '../../../../renderer/features/vehicle/VehicleScreen.vue'
import { editableTrip, show } from '../../window.ts'

const trip = editableTrip()
const open = () => {
  const shown = show(VehicleScreen, { trip })
  const button = (words: string) =>
    shown.view.findAll('button').find((each) => [each.text(), each.attributes('aria-label')].includes(words))
  return { ...shown, press: async (words: string) => await button(words)?.trigger('click') }
}

describe('the vehicle screen', () => {
  it('adds a bay, once more the chosen one, and takes it away', async () => {
    const { documents, press, view } = open()
    const before = trip.vehicle.bays.length
    await press('Add bay')
    await press('Same bay again')
    expect(documents.trip?.vehicle.bays).toHaveLength(before + 2)
    const [last, again] = documents.trip?.vehicle.bays.slice(-2) ?? []
    expect(again).toEqual({ ...last, id: again?.id, openings: again?.openings })
    expect(again?.openings.map(({ id: _id, ...hole }) => hole)).toEqual(
      last?.openings.map(({ id: _id, ...hole }) => hole),
    )
    expect(again?.id).not.toBe(last?.id)
    expect(view.get('.unit-row[aria-pressed=true]').text()).toContain(again?.name ?? '-')
    await press('Remove this bay')
    expect(documents.trip?.vehicle.bays).toHaveLength(before + 1)
  })

  it('says why an electric vehicle keeps its battery, and keeps it', async () => {
    const { documents, press, view } = open()
    expect(documents.trip?.vehicle.battery).toBeDefined()
    await press('Remove battery')
    expect(view.get('[role=alert]').text()).toMatch(/is missing, but the vehicle is electric/)
    expect(documents.trip?.vehicle.battery).toEqual(trip.vehicle.battery)
  })

  it('shows the old choice again, and why, where a choice is refused', async () => {
    const bare = editableTrip({ vehicle: { ...trip.vehicle, drive: 'combustion' } })
    const { battery: _battery, charging: _charging, ...vehicle } = bare.vehicle
    const { view, documents } = show(VehicleScreen, { trip: { ...bare, vehicle } })
    const drive = view.findAll<HTMLSelectElement>('select').find(({ element }) => element.value === 'combustion')
    await drive?.setValue('electric')
    await view.vm.$nextTick()
    expect(documents.trip?.vehicle.drive).toBe('combustion')
    expect(drive?.element.value).toBe('combustion')
    expect(view.get('[role=alert]').text()).toMatch(/battery|charging/i)
  })

  it('takes a wheel arch by tape measure', async () => {
    const { documents, press, view } = open()
    const before = trip.vehicle.bays[0]?.obstacles.length ?? 0
    await press('Add obstacle')
    const row = view.findAll('.form-row').find((each) => each.find('input').element === document.activeElement)
    const label = row?.findAll('label').find((each) => each.text() === 'Height')
    const height = view.get(`[id="${label?.attributes('for') ?? ''}"]`)
    await height.setValue('9 in')
    await height.trigger('change')
    expect(documents.trip?.vehicle.bays[0]?.obstacles).toHaveLength(before + 1)
    expect(documents.trip?.vehicle.bays[0]?.obstacles.at(-1)?.sizeMm[2]).toBe(229)
  })
})
