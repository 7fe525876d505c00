/** The band: one ruler moved by keys and by its marks, under a sky that darkens and clears. */
import { afterEach, describe, expect, it } from 'vitest'
import TimeBand from '../../../../renderer/features/workbench/TimeBand.vue'
import { skyStretches } from '../../../../renderer/features/workbench/band-layout.ts'
import { eveningOf } from '../../../../renderer/stores/evening.ts'
import { cardsPlan } from '../../../support/cards-plan.ts'
import { show } from '../../window.ts'

const night = cardsPlan().nights[0]
if (night === undefined) throw new Error('the plan has a night')
const evening = eveningOf(night)
const bedtime = night.clock.bedtimeUtc
const NO_SUN = { sunset: null, dusk: null, dawn: null, sunrise: null }

let shown: ReturnType<typeof show> | null = null
afterEach(() => shown?.view.unmount())

function open() {
  shown = show(TimeBand, { props: { evening, atUtc: bedtime, coldestC: 3, valueText: 'bed', sun: NO_SUN } })
  return shown.view
}

describe('the band', () => {
  it('moves by five minutes, an hour, to the next mark and to both ends', async () => {
    const view = open()
    const ruler = view.get('[role=slider]')
    await ruler.trigger('keydown', { key: 'ArrowRight' })
    await ruler.trigger('keydown', { key: 'ArrowLeft', shiftKey: true })
    await ruler.trigger('keydown', { key: 'PageDown' })
    await ruler.trigger('keydown', { key: 'End' })
    const next = evening.marks.find(({ atUtc }) => atUtc > bedtime + 1)?.atUtc
    expect(view.emitted('seek')).toEqual([[bedtime + 300], [bedtime - 3600], [next], [evening.toUtc]])
  })

  it('says the moment for who cannot see it, and has a stroke for every mark', () => {
    const view = open()
    expect(view.get('[role=slider]').attributes('aria-valuetext')).toBe('bed')
    expect(view.findAll('.band-tick')).toHaveLength(evening.marks.length)
  })
})

describe('the sky over the band', () => {
  it('goes from day to night and back without a gap', () => {
    const stretches = skyStretches({ fromUtc: 0, toUtc: 100 }, { sunset: 20, dusk: 30, dawn: 70, sunrise: 80 })
    expect(stretches.map(({ id, from, to }) => [id, from, to])).toEqual([
      ['day', 0, 20],
      ['dusk', 20, 30],
      ['night', 30, 70],
      ['dawn', 70, 80],
      ['morning', 80, 100],
    ])
  })

  it('is one night where the sun does not show itself', () => {
    expect(skyStretches({ fromUtc: 0, toUtc: 100 }, NO_SUN).map(({ id }) => id)).toEqual(['night'])
  })
})
