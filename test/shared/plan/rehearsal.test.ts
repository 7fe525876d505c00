/** Every night is rehearsed with each fault that can befall it, hour by hour, with what to do and until when. */
import { beforeAll, describe, expect, it } from 'vitest'
import { nightCard } from '../../../shared/cards/index.ts'
import { runFault } from '../../../shared/climate/index.ts'
import { choicesOf, faultAt, faultKinds } from '../../../shared/plan/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { createText } from '../../../shared/text/index.ts'
import { TIME_LIMIT_MS } from '../../support/generators/runs.ts'
import { planOf, sample, withNight } from './trips.ts'

const base = sample('bats-by-the-quarry')
const trip = { ...base, nights: base.nights.slice(0, 1) }

describe('a night on a post', () => {
  let plan: Plan
  beforeAll(() => {
    plan = planOf(trip, true)
  }, TIME_LIMIT_MS)
  const first = (): Plan['nights'][number] => {
    const [night] = plan.nights
    if (night === undefined) throw new Error('the plan has a night')
    return night
  }

  it('is rehearsed with supply, breaker and heater, in its small hours', () => {
    const { faults, clock } = first()
    expect(faults.map(({ fault }) => fault.kind)).toEqual(['supply-lost', 'breaker-trips', 'heater-fails'])
    for (const { fault } of faults) {
      expect(fault.atUtc).toBeGreaterThan(clock.bedtimeUtc)
      expect(fault.atUtc).toBeLessThanOrEqual(clock.wakeUtc)
    }
  })

  it('tells each hour from the fault to departure, and advice that can still be taken', () => {
    const { faults, clock } = first()
    for (const { fault, hours = [], advice } of faults) {
      const times = hours.map(({ atUtc }) => atUtc)
      expect(times.length).toBeGreaterThan(2)
      expect(times).toEqual(times.toSorted((a, b) => a - b))
      expect(times[0]).toBeGreaterThanOrEqual(fault.atUtc)
      expect(times.at(-1)).toBe(clock.departUtc)
      for (const by of [advice?.byUtc ?? null, advice?.byColdUtc ?? null]) {
        if (by === null) continue
        expect(by).toBeGreaterThanOrEqual(fault.atUtc)
        expect(by).toBeLessThanOrEqual(clock.departUtc)
      }
    }
  })

  it('trusts a tripped breaker with three quarters, or with what is known to hold, and with nothing named under 6 A', () => {
    const night = first()
    const { supply } = night.input
    if (supply === null) throw new Error('the night has a post')
    const at = night.clock.bedtimeUtc
    // 16 A for hours is 12.8 A: three quarters are 9 A.
    expect(faultAt('breaker-trips', at, night)).toEqual({ kind: 'breaker-trips', atUtc: at, heldA: 9, resetUtc: null })
    const known = { ...night, input: { ...night.input, supply: { ...supply, heldA: 10 } } }
    expect(faultAt('breaker-trips', at, known)).toMatchObject({ heldA: 10 })
    const { supply: outcome } = night.outcome
    const weak = {
      ...night,
      outcome: { ...night.outcome, supply: outcome === null ? null : { ...outcome, usableA: 6 } },
    }
    expect(faultAt('breaker-trips', at, weak)).toMatchObject({ heldA: null })
  })

  it('a breaker that trips as soon as the car is plugged in costs the leg, and resetting it in time saves it', () => {
    const far = withNight(trip, 0, (night) => ({
      ...night,
      arriveCharge01: 0.3,
      leg: { ...night.leg, distanceM: 150_000, fastChargers: [] },
      ...(night.hookup === undefined ? {} : { hookup: { ...night.hookup, heldA: 12 } }),
    }))
    const [night] = planOf(far).nights
    if (night === undefined) throw new Error('the plan has a night')
    const plugInUtc = night.input.supply?.plugInUtc ?? night.clock.arriveUtc
    const told = runFault(choicesOf(night), faultAt('breaker-trips', plugInUtc, night))
    expect(night.outcome.leg?.marginWh ?? 0).toBeGreaterThan(0)
    expect(told.legMarginWh ?? 0).toBeLessThan(0)
    expect(told.actByUtc ?? 0).toBeGreaterThan(plugInUtc)
    expect(told.advice?.actions.map(({ code }) => code)).toContain('reset-lower')
  })

  it('the night card says what to do about each, in both languages', () => {
    for (const [language, saying] of [
      ['en', /Breaker trips at/],
      ['de', /Sicherung fällt um/],
    ] as const) {
      const card = nightCard({ plan, trip, text: createText(language, 'metric'), nightId: null, paper: 'a4' })
      expect(JSON.stringify(card.blocks)).toMatch(saying)
    }
  })
})

describe('a night without a post', () => {
  it('can lose its heater alone', () => {
    const dark = withNight(trip, 0, ({ hookup: _hookup, ...night }) => night)
    const [night] = planOf(dark).nights
    expect(night === undefined ? [] : faultKinds(night)).toEqual(['heater-fails'])
  })
})
