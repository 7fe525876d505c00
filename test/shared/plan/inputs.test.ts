/** What the trip says reaches the engines: agreed stops, a fitted mattress, and what was read on the nights themselves. */
import { describe, expect, it } from 'vitest'
import type { Measured, Trip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { simulateNight } from '../../../shared/climate/index.ts'
import { formatLocalTime, S_PER_HOUR } from '../../../shared/units/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { sample, scenario, withNight } from './trips.ts'

const quick = (trip: Trip, previous?: Plan): Plan =>
  derivePlan(trip, {
    seed: 1,
    iterations: 0,
    remedies: false,
    ...(previous === undefined ? {} : { previous, keepLoad: true }),
  })

const bats = sample('bats-by-the-quarry')
const batsPlan = quick(bats)
const again = (trip: Trip): Plan => quick(trip, batsPlan)

describe('stops that the traveller has agreed to', () => {
  const trip = scenario('a')
  const plan = quick(trip)
  const agreeing = (...stopsM: number[]): Plan =>
    quick(
      withNight(trip, 1, (night) =>
        night.leg === undefined ? night : { ...night, leg: { ...night.leg, acceptedStopsM: stopsM } },
      ),
      plan,
    )
  const severity = (of: Plan): string | undefined =>
    of.findings.find(({ problem, nightId }) => problem.code === 'leg-needs-stop' && nightId === trip.nights[1]?.id)
      ?.severity

  it('are no caution any more: the plan stops there', () => {
    expect(severity(plan)).toBe('caution')
    const agreed = agreeing(92_000)
    expect(agreed.nights[1]?.outcome.leg?.stops.map(({ atM }) => atM)).toEqual([92_000])
    expect(severity(agreed)).toBe('note')
  })

  it('are the only ones: a leg that they do not mend falls short', () => {
    expect(agreeing(1).findings.map(({ problem }) => problem.code)).toContain('leg-too-long')
  })
})

describe('a mattress that stays in the vehicle', () => {
  it('warms the sleepers from below', () => {
    const fitted = again({
      ...bats,
      vehicle: { ...bats.vehicle, bed: { ...bats.vehicle.bed, fittedMattressM2KPerW: 1.2 } },
    })
    const bedding = (plan: Plan) => plan.nights[0]?.input.sleepers.map((sleeper) => sleeper.bedding.matM2KPerW)
    expect(bedding(fitted)).toEqual(bedding(batsPlan)?.map((value) => value + 1.2))
    const margin = (plan: Plan) =>
      Math.min(...(plan.nights[0]?.outcome.sleepers ?? []).map(({ requiredClo }) => -requiredClo))
    expect(margin(fitted)).toBeGreaterThan(margin(batsPlan))
  })
})

describe('what was read on the night', () => {
  const [night] = bats.nights
  const planned = batsPlan.nights[0]
  if (night === undefined || planned === undefined) throw new Error('the sample has a night')
  const zone = night.site.zone
  const read = (moment: Measured['moment'], atUtc: number, values: Partial<Measured>): Measured => ({
    nightId: night.id,
    moment,
    clock: formatLocalTime(atUtc as Utc, zone),
    ...values,
  })
  const bedUtc = planned.clock.bedtimeUtc
  const wakeUtc = planned.clock.wakeUtc
  const withReadings = (...measured: Measured[]): Trip => ({ ...bats, measured })

  /** The night of a cabin that loses more than its body class: what a thermometer and the heater's own meter would say. */
  const leaky = (lossScale: number): Measured => {
    const input = {
      ...planned.input,
      weather: planned.input.weather.map((step) => ({ ...step, tempC: step.tempC + night.weather.coldMarginK })),
      cabin: { ...planned.input.cabin, lossScale },
    }
    const { series } = simulateNight(input)
    const rows = series.atUtc.flatMap((atUtc, row) => (atUtc >= bedUtc && atUtc <= wakeUtc ? [row] : []))
    const inside = rows.map((row) => series.bedAirC[row] ?? 0)
    const stepH = input.stepS / S_PER_HOUR
    const heating = rows.slice(1).map((row) => (series.heatingElectricW[row] ?? 0) + (series.bedHeatW[row] ?? 0))
    return read('morning', wakeUtc, {
      lowestInsideC: Math.min(...inside),
      meanInsideC: inside.reduce((sum, tempC) => sum + tempC, 0) / inside.length,
      heatingWh: heating.reduce((sum, watts) => sum + watts * stepH, 0),
    })
  }

  it('teaches the cabin its loss, with a spread', () => {
    const plan = again(withReadings(leaky(1.6)))
    const fit = plan.calibration?.fit
    expect(fit?.nights).toBe(1)
    // Three readings of one night pull towards 1.6; the owner's own figure of the loss, known to 10 %, holds against them.
    expect(fit?.lossScale ?? 0).toBeGreaterThan(1.15)
    expect(fit?.lossScale ?? 9).toBeLessThan(1.6)
    expect(fit?.lossScaleSpread ?? 0).toBeGreaterThan(0)
    expect(plan.nights.map(({ input }) => input.cabin.lossScale)).toEqual(bats.nights.map(() => fit?.lossScale))
    expect(plan.nights[0]?.outcome.heatingWh ?? 0).toBeGreaterThan(planned.outcome.heatingWh)
    expect(plan.findings.find(({ problem }) => problem.code === 'loss-fitted')?.severity).toBe('note')
  })

  it('is fitted once: a plan of the same readings takes the fit over', () => {
    const trip = withReadings(leaky(1.3))
    const first = again(trip)
    expect(quick({ ...trip, title: 'Another name' }, first).calibration).toBe(first.calibration)
  })

  it('leaves the body class as it is where nothing was read', () => {
    expect(batsPlan.calibration).toBeNull()
    expect(again(withReadings(read('bedtime', bedUtc, { lowestInsideC: 12 }))).calibration).toBeNull()
  })

  it('counts volts under load as readings of the post', () => {
    const before = planned.input.supply?.readings.length ?? 0
    const plan = again(withReadings(read('at-the-post', bedUtc, { volts: 221, currentA: 9 })))
    expect(plan.nights[0]?.input.supply?.readings).toHaveLength(before + 1)
    const onlyVolts = again(withReadings(read('at-the-post', bedUtc, { volts: 221 })))
    expect(onlyVolts.nights[0]?.input.supply?.readings).toHaveLength(before)
  })

  it('starts the night at the charge that was read on arriving, the last reading counting', () => {
    const plan = again(
      withReadings(read('at-the-post', bedUtc, { charge01: 0.5 }), read('at-the-post', bedUtc, { charge01: 0.33 })),
    )
    expect(plan.nights[0]?.outcome.arrive01).toBeCloseTo(0.33, 5)
  })

  it('carries the charge read in the morning over the leg to the next night', () => {
    const next = bats.nights[1]
    if (next === undefined) throw new Error('the sample has two nights')
    const { arriveCharge01: _said, ...unsaid } = next
    const carrying = { ...bats, nights: [night, unsaid] }
    const arriving = (trip: Trip): number => quick(trip, batsPlan).nights[1]?.outcome.arrive01 ?? 0
    const low = read('morning', wakeUtc, { charge01: (planned.outcome.depart01 ?? 0.6) - 0.1 })
    expect(arriving(carrying) - arriving({ ...carrying, measured: [low] })).toBeCloseTo(0.1, 5)
  })

  it('teaches the consumption from the charge read before and after a leg', () => {
    const next = bats.nights[1]
    if (next === undefined || planned.outcome.leg === null) throw new Error('the sample drives on')
    const usableWh = bats.vehicle.battery?.usableWh ?? 1
    const used01 = (1.2 * planned.outcome.leg.needWh) / usableWh
    const plan = again(
      withReadings(read('morning', wakeUtc, { charge01: 0.9 }), {
        nightId: next.id,
        moment: 'at-the-post',
        clock: next.arrive,
        charge01: 0.9 - used01,
      }),
    )
    const scale = plan.calibration?.fit.consumption?.scale ?? 1
    // One leg read in whole percent against a prior of 15 %: most of the way to 1.2.
    expect(scale).toBeGreaterThan(1.1)
    expect(scale).toBeLessThanOrEqual(1.2)
    expect(plan.nights[0]?.outcome.leg?.needWh ?? 0).toBeGreaterThan(1.08 * planned.outcome.leg.needWh)
  })

  it('measures the post’s energy from the first to the last reading of its meter', () => {
    const plan = again(
      withReadings(
        read('at-the-post', planned.clock.arriveUtc + 1800, { meterWh: 100_000 }),
        read('morning', wakeUtc, { meterWh: 112_000 }),
      ),
    )
    expect(plan.calibration?.from.map(({ siteWh }) => siteWh)).toEqual([12_000])
  })

  it('says so when readings fit no loss of the cabin', () => {
    const wild = { ...leaky(1), lowestInsideC: -20, meanInsideC: 35 }
    const codes = again(withReadings(wild)).findings.map(({ problem }) => problem.code)
    expect(codes).toContain('readings-do-not-fit')
  })
})
