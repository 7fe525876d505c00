/**
 * Two trips of our own invention in the field-scenario format, unlike the two that were given: a hatchback with a tall sleeper
 * and a van with a leisure battery. What a traveller would expect was written down first, each as the sentence of its test.
 */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import { tripFromScenario } from '../../support/from-scenario/convert.ts'
import { nightFaults } from '../../support/oracle/night.ts'
import { packingFaults } from '../../support/oracle/packing.ts'
import { codes } from './trips.ts'

const read = (name: string): Trip =>
  tripFromScenario(JSON.parse(readFileSync(new URL(`../../fixtures/scenarios/${name}.json`, import.meta.url), 'utf8')))

const planOf = (trip: Trip, remedies = false) => derivePlan(trip, { seed: 1, iterations: 0, remedies })

describe('a small hatchback in the rain', () => {
  const trip = read('hatchback-in-the-rain')
  const plan = planOf(trip, true)
  const [night] = plan.nights

  it('passes the oracle', () => {
    expect(packingFaults(plan.packingInput, plan.packing)).toEqual([])
    for (const { input, outcome } of plan.nights) expect(nightFaults(input, outcome)).toEqual([])
  })

  it('has nowhere for the stove to sleep: no place outside is allowed, and the cabin is where one sleeps', () => {
    const found = plan.findings.find(({ id }) => id.startsWith('no-place-at-night') && id.endsWith('H07'))
    expect(found?.problem.params['rules']).toContain('fuel-in-sleeping-space')
    expect(plan.remedies.map(({ change }) => change)).toContainEqual({ kind: 'leave-behind', pieceIds: ['H07'] })
  })

  it('holds 10 A on the household socket, says why, and charges a small battery to its usual limit overnight', () => {
    expect(night?.outcome.supply?.usableA).toBe(10)
    expect(codes(plan, 'caution')).toContain('night-domestic-socket')
    expect(night?.outcome.depart01 ?? 0).toBeGreaterThan(0.75)
    expect(night?.outcome.depart01 ?? 1).toBeLessThanOrEqual(0.8)
    expect(night?.outcome.leg?.stops).toEqual([])
  })

  it('turns heating off at bedtime where it may not run all night, and finds the bag too light for it', () => {
    expect(codes(plan, 'caution')).toContain('night-heater-stops')
    expect(codes(plan, 'shortfall')).toContain('too-cold-for-bag')
  })

  it('offers no covers where none ride along, and no warmer set-point where heat stops at bedtime', () => {
    expect(plan.remedies.filter(({ change }) => change.kind === 'covers' || change.kind === 'set-point')).toEqual([])
  })

  it('says that a person of 1.84 m has little to spare on 1.89 m, and can only lie', () => {
    expect(codes(plan, 'note')).toEqual(expect.arrayContaining(['bed-just-long-enough', 'lie-only']))
  })

  it('counts one tall driver heavier than the 75 kg of the papers against the payload', () => {
    expect(plan.packing.mass.payloadG).toBe(1_950_000 - 1_540_000 - (91_000 - 75_000))
  })
})

describe('a van with a leisure battery', () => {
  const trip = read('van-without-supply')
  const plan = planOf(trip)
  const [first, second] = plan.nights

  it('passes the oracle', () => {
    expect(packingFaults(plan.packingInput, plan.packing)).toEqual([])
    for (const { input, outcome } of plan.nights) expect(nightFaults(input, outcome)).toEqual([])
  })

  it('is no electric car: no driving battery, no leg to charge for, but a leisure battery that fills on the post', () => {
    expect(first?.outcome.depart01).toBeNull()
    expect(first?.outcome.leg).toBeNull()
    expect(first?.outcome.leisureDepart01 ?? 0).toBeGreaterThan(0.95)
  })

  it('runs the convector within the 6 A that the post gives', () => {
    expect(first?.outcome.supply).toMatchObject({ usableA: 6, limitedBy: 'breaker' })
    const most = Math.max(...(first?.outcome.series.supplyW ?? []))
    expect(most).toBeGreaterThan(600)
    expect(most).toBeLessThanOrEqual(6 * 231)
  })

  it('drains the leisure battery to its reserve on the second evening and then lets the bed go cold: it says so', () => {
    expect(second?.outcome.leisureDepart01 ?? 1).toBeCloseTo(0.15, 2)
    expect(second?.outcome.stopsUtc).not.toBeNull()
    expect(
      plan.findings.filter(({ nightId }) => nightId === second?.nightId).map(({ problem }) => problem.code),
    ).toEqual(
      expect.arrayContaining(['night-heater-stops', 'too-cold-for-body', 'night-cold-illness', 'ask-about-sleeping']),
    )
  })

  it('says who is cold and when: after the heater has stopped and before waking', () => {
    const stopsUtc = second?.outcome.stopsUtc ?? Infinity
    const cold = plan.findings.filter(
      ({ nightId, problem }) => nightId === second?.nightId && problem.code === 'too-cold-for-body',
    )
    const travellers = cold.map(({ problem }) => problem.params['traveller'])
    expect(new Set(travellers).size).toBe(travellers.length)
    expect(travellers.length).toBeGreaterThan(0)
    for (const { problem } of cold) {
      expect(Number(problem.params['fromUtc'])).toBeGreaterThan(stopsUtc)
      expect(Number(problem.params['fromUtc'])).toBeLessThan(second?.clock.wakeUtc ?? 0)
    }
  })

  it('warns on the first evening that the second night runs out', () => {
    const said = plan.checklist.steps.filter(({ ruleId }) => ruleId === 'tomorrow-short-of-charge')
    expect(said.map(({ nightId }) => nightId)).toEqual([first?.nightId])
  })

  it('keeps the gas in its outside box on both nights', () => {
    for (const { bed } of plan.packing.nights)
      expect(bed.placements.find(({ unitId }) => unitId === 'V08')?.bayId).toBe('box')
  })

  it('carries lead and convector in use on the first night and stowed on the second', () => {
    const states = plan.packingInput.nights.map((night) => [night.states['V06'], night.states['V07']])
    expect(states).toEqual([
      ['in-use', 'in-use'],
      ['stored', 'stored'],
    ])
  })

  it('finds no room for skis of 1.85 m in bays of 1.6 m, by day and by night', () => {
    expect(plan.packing.driveUnplaced.map(({ unitId }) => unitId)).toContain('V04')
    for (const { unplaced } of plan.packing.nights) expect(unplaced.map(({ unitId }) => unitId)).toContain('V04')
  })

  it('uses 8 l of water a night for two: 20 l last both nights', () => {
    expect(plan.stores.map(({ waterMl, waterShortMl }) => [waterMl, waterShortMl])).toEqual([
      [20_000, 0],
      [12_000, 0],
    ])
  })
})
