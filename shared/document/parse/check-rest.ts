/** Travellers, clocks at home, checklist, measurements and ledger: ids and what they point at, dates that exist. */
import type { Problem } from '../../result/index.ts'
import { dateExists, localToUtc } from '../../units/index.ts'
import type { Clock, LocalDate } from '../../units/index.ts'
import type { Trip } from '../schema/document.ts'
import { zoneExists } from './calendar.ts'
import { found, idSet, idsTwice, placed, unknownId } from './checks.ts'

export function checkTravellers(trip: Trip): readonly Problem[] {
  const driver = trip.travellers.some((traveller) => traveller.drives)
  return [
    ...idsTwice(placed(trip.travellers, 'travellers')),
    ...(driver ? [] : [found('nobody-drives', ['travellers', 0, 'drives'], false)]),
  ]
}

export function checkHome(trip: Trip): readonly Problem[] {
  return (['leaveHome', 'backHome'] as const).flatMap((name) => {
    const home = trip[name]
    if (home === undefined) return []
    const { date, clock, zone } = home
    if (!dateExists(date)) return [found('date-impossible', [name, 'date'], date)]
    if (!zoneExists(zone)) return [found('zone-unknown', [name, 'zone'], zone)]
    const at = localToUtc({ date: date as LocalDate, clock: clock as Clock, zone })
    return at.ok ? [] : [found(at.problem.code, [name, 'clock'], clock, at.problem.params)]
  })
}

export function checkChecklist(trip: Trip): readonly Problem[] {
  const { rules, lessons } = trip.checklist
  const nights = idSet(trip.nights)
  const pieces = idSet(trip.kit.pieces)
  const ownRules = idSet(rules)
  return [
    ...idsTwice(placed(rules, 'checklist', 'rules')),
    ...idsTwice(placed(lessons, 'checklist', 'lessons')),
    ...lessons.flatMap((lesson, index) => {
      const path = ['checklist', 'lessons', index]
      return [
        ...unknownId(lesson.nightId, nights, 'night', [...path, 'nightId']),
        ...unknownId(lesson.ruleId, ownRules, 'rule', [...path, 'ruleId']),
        ...(lesson.unusedPieceIds ?? []).flatMap((id, at) =>
          unknownId(id, pieces, 'piece', [...path, 'unusedPieceIds', at]),
        ),
      ]
    }),
    ...ticksTwice(trip),
  ]
}

function ticksTwice(trip: Trip): readonly Problem[] {
  const seen = new Set<string>()
  return trip.checklist.ticks.flatMap(({ stepKey }, index) => {
    if (seen.has(stepKey)) return [found('tick-twice', ['checklist', 'ticks', index, 'stepKey'], stepKey)]
    seen.add(stepKey)
    return []
  })
}

export function checkMeasuredAndLedger(trip: Trip): readonly Problem[] {
  const nights = idSet(trip.nights)
  const travellers = idSet(trip.travellers)
  return [
    ...trip.measured.flatMap((one, index) => unknownId(one.nightId, nights, 'night', ['measured', index, 'nightId'])),
    ...idsTwice(placed(trip.ledger, 'ledger')),
    ...trip.ledger.flatMap((entry, index) => [
      ...unknownId(entry.nightId, nights, 'night', ['ledger', index, 'nightId']),
      ...unknownId(entry.paidByTravellerId, travellers, 'traveller', ['ledger', index, 'paidByTravellerId']),
      ...(dateExists(entry.date) ? [] : [found('date-impossible', ['ledger', index, 'date'], entry.date)]),
    ]),
  ]
}
