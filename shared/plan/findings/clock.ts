/** Time is checked first: leaving against gate hours and movement bans, arriving against check-in and sunset. */
import type { Night } from '../../document/index.ts'
import { S_PER_HOUR, S_PER_MINUTE } from '../../units/index.ts'
import type { Utc } from '../../units/index.ts'
import { nightInstant } from '../clock.ts'
import type { Finding, NightClock } from '../types.ts'
import { finding } from './finding.ts'

/** Daylight wanted for the pitch, the post and the bed: published touring advice is one hour; in snow one and a half, common practice. */
const DAYLIGHT_S = S_PER_HOUR
const DAYLIGHT_IN_SNOW_S = 1.5 * S_PER_HOUR

export function clockFindings(night: Night, index: number, clock: NightClock): readonly Finding[] {
  const source = { area: 'clock', nightId: night.id, path: ['nights', index] } as const
  const { zone } = clock
  const found: Finding[] = []
  const blocks = (from: Utc | null, to: Utc | null): { from: Utc; to: Utc } | null =>
    from !== null && to !== null && clock.departUtc >= from && clock.departUtc < to ? { from, to } : null

  const ban = blocks(clock.banFromUtc, clock.banToUtc)
  if (ban !== null) {
    found.push(
      finding(source, 'shortfall', 'leave-in-movement-ban', {
        zone,
        departUtc: clock.departUtc,
        banToUtc: ban.to,
        lostS: ban.to - clock.departUtc,
        target: night.target?.name ?? '',
      }),
    )
  }
  const gate = blocks(clock.gateFromUtc, clock.gateToUtc)
  if (gate !== null) {
    found.push(
      finding(source, 'shortfall', 'leave-before-gate', {
        zone,
        departUtc: clock.departUtc,
        gateToUtc: gate.to,
        lostS: gate.to - clock.departUtc,
      }),
    )
  }
  if (blocks(clock.quietFromUtc, clock.quietToUtc) !== null && clock.quietToUtc !== null) {
    found.push(
      finding(source, 'caution', 'leave-in-quiet-hours', {
        zone,
        departUtc: clock.departUtc,
        quietToUtc: clock.quietToUtc,
      }),
    )
  }
  found.push(...arrivalFindings(night, index, clock))
  if (clock.checkOutUtc !== null && night.target === undefined && clock.departUtc > clock.checkOutUtc) {
    found.push(
      finding(source, 'shortfall', 'leave-after-check-out', {
        zone,
        departUtc: clock.departUtc,
        checkOutUtc: clock.checkOutUtc,
      }),
    )
  }
  found.push(...morningFindings(night, index, clock))
  return found
}

function arrivalFindings(night: Night, index: number, clock: NightClock): Finding[] {
  const source = { area: 'clock', nightId: night.id, path: ['nights', index, 'arrive'] } as const
  const { zone } = clock
  const found: Finding[] = []
  if (night.checkIn !== undefined) {
    const opensUtc = nightInstant(night, night.checkIn.from)
    const closesUtc = nightInstant(night, night.checkIn.to)
    if (clock.arriveUtc > closesUtc) {
      found.push(finding(source, 'shortfall', 'arrive-after-check-in', { zone, arriveUtc: clock.arriveUtc, closesUtc }))
    } else if (clock.arriveUtc < opensUtc) {
      found.push(finding(source, 'caution', 'arrive-before-check-in', { zone, arriveUtc: clock.arriveUtc, opensUtc }))
    }
  }
  const shutFrom = (from: Utc | null, to: Utc | null): Utc | null =>
    from !== null && to !== null && clock.arriveUtc >= from && clock.arriveUtc < to ? from : null
  const gateFromUtc = shutFrom(clock.gateFromUtc, clock.gateToUtc)
  if (gateFromUtc !== null) {
    const params = { zone, arriveUtc: clock.arriveUtc, gateFromUtc }
    found.push(finding(source, 'shortfall', 'arrive-after-gate', params))
  }
  const banFromUtc = shutFrom(clock.banFromUtc, clock.banToUtc)
  if (banFromUtc !== null) {
    const params = { zone, arriveUtc: clock.arriveUtc, banFromUtc }
    found.push(finding(source, 'shortfall', 'arrive-in-movement-ban', params))
  }
  const { sunsetUtc } = clock.sun
  if (sunsetUtc !== null) {
    const wanted = night.weather.snowMm > 0 ? DAYLIGHT_IN_SNOW_S : DAYLIGHT_S
    if (clock.arriveUtc > sunsetUtc - wanted) {
      found.push(
        finding(source, 'caution', 'arrive-in-the-dark', {
          zone,
          arriveUtc: clock.arriveUtc,
          sunsetUtc,
          wantedS: wanted,
        }),
      )
    }
  }
  return found
}

function morningFindings(night: Night, index: number, clock: NightClock): Finding[] {
  const source = { area: 'clock', nightId: night.id, path: ['nights', index, 'sleep', 'to'] } as const
  const { zone } = clock
  const found: Finding[] = []
  const plannedWakeUtc = nightInstant(night, night.sleep.to)
  const neededWakeUtc = (clock.departUtc - night.morningMin * S_PER_MINUTE) as Utc
  if (plannedWakeUtc > neededWakeUtc) {
    found.push(
      finding(source, 'caution', 'wake-earlier', {
        zone,
        plannedUtc: plannedWakeUtc,
        neededUtc: neededWakeUtc,
        departUtc: clock.departUtc,
        morningS: night.morningMin * S_PER_MINUTE,
      }),
    )
  }
  if (night.hookup !== undefined && nightInstant(night, night.hookup.unplug) > clock.departUtc) {
    const path = ['nights', index, 'hookup', 'unplug'] as const
    found.push(
      finding({ ...source, path }, 'caution', 'unplug-before-leaving', {
        zone,
        unplugUtc: nightInstant(night, night.hookup.unplug),
        departUtc: clock.departUtc,
      }),
    )
  }
  if (night.target !== undefined && clock.beAtTargetUtc === null) {
    found.push(
      finding({ ...source, path: ['nights', index, 'target'] }, 'note', 'no-sunrise', { target: night.target.name }),
    )
  }
  return found
}
