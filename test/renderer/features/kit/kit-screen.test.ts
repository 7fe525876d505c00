/** The kit screen in its states: a table, a filter that finds nothing, a value that cannot be read, many at once, an empty kit. */
import { describe, expect, it } from 'vitest'
import KitScreen from '../../../../renderer/features/kit/KitScreen.vue'
import { editableTrip, show, words } from '../../window.ts'

const trip = editableTrip()

describe('the kit screen', () => {
  it('has a line for each piece and the mass of all', () => {
    const { view } = show(KitScreen, { trip })
    expect(view.findAll('tbody tr')).toHaveLength(trip.kit.pieces.length)
    expect(words(view)).toMatch(/kg in all/)
  })

  it('says that a filter finds nothing', async () => {
    const { view } = show(KitScreen, { trip })
    await view.get('#kit-filter').setValue('no such thing')
    expect(view.find('table').exists()).toBe(false)
    expect(view.get('.editor-section p.soft:last-of-type').text()).not.toBe('')
  })

  it('takes a length typed either way', async () => {
    const { view, documents } = show(KitScreen, { trip })
    const length = view.findAll('tbody tr')[0]?.findAll('input[type=text]')[1]
    await length?.setValue('1 ft 4')
    await length?.trigger('change')
    expect(documents.trip?.kit.pieces[0]?.sizeMm[0]).toBe(406)
  })

  it('says why a value cannot be read, and changes nothing', async () => {
    const { view, documents } = show(KitScreen, { trip })
    const mass = view.findAll('tbody tr')[0]?.findAll('input[type=text]')[4]
    await mass?.setValue('four apples')
    await mass?.trigger('change')
    expect(view.get('[role=alert]').text()).not.toBe('')
    expect(documents.trip).toBe(trip)
  })

  it('removes many at once as one entry of the history', async () => {
    const { view, documents, told } = show(KitScreen, { trip })
    const before = documents.trip?.kit.pieces.length ?? 0
    const boxes = view.findAll('tbody .kit-tick input')
    await boxes[0]?.trigger('change')
    await boxes[1]?.trigger('change')
    await view.findAll('.kit-tools button').at(-1)?.trigger('click')
    expect(documents.trip?.kit.pieces).toHaveLength(before - 2)
    expect(told).toHaveLength(1)
    documents.undo()
    expect(documents.trip?.kit.pieces).toHaveLength(before)
  })

  it('changes many at once as one entry of the history', async () => {
    const { view, documents, told } = show(KitScreen, { trip })
    for (const box of view.findAll('tbody .kit-tick input').slice(0, 2)) await box.trigger('change')
    await view.findAll('.kit-tools select')[1]?.setValue('outside')
    const [first, second, ...others] = documents.trip?.kit.pieces ?? []
    expect([first?.atNight, second?.atNight]).toEqual(['outside', 'outside'])
    expect(others).toEqual(trip.kit.pieces.slice(2))
    expect(told).toHaveLength(1)
    documents.undo()
    expect(documents.trip).toEqual(trip)
  })

  it('says what to do with an empty kit', () => {
    const bare = editableTrip({ kit: { ...trip.kit, pieces: [], bins: [] } })
    const { view } = show(KitScreen, { trip: bare })
    expect(view.find('table').exists()).toBe(false)
    expect(view.text()).toMatch(/piece|spreadsheet/i)
  })
})
