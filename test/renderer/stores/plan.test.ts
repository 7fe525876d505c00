/** What the planner asks of its two workers, and which answers it keeps. */
import { createPinia } from 'pinia'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { createPlanner, usePlanStore } from '../../../renderer/stores/plan.ts'
import { rehearseAfterFirstPlan } from '../../../renderer/stores/rehearse.ts'
import type { PlanCall, PlanCaller, PlanOutcome } from '../../../renderer/workers/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { cardsPlan, cardsTrip } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const plan = cardsPlan()
/** The trip with another window gap on its first night. */
const turned = (gapMm: number): Trip => {
  const nights = trip.nights.map((night, index) =>
    index === 0 ? { ...night, ventilation: { gapMm, sides: 1 } } : night,
  )
  return { ...trip, nights }
}

/** A worker that answers when told to. */
function fakeCaller() {
  const asked: { readonly what: string; readonly trip: Trip | null }[] = []
  const waiting: ((outcome: PlanOutcome) => void)[] = []
  const turns: (() => void)[] = []
  const asks: Trip[] = []
  const caller: PlanCaller = {
    call: async (call: PlanCall) => {
      asked.push({ what: call.effort, trip: call.trip })
      return await new Promise((resolve) => waiting.push(resolve))
    },
    turn: async (nights) => {
      asked.push({ what: 'turn', trip: { ...trip, nights } })
      return await new Promise((resolve) => {
        turns.push(() => resolve({ kind: 'turned', tookMs: 1, turned: { ...plan, findings: [] } }))
      })
    },
    know: () => asked.push({ what: 'know', trip: null }),
    warm: () => undefined,
    fault: async () => null,
    whatIf: async (asked) => {
      asks.push(asked.trip)
      return { kind: 'compared', told: null }
    },
  }
  const flush = async (): Promise<void> => {
    for (let round = 0; round < 8; round += 1) await Promise.resolve()
  }
  return {
    caller,
    asked,
    asks,
    answer: async (made: Plan = plan) => {
      waiting.shift()?.({ kind: 'plan', plan: made, tookMs: 1 })
      await flush()
    },
    answerTurn: async () => {
      turns.shift()?.()
      await flush()
    },
  }
}

const begin = () => {
  const store = usePlanStore(createPinia())
  const quick = fakeCaller()
  const thorough = fakeCaller()
  const beside = fakeCaller()
  const callers = { quick: quick.caller, thorough: thorough.caller, beside: beside.caller }
  return { store, quick, thorough, beside, planner: createPlanner(store, callers) }
}

beforeEach(() => vi.useFakeTimers())
afterEach(() => vi.useRealTimers())

describe('the planner', () => {
  it('asks for a whole plan first, and for the nights alone while a dial turns', async () => {
    const { store, quick, planner } = begin()
    planner.plan(trip)
    await quick.answer()
    expect(store.plan).toBe(plan)
    planner.plan(turned(10))
    await quick.answerTurn()
    expect(quick.asked.map(({ what }) => what)).toEqual(['quick', 'turn'])
    expect(store.plan?.packing).toBe(plan.packing)
    expect(store.plan?.checklist).toBe(plan.checklist)
    expect(store.whole).toBe(plan)
  })

  it('leaves out what was asked while it answered: the newest turn is the next one', async () => {
    const { store, quick, planner } = begin()
    planner.plan(trip)
    await quick.answer()
    for (const gapMm of [5, 10, 15, 20]) planner.plan(turned(gapMm))
    await quick.answerTurn()
    await quick.answerTurn()
    expect(quick.asked.filter(({ what }) => what === 'turn')).toHaveLength(2)
    expect(quick.asked.at(-1)?.trip?.nights[0]?.ventilation.gapMm).toBe(20)
    expect(store.state.plannedTrip?.nights[0]?.ventilation.gapMm).toBe(20)
  })

  it('searches when the dial rests, tells the quick worker what was found, and stops the search at the next turn', async () => {
    const { store, quick, thorough, planner } = begin()
    planner.plan(trip)
    await quick.answer()
    await vi.advanceTimersByTimeAsync(2000)
    expect(thorough.asked.map(({ what }) => what)).toEqual(['thorough'])
    const better: Plan = { ...plan }
    await thorough.answer(better)
    expect(store.whole).toBe(better)
    expect(quick.asked.at(-1)?.what).toBe('know')
    planner.plan(turned(5))
    await vi.advanceTimersByTimeAsync(2000)
    planner.plan(turned(10))
    await thorough.answer({ ...plan })
    expect(store.whole).toBe(better)
  })

  it('plans anew when more than the nights changes', async () => {
    const { quick, planner } = begin()
    planner.plan(trip)
    await quick.answer()
    planner.plan({ ...trip, kit: { ...trip.kit } })
    expect(quick.asked.at(-1)?.what).toBe('quick')
  })

  it('sets what-ifs beside the newest trip in a worker of their own, and none before there is a plan', async () => {
    const { quick, beside, planner } = begin()
    const question = {
      kind: 'colder',
      amounts: {},
      signal: new AbortController().signal,
      onProgress: () => undefined,
    } as const
    expect(await planner.whatIf(question)).toEqual({ kind: 'stopped' })
    planner.plan(trip)
    await quick.answer()
    const newest = turned(5)
    planner.plan(newest)
    expect(await planner.whatIf(question)).toEqual({ kind: 'compared', told: null })
    expect(beside.asks).toEqual([newest])
  })
})

describe('the rehearsal of a turn', () => {
  it('turns the nights as they stand once a search has ended, and stops at the first real turn', async () => {
    const { store, quick, thorough, planner } = begin()
    rehearseAfterFirstPlan(store, quick.caller.turn)
    const rehearsed = (): number =>
      quick.asked.filter(({ what, trip: of }) => what === 'turn' && of?.nights === trip.nights).length
    planner.plan(trip)
    await quick.answer()
    await vi.advanceTimersByTimeAsync(2000)
    expect(rehearsed()).toBe(0)
    await thorough.answer()
    await vi.runAllTimersAsync()
    expect(rehearsed()).toBe(1)
    await quick.answerTurn()
    await vi.runAllTimersAsync()
    expect(rehearsed()).toBe(2)
    expect(store.plan?.nights).toEqual(plan.nights)
    expect(store.plan?.packing).toBe(plan.packing)
    planner.plan(turned(5))
    await quick.answerTurn()
    await quick.answerTurn()
    await vi.runAllTimersAsync()
    expect(store.state.plannedTrip?.nights[0]?.ventilation.gapMm).toBe(5)
    expect(rehearsed()).toBe(2)
  })
})
