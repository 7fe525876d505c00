/** A second plan beside the first: what a change of circumstances does, over both samples, as data and in both languages. */
import { describe, expect, it } from 'vitest'
import { compareWhatIf, derivePlan, WHAT_IF_KINDS } from '../../../shared/plan/index.ts'
import type { Difference, Plan, WhatIf, WhatIfKind } from '../../../shared/plan/index.ts'
import { createText } from '../../../shared/text/index.ts'
import type { TextKey, TextParams } from '../../../shared/text/index.ts'
import { S_PER_HOUR, S_PER_MINUTE } from '../../../shared/units/index.ts'
import { sample } from './trips.ts'

const BUDGET = { seed: 1, iterations: 2, remedies: false }

describe.each(['bats-by-the-quarry', 'ridge-run-with-a-dog'])('%s', (name) => {
  const trip = sample(name)
  const plan = derivePlan(trip, BUDGET)
  const compared = new Map<WhatIfKind, WhatIf | null>(
    WHAT_IF_KINDS.map((kind) => [kind, compareWhatIf(trip, plan, kind, BUDGET)]),
  )
  const of = (kind: WhatIfKind): WhatIf => {
    const found = compared.get(kind) ?? null
    if (found === null) throw new Error(`${kind} has nothing to act on`)
    return found
  }
  const nights = (kind: WhatIfKind): Plan['nights'] => of(kind).plan.nights
  const codes = (kind: WhatIfKind): readonly Difference['code'][] => of(kind).differences.map(({ code }) => code)

  it('is 5 K colder on every night, and sleepers or battery pay for it', () => {
    nights('colder').forEach((night, index) => {
      const before = plan.nights[index]
      expect((before?.outcome.coldestOutsideC ?? 0) - night.outcome.coldestOutsideC).toBeCloseTo(5, 5)
    })
    expect(codes('colder').some((code) => ['comfort', 'depart', 'leg-margin'].includes(code))).toBe(true)
    for (const { code, params } of of('colder').differences)
      if (code === 'depart') expect(Number(params['after01'])).toBeLessThan(Number(params['before01']))
  })

  it('never charges more on a weaker supply', () => {
    expect(nights('weaker-supply').some((night) => night.outcome.supply !== null)).toBe(true)
    nights('weaker-supply').forEach((night, index) => {
      const before = plan.nights[index]?.outcome
      if (night.outcome.supply === null) return
      expect(night.outcome.supply.usableA).toBeLessThan(before?.supply?.usableA ?? 0)
      expect(night.outcome.depart01 ?? 0).toBeLessThanOrEqual((before?.depart01 ?? 1) + 1e-9)
    })
  })

  it('finds one more person without bedding cold or without room in the bed, and says that it would not hold', () => {
    const { plan: second, differences } = of('one-more-person')
    expect(second.nights[0]?.outcome.sleepers).toHaveLength(trip.travellers.length + 1)
    expect(second.packing.mass.payloadG).toBe(plan.packing.mass.payloadG - 75_000)
    expect(second.verdict.holds).toBe(false)
    const added = differences.filter(({ code }) => code === 'shortfall-added').map(({ problem }) => problem?.code)
    expect(added.some((code) => code === 'bed-too-narrow' || code?.startsWith('too-cold'))).toBe(true)
    if (plan.verdict.holds) expect(differences.map(({ code }) => code)).toContain('holds-no-more')
    expect(second.verdict.shortfalls).toBeGreaterThan(plan.verdict.shortfalls)
  })

  it('loses supply or heat at 03:00 on every night, and warmth or charge with it', () => {
    const before = plan.nights[0]
    const after = nights('fault-at-three')[0]
    const faultUtc = after?.input.fault?.atUtc ?? 0
    const threeH = (faultUtc - (before?.clock.arriveUtc ?? 0)) / S_PER_HOUR
    expect(threeH).toBeGreaterThan(3)
    expect(threeH).toBeLessThan(16)
    expect(faultUtc % (15 * S_PER_MINUTE)).toBe(0)
    const row = after?.outcome.series.atUtc.findIndex((atUtc) => atUtc > faultUtc) ?? 0
    const key = after?.input.supply === null ? 'heatW' : 'supplyW'
    expect(Math.max(...(after?.outcome.series[key].slice(row + 1) ?? [1]))).toBe(0)
    expect(before?.outcome.series[key].slice(row + 1).some((watts) => watts > 0)).toBe(true)
  })

  it('puts nothing outdoors where that is not allowed, or has nothing to compare where none was', () => {
    const outside = compared.get('no-outside-storage') ?? null
    if (!trip.nights.some(({ rules }) => rules.outsideStorage)) {
      expect(outside).toBeNull()
      return
    }
    const bays = new Set(trip.vehicle.bays.filter(({ kind }) => kind === 'outside').map(({ id }) => id))
    const placed = outside?.plan.packing.nights.flatMap(({ bed }) => bed.placements) ?? []
    expect(placed.length).toBeGreaterThan(0)
    expect(placed.filter(({ bayId }) => bays.has(bayId))).toEqual([])
  })

  it('leaves the first plan as it was and differs from itself in nothing', () => {
    const again = compareWhatIf(trip, plan, 'colder', BUDGET)
    expect(again?.differences).toEqual(of('colder').differences)
    expect(of('colder').trip).not.toBe(trip)
    expect(trip).toEqual(sample(name))
  })

  it.each(['en', 'de'] as const)('has a sentence for every difference (%s)', (language) => {
    const text = createText(language, trip.preferences.units)
    const say = (key: TextKey, params: TextParams): string => text.t(key, params)
    for (const kind of WHAT_IF_KINDS) {
      const found = compared.get(kind)
      if (found === null || found === undefined) continue
      const said = [
        say(`whatIf.${kind}`, found.params),
        ...found.differences.map(({ code, params }) => say(`whatIf.${code}`, params)),
        ...found.differences.flatMap(({ problem }) => (problem === undefined ? [] : [text.problem(problem)])),
      ]
      for (const sentence of said) {
        expect(sentence).not.toMatch(/[{}]|whatIf\.|undefined|NaN/)
        expect(sentence.length).toBeGreaterThan(3)
      }
    }
  })
})
