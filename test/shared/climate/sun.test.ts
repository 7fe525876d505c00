/** Sun times of a night: published references, polar places, and the date line. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { sunDay, sunPosition, sunTimes } from '../../../shared/climate/index.ts'
import { formatLocalTime, localToUtc } from '../../../shared/units/index.ts'
import type { Clock, LocalDate, Utc } from '../../../shared/units/index.ts'

const date = (text: string): LocalDate => text as LocalDate

describe('sun times of a night', () => {
  // Computed references of the two field scenarios, to the minute; the tolerance is 5 min.
  it.each([
    [61.2, 9.8, '2027-02-12', '+01:00', ['16:58', '17:45', '06:33', '07:24', '08:10']],
    [44.35, -107.9, '2027-10-15', '-06:00', ['18:28', '18:57', '06:25', '06:58', '07:28']],
  ] as const)(
    'at %s, %s on %s lie within a minute of the reference',
    (latitudeDeg, longitudeDeg, day, zone, clocks) => {
      const times = sunTimes({ latitudeDeg, longitudeDeg, date: date(day), zone })
      const ours = [times.sunsetUtc, times.civilDuskUtc, times.nauticalDawnUtc, times.civilDawnUtc, times.sunriseUtc]
      clocks.forEach((clock, index) => {
        const at = ours[index] ?? null
        expect(at).not.toBeNull()
        const [hours = 0, minutes = 0] = clock.split(':').map(Number)
        const [ourHours = 0, ourMinutes = 0] = formatLocalTime(at ?? (0 as Utc), zone)
          .split(':')
          .map(Number)
        expect(Math.abs(ourHours * 60 + ourMinutes - hours * 60 - minutes)).toBeLessThanOrEqual(1)
      })
    },
  )

  it('are absent under the midnight sun and in the polar night, where twilight still comes', () => {
    const summer = sunTimes({ latitudeDeg: 69.65, longitudeDeg: 18.96, date: date('2027-06-21'), zone: 'Europe/Oslo' })
    expect(Object.values(summer)).toEqual([null, null, null, null, null])
    const winter = sunTimes({ latitudeDeg: 69.65, longitudeDeg: 18.96, date: date('2027-12-21'), zone: 'Europe/Oslo' })
    expect(winter.sunsetUtc).toBeNull()
    expect(winter.sunriseUtc).toBeNull()
    expect(winter.civilDuskUtc).not.toBeNull()
    expect(winter.civilDawnUtc).not.toBeNull()
  })

  it('come in order within the night that follows the date, at any place and season', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -66, max: 66, noNaN: true }),
        fc.integer({ min: -11, max: 11 }),
        fc.integer({ min: 0, max: 364 }),
        (latitudeDeg, hours, day) => {
          const zone = `${hours < 0 ? '-' : '+'}${String(Math.abs(hours)).padStart(2, '0')}:00`
          const evening = new Date(Date.UTC(2027, 0, 1 + day)).toISOString().slice(0, 10)
          const times = sunTimes({ latitudeDeg, longitudeDeg: hours * 15, date: date(evening), zone })
          const noon = localToUtc({ date: date(evening), clock: '12:00' as Clock, zone })
          const present = Object.values(times).filter((at) => at !== null)
          expect(present.toSorted((left, right) => left - right)).toEqual(present)
          for (const at of present) {
            expect(at).toBeGreaterThan(noon.ok ? noon.value : Infinity)
            expect(at).toBeLessThan((noon.ok ? noon.value : 0) + 86_400)
          }
        },
      ),
      { seed: 1, numRuns: 60 },
    )
  })

  it('put the sun on the horizon at sunrise and six degrees below at civil dawn', () => {
    const place = { latitudeDeg: 52.37, longitudeDeg: 4.9 }
    const times = sunTimes({ ...place, date: date('2027-03-20'), zone: 'Europe/Amsterdam' })
    expect(sunPosition({ ...place, atUtc: times.sunriseUtc ?? 0 }).elevationDeg).toBeCloseTo(-0.833, 1)
    expect(sunPosition({ ...place, atUtc: times.civilDawnUtc ?? 0 }).elevationDeg).toBeCloseTo(-6, 1)
    expect(sunPosition({ ...place, atUtc: times.nauticalDawnUtc ?? 0 }).elevationDeg).toBeCloseTo(-12, 1)
  })

  it('hold across a night in which the clock changes', () => {
    const zurich = { latitudeDeg: 47.4, longitudeDeg: 8.5 }
    const times = sunTimes({ ...zurich, date: date('2027-03-27'), zone: 'Europe/Zurich' })
    expect(times.sunsetUtc).toBe(sunDay({ ...zurich, date: date('2027-03-27') }).sunsetUtc)
    expect(times.sunriseUtc).toBe(sunDay({ ...zurich, date: date('2027-03-28') }).sunriseUtc)
    // Standard time in the evening, summer time in the morning.
    expect(formatLocalTime(times.sunriseUtc ?? (0 as Utc), 'Europe/Zurich').slice(0, 2)).toBe('07')
  })
})

describe('a solar day', () => {
  it('says which polar case holds where the sun neither rises nor sets', () => {
    expect(sunDay({ latitudeDeg: 69.65, longitudeDeg: 18.96, date: date('2024-06-21') }).polar).toBe('day')
    expect(sunDay({ latitudeDeg: 69.65, longitudeDeg: 18.96, date: date('2024-12-21') }).polar).toBe('night')
  })
})
