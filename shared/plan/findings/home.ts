/** The clocks at home against the first arrival and the last morning. */
import type { Trip } from '../../document/index.ts'
import { homeInOrder } from '../home.ts'
import type { Finding, NightPlan, PlanHome } from '../types.ts'
import { finding } from './finding.ts'

export function homeFindings(trip: Trip, home: PlanHome, nights: readonly NightPlan[]): readonly Finding[] {
  const { leave, back } = home
  const inOrder = homeInOrder(home, nights)
  const [first, last] = [nights[0]?.clock, nights.at(-1)?.clock]
  const [site, lastSite] = [trip.nights[0]?.site.name ?? '', trip.nights.at(-1)?.site.name ?? '']
  const found: Finding[] = []
  if (leave !== null && first !== undefined && inOrder.leave === null) {
    const params = { zone: leave.zone, leaveDayUtc: leave.atUtc, arriveDayUtc: first.arriveUtc, site }
    found.push(finding(sourceOf('leaveHome'), 'shortfall', 'leave-home-after-arrival', params))
  }
  if (back !== null && last !== undefined && inOrder.back === null) {
    const params = { zone: back.zone, backDayUtc: back.atUtc, departDayUtc: last.departUtc, site: lastSite }
    found.push(finding(sourceOf('backHome'), 'shortfall', 'back-home-before-leaving', params))
  }
  return found
}

const sourceOf = (name: 'leaveHome' | 'backHome') => ({ area: 'clock', nightId: null, path: [name] }) as const
