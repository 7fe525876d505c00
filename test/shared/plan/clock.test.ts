/** Wall clocks of a night turned into instants, over the nights when the clocks change. */
import { describe, expect, it } from 'vitest'
import { nightClock } from '../../../shared/plan/index.ts'
import type { Night } from '../../../shared/document/index.ts'
import { sample } from './trips.ts'

const told = (utc: number | null): string | null => (utc === null ? null : new Date(utc * 1000).toISOString())

/** The first night of a sample, elsewhere in the calendar. Offsets from UTC: tz database, Europe/Berlin, +01:00 in winter, +02:00 in summer. */
const nightOn = (date: string, change: Partial<Night> = {}): ReturnType<typeof nightClock> => {
  const [night] = sample('bats-by-the-quarry').nights
  if (night === undefined) throw new Error('the sample has no night')
  return nightClock({ ...night, date, site: { ...night.site, zone: 'Europe/Berlin' }, ...change })
}

describe('the clock of a night', () => {
  it('puts check-out at its own wall clock on the morning when summer time begins', () => {
    expect(told(nightOn('2026-03-28', { checkOutBy: '12:00' }).checkOutUtc)).toBe('2026-03-29T10:00:00.000Z')
    expect(told(nightOn('2026-03-27', { checkOutBy: '12:00' }).checkOutUtc)).toBe('2026-03-28T11:00:00.000Z')
  })

  it('puts check-out at its own wall clock on the morning when summer time ends', () => {
    expect(told(nightOn('2026-10-24', { checkOutBy: '12:30' }).checkOutUtc)).toBe('2026-10-25T11:30:00.000Z')
  })

  it('ends a ban that runs past noon on the next calendar day', () => {
    const { banFromUtc, banToUtc } = nightOn('2026-10-24', { movementBan: { from: '22:00', to: '20:00' } })
    expect([told(banFromUtc), told(banToUtc)]).toEqual(['2026-10-24T20:00:00.000Z', '2026-10-25T19:00:00.000Z'])
  })
})
