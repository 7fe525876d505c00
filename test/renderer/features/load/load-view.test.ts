/** The load view in its states: standing, without a drawing in depth, with something left out, with nothing at all. */
import { flushPromises } from '@vue/test-utils'
import { describe, expect, it } from 'vitest'
import LoadView from '../../../../renderer/features/load/LoadView.vue'
import type { Plan } from '../../../../shared/plan/index.ts'
import { cardsPlan, cardsTrip } from '../../../support/cards-plan.ts'
import { show, words } from '../../window.ts'

const trip = cardsTrip()
const plan = cardsPlan(trip)
const bedtime = plan.nights[0]?.clock.bedtimeUtc
const open = (made: Plan = plan, full = true) =>
  show(LoadView, { trip, plan: made, props: { plan: made, nightIndex: 0, atUtc: bedtime, full } })

describe('the load view', () => {
  it('says which layout stands, and against what limit the load weighs', () => {
    const { view } = open()
    expect(words(view.get('.panel-moment'))).toMatch(/Bed layout|Move/)
    expect(words(view.get('.load-limits'))).toMatch(/kg of .*kg/)
  })

  it('shows flat drawings and says so where no drawing in depth can be made', async () => {
    const { view } = open(plan, false)
    view.findComponent({ name: 'SceneCanvas' }).vm.$emit('failed')
    await flushPromises()
    expect(view.findAll('.flat')).toHaveLength(2)
    expect(view.find('.load-note').exists()).toBe(true)
  })

  it('lists what found no place first', () => {
    const piece = trip.kit.pieces[0]
    const left = { unitId: piece?.id ?? '', layout: 'drive', nightId: null, why: [], cure: null } as const
    const short: Plan = { ...plan, packing: { ...plan.packing, driveUnplaced: [left] } }
    const { view } = open(short)
    expect(view.get('.unit-list section').text()).toContain(piece?.name)
    expect(view.get('.unit-list h3').classes()).toContain('field-error')
  })

  it('chooses a unit from the list and says what is in its way', async () => {
    const { view, state } = open()
    await view.get('button.unit-row').trigger('click')
    expect(state.state.chosenUnitId).not.toBeNull()
    expect(view.find('.chosen-unit').exists()).toBe(true)
  })

  it('loads the vehicle unit by unit, each with the place it goes to', async () => {
    const driving = (plan.nights[0]?.clock.arriveUtc ?? 0) - 3600
    const { view } = show(LoadView, { trip, plan, props: { plan, nightIndex: 0, atUtc: driving, full: true } })
    const all = view.findAll('button.unit-row').length
    const order = view.findAll('.load-foot > button.button').find((button) => button.text() === 'Loading order')
    await order?.trigger('click')
    expect(words(view.get('.panel-moment'))).toMatch(/^Load 1 of \d+: .+ into .+/)
    expect(view.findAll('button.unit-row')).toHaveLength(1)
    await view.findAll('.load-steps button')[1]?.trigger('click')
    expect(view.findAll('button.unit-row')).toHaveLength(2)
    await order?.trigger('click')
    expect(view.findAll('button.unit-row')).toHaveLength(all)
  })

  it('stands empty without complaint where nothing is packed', () => {
    const bare: Plan = {
      ...plan,
      packing: {
        ...plan.packing,
        units: [],
        driveReach: [],
        drive: { ...plan.packing.drive, placements: [], away: [] },
        nights: [],
      },
    }
    const { view } = open(bare)
    expect(view.findAll('button.unit-row')).toHaveLength(0)
    expect(view.find('.load-foot').exists()).toBe(true)
  })
})
