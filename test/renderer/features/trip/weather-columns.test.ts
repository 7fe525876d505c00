/** The chooser of weather columns in its states: guessed right, named by hand, refused, no table at all; and a file dropped on the window. */
import { flushPromises } from '@vue/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import WeatherColumns from '../../../../renderer/features/trip/WeatherColumns.vue'
import WeatherImport from '../../../../renderer/features/trip/WeatherImport.vue'
import { nightClock } from '../../../../shared/plan/index.ts'
import { editableTrip, show, words } from '../../window.ts'

const trip = editableTrip()
const night = trip.nights[0]
if (night === undefined) throw new Error('the trip has a night')
const { arriveUtc, departUtc } = nightClock(night)
const hours = Array.from({ length: Math.ceil((departUtc - arriveUtc) / 3600) + 3 }, (_, hour) =>
  new Date((Math.floor(arriveUtc / 3600) - 1 + hour) * 3_600_000).toISOString().slice(0, 16),
)
const table = (header: string): string =>
  [header, ...hours.map((stamp, hour) => `${stamp}Z,${10 - hour / 2},36`)].join('\n')

let shown: ReturnType<typeof show> | null = null
afterEach(() => shown?.view.unmount())

const open = (file: string, language: 'en' | 'de' = 'en') => {
  shown = show(WeatherColumns, { trip, language, props: { file, night } })
  return shown.view
}
const choose = async (view: ReturnType<typeof open>, label: string, value: string): Promise<void> => {
  const id = view
    .findAll('label')
    .find((each) => each.text() === label)
    ?.attributes('for')
  await view.get(`[id="${id}"]`).setValue(value)
}

describe('the chooser of weather columns', () => {
  it('shows the first rows, what it takes each column for, and how many hours that gives', () => {
    const view = open(table('time,temperature,wind km/h'))
    expect(view.findAll('tbody tr')).toHaveLength(5)
    expect(view.findAll('thead th').map((cell) => cell.text())).toEqual([
      'Time time',
      'Temperature temperature',
      'Wind wind km/h',
    ])
    expect(words(view.get('[role=status]'))).toMatch(/\d+ hours fall into this night/)
  })

  it('hands over what was named by hand, in the units named', async () => {
    const view = open(table('stamp,out,air'))
    await choose(view, 'Temperature', 'out')
    await choose(view, 'Wind', 'air')
    await choose(view, 'Unit of Wind', 'km/h')
    await view.get('form').trigger('submit')
    const [taken] = view.emitted('take') ?? []
    expect(taken?.[0]).toHaveProperty('0.tempC', 9.5)
    expect(taken?.[0]).toHaveProperty('0.windMPerS', 10)
  })

  it('says why a choice cannot be read, and takes nothing', async () => {
    const view = open(table('time,temperature,wind'))
    await choose(view, 'Time', 'wind')
    expect(view.get('[role=status]').classes()).toContain('field-error')
    expect(view.get('button[type=submit]').attributes('disabled')).toBeDefined()
  })

  it('says in German that there is nothing to choose from', () => {
    expect(open('a picture, not a table', 'de').findAll('select').length).toBeGreaterThan(0)
    shown?.view.unmount()
    expect(open('nothing', 'de').get('[role=alert]').text()).toContain('keine Tabelle')
  })
})

describe('the import of weather', () => {
  it('takes the file that was dropped on the window, and fills the night by one edit', async () => {
    shown = show(WeatherImport, { trip, props: { night, index: 0 } })
    const file = new File([table('time,temperature,wind')], 'hours.csv')
    shown.state.set({ weatherFile: file })
    await flushPromises()
    await flushPromises()
    const dialog = document.querySelector('[role=dialog]')
    expect(dialog?.textContent).toContain('hours.csv')
    dialog?.querySelector<HTMLButtonElement>('button[type=submit]')?.click()
    await flushPromises()
    expect(shown.edits.at(-1)?.edit).toMatchObject({ kind: 'set-value', path: ['nights', 0, 'weather', 'hours'] })
    expect(shown.state.state.weatherFile).toBeNull()
  })
})
