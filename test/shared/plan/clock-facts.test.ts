/** Facts of the clock that the checklist's rules read: dark or light on arriving, too early, too late. */
import { describe, expect, it } from 'vitest'
import type { Night } from '../../../shared/document/index.ts'
import { nightClock } from '../../../shared/plan/clock.ts'
import { clockFacts } from '../../../shared/plan/inputs/facts-people.ts'
import { sample } from './trips.ts'

const [first] = sample('bats-by-the-quarry').nights
if (first === undefined) throw new Error('the sample has a night')
const factsOf = (change: Partial<Night>): ReturnType<typeof clockFacts> => {
  const night: Night = { ...first, ...change }
  return clockFacts(night, nightClock(night))
}

describe('arriving', () => {
  // Height of the sun at its noon: 90 degrees less latitude plus declination, 23.4 degrees at the solstices; at its midnight
  // latitude plus declination less 90. Civil twilight ends at 6 degrees below the horizon.
  it.each([
    ['under the midnight sun, 3 degrees up at midnight', 69.65, 18.96, '2027-06-21', '23:30', false],
    ['in a white night, 5 degrees below at midnight', 62, 18, '2027-06-21', '23:30', false],
    ['in the polar night, 12 degrees below at noon', 78.22, 15.63, '2027-12-21', '12:30', true],
    ['in the twilight of a noon 3 degrees below', 69.65, 18.96, '2027-12-21', '12:10', false],
    ['in the evening of such a day', 69.65, 18.96, '2027-12-21', '17:00', true],
    ['on an autumn afternoon', 50.61, 12.87, '2027-10-08', '16:20', false],
    ['on an autumn night', 50.61, 12.87, '2027-10-08', '20:30', true],
  ])('%s', (_, latitudeDeg, longitudeDeg, date, arrive, dark) => {
    const site = { ...first.site, latitudeDeg, longitudeDeg, zone: 'Europe/Oslo' }
    expect(factsOf({ date, arrive, site }).arriveInDark).toBe(dark)
  })

  it('has no sunset to count from where there is none', () => {
    const site = { ...first.site, latitudeDeg: 69.65, longitudeDeg: 18.96, zone: 'Europe/Oslo' }
    expect(factsOf({ date: '2027-06-21', site }).arriveAfterSunsetMin).toBeNull()
  })

  it('is told before the site opens and after it closes, in minutes', () => {
    // Open from 14:00 to 20:00.
    const minutes = (arrive: string): unknown => {
      const { arriveBeforeCheckInMin, arriveAfterCheckInMin } = factsOf({ arrive })
      return [arriveBeforeCheckInMin, arriveAfterCheckInMin]
    }
    expect(minutes('13:15')).toEqual([45, -405])
    expect(minutes('14:00')).toEqual([null, -360])
    expect(minutes('20:10')).toEqual([null, 10])
  })
})
