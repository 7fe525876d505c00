/** The night view in its states: a night with its curves, one not searched yet, one whose failure is told, none at all. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import NightView from '../../../../renderer/features/night/NightView.vue'
import { eveningOf } from '../../../../renderer/stores/evening.ts'
import type { Trip } from '../../../../shared/document/index.ts'
import { parseTrip } from '../../../../shared/document/index.ts'
import { derivePlan } from '../../../../shared/plan/index.ts'
import type { Plan } from '../../../../shared/plan/index.ts'
import { cardsPlan, cardsTrip } from '../../../support/cards-plan.ts'
import { editableTrip, show, words } from '../../window.ts'

const trip = cardsTrip()
const plan = cardsPlan(trip)
const night = plan.nights[0]
if (night === undefined) throw new Error('the plan has a night')
const evening = eveningOf(night)
const open = (made: Plan = plan, full = true, nightIndex = 0) =>
  show(NightView, { trip, plan: made, props: { plan: made, nightIndex, evening, atUtc: night.clock.bedtimeUtc, full } })
const withNight = (change: Partial<Plan['nights'][number]>): Plan => ({ ...plan, nights: [{ ...night, ...change }] })

describe('the night view', () => {
  it('draws its curves with their names and says them for who cannot see them', () => {
    const { view } = open()
    const captions = view.findAll('.chart figcaption').map((caption) => caption.text())
    expect(captions[0]).toContain('Temperature')
    expect(captions.every((caption) => /\d/.test(caption))).toBe(true)
  })

  it('gives each number its formula and source', async () => {
    const { view } = open()
    await view.get('button.how').trigger('click')
    expect(document.querySelector('.how-sheet')?.textContent).toMatch(/Source:/)
  })

  it('turns a dial into an edit of this night', async () => {
    const { view, edits } = open(plan, false)
    await view.get('.dials-switches button').trigger('click')
    expect(edits[0]?.edit).toMatchObject({ kind: 'set-night', nightId: night.nightId })
  })

  it('plans a night colder than its forecast by a dial', async () => {
    const { view, edits, documents } = show(NightView, {
      trip: editableTrip(),
      plan,
      props: { plan, nightIndex: 0, evening, atUtc: night.clock.bedtimeUtc, full: true },
    })
    const before = documents.trip?.nights[0]?.weather.coldMarginK ?? 0
    const dial = view.get('[role=slider][aria-label="Colder than forecast"]')
    await dial.trigger('keydown', { key: 'ArrowRight' })
    expect(edits.map(({ edit }) => edit)).toEqual([
      { kind: 'set-value', path: ['nights', 0, 'weather', 'coldMarginK'], value: before + 1 },
    ])
    expect(documents.trip?.nights[0]?.weather.coldMarginK).toBe(before + 1)
    documents.undo()
    expect(documents.trip?.nights[0]?.weather.coldMarginK).toBe(before)
  })

  it('says that the search has not run, while it has not', () => {
    const { view } = open(withNight({ search: null, faults: [] }))
    expect(words(view.get('.faults'))).toContain('The search has not run yet.')
    expect(view.findAll('.front-point')).toHaveLength(0)
  })

  it('tells what follows a failure, and lets its hour be moved by keys', async () => {
    const fault = { kind: 'supply-lost', atUtc: night.clock.bedtimeUtc } as const
    const told = {
      fault,
      coldestBedC: 3,
      depart01: 0.5,
      legMarginWh: null,
      actByUtc: null,
      hoursOfHeatLeft: 4,
      outcome: night.outcome,
    }
    const { view } = open(withNight({ faults: [told] }))
    expect(words(view.get('.faults [role=status]'))).toContain('3 °C')
    const mark = view.get('.chart-handle')
    const before = Number(mark.attributes('aria-valuenow'))
    await mark.trigger('keydown', { key: 'ArrowRight' })
    expect(Number(mark.attributes('aria-valuenow'))).toBe(before + 600)
  })

  it('says that there is no night where there is none', () => {
    const { view } = open({ ...plan, nights: [] })
    expect(view.find('.chart').exists()).toBe(false)
    expect(view.get('.panel-body').text()).not.toBe('')
  })

  it('says why it recommends a plan, each reason open to its reckoning, and takes it over with its bedding in one edit', async () => {
    const { real, searched } = searchedSample()
    const { view, edits } = show(NightView, {
      trip: real,
      plan: searched,
      props: {
        plan: searched,
        nightIndex: 0,
        evening: eveningOf(only(searched)),
        atUtc: only(searched).clock.bedtimeUtc,
        full: true,
      },
    })
    const advice = view.get('.advice')
    expect(words(advice)).toMatch(/in hand at the bed/)
    expect(words(advice)).toMatch(/If it is 5 K colder/)
    expect(words(advice)).toMatch(/If the leg takes 10 % more/)
    expect(advice.findAll('button.how').length).toBe((only(searched).search?.reasons?.length ?? 0) + 2)
    expect(view.findAll('.hours-table tbody tr').length).toBe(only(searched).faults[0]?.hours?.length)
    expect(words(view.get('.numbers'))).toMatch(/sleeps warm|is warm enough|is cool|is cold/)
    const other = only(searched).search?.front.findIndex(
      ({ decisions }) => decisions.beddingSetId !== only(searched).beddingSets[0]?.id,
    )
    await view.findAll('.front-point')[other ?? 0]?.trigger('click')
    expect(edits).toHaveLength(1)
    const wanted = only(searched).beddingSets.find(
      ({ id }) => id === only(searched).search?.front[other ?? 0]?.decisions.beddingSetId,
    )
    expect(edits[0]?.edit).toMatchObject({ kind: 'set-night', decision: { beddingPieceIds: wanted?.pieceIds } })
  })

  it('tells what to do about a failure and until when', () => {
    const { real, searched } = searchedSample()
    const first = only(searched)
    const heater = first.faults.find(({ fault }) => fault.kind === 'heater-fails')
    const shown = {
      ...searched,
      nights: [
        {
          ...first,
          faults: heater === undefined ? [] : [{ ...heater, fault: { ...heater.fault, kind: 'supply-lost' as const } }],
        },
      ],
    }
    const { view } = show(NightView, {
      trip: real,
      plan: shown,
      props: { plan: shown, nightIndex: 0, evening: eveningOf(first), atUtc: first.clock.bedtimeUtc, full: true },
    })
    expect(words(view.get('.faults'))).toMatch(/Switch the bed heaters on\. ?By \d\d:\d\d/)
  })
})

function only(made: Plan): Plan['nights'][number] {
  const [first] = made.nights
  if (first === undefined) throw new Error('the plan has a night')
  return first
}

/** The metric sample, searched: tests run in the project's folder. */
function searchedSample(): { readonly real: Trip; readonly searched: Plan } {
  const parsed = parseTrip(readFileSync('assets/samples/bats-by-the-quarry.trip.json'))
  if (!parsed.ok) throw new Error('the sample parses')
  return { real: parsed.value, searched: derivePlan(parsed.value, { seed: 1, iterations: 20, remedies: true }) }
}
