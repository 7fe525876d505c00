/** Two plans of nearly the same trip, side by side: what one has that the other has not. */
import type { Step } from '../checklist/index.ts'
import type { Trip } from '../document/index.ts'
import type { Layout } from '../packing/index.ts'
import { unitNames } from './findings/index.ts'
import type { Difference } from './difference.ts'
import type { Finding, NightPlan, Plan } from './types.ts'

/** Differences smaller than these are noise of the forecast: half a kelvin, one percent of charge, 100 Wh. */
const LEAST_K = 0.5
const LEAST_01 = 0.01
const LEAST_WH = 100

/** All differences, the verdict first, then night by night. `trip` is the one that the second plan was made of. */
export function differencesOf(trip: Trip, before: Plan, after: Plan): readonly Difference[] {
  return [
    ...verdictDifferences(before, after),
    ...findingDifferences(before, after),
    ...before.nights.flatMap((night) => {
      const other = after.nights.find(({ nightId }) => nightId === night.nightId)
      return other === undefined ? [] : nightDifferences(trip, night, other)
    }),
    ...loadDifferences(trip, before, after),
    ...beddingWanted(trip, before, after),
    ...stepDifferences(before, after),
  ]
}

const difference = (
  code: Difference['code'],
  nightId: string | null,
  params: Difference['params'],
  more: Pick<Difference, 'problem' | 'steps'> = {},
): Difference => ({ code, nightId, params, ...more })

function verdictDifferences(before: Plan, after: Plan): Difference[] {
  if (before.verdict.holds === after.verdict.holds) return []
  const count = after.verdict.shortfalls
  return [difference(after.verdict.holds ? 'holds-now' : 'holds-no-more', null, { count })]
}

function findingDifferences(before: Plan, after: Plan): Difference[] {
  const missing = (from: Plan, to: Plan, severity: Finding['severity']): readonly Finding[] => {
    const there = new Set(to.findings.map(({ id, severity: how }) => `${how}:${id}`))
    return from.findings.filter((one) => one.severity === severity && !there.has(`${severity}:${one.id}`))
  }
  const say = (code: Difference['code'], found: readonly Finding[]): Difference[] =>
    found.map(({ nightId, problem }) => difference(code, nightId, {}, { problem }))
  return [
    ...say('shortfall-added', missing(after, before, 'shortfall')),
    ...say('shortfall-gone', missing(before, after, 'shortfall')),
    ...say('caution-added', missing(after, before, 'caution')),
  ]
}

function nightDifferences(trip: Trip, before: NightPlan, after: NightPlan): Difference[] {
  const { nightId } = before
  const found: Difference[] = []
  for (const sleeper of after.outcome.sleepers) {
    const was = before.outcome.sleepers.find(({ sleeperId }) => sleeperId === sleeper.sleeperId)
    const traveller = trip.travellers.find(({ id }) => id === sleeper.sleeperId)?.label ?? sleeper.sleeperId
    if (was !== undefined && Math.abs(sleeper.marginK - was.marginK) >= LEAST_K) {
      const params = { traveller, beforeK: was.marginK, afterK: sleeper.marginK }
      found.push(difference('comfort', nightId, params))
    }
  }
  const [was01, is01] = [before.outcome.depart01, after.outcome.depart01]
  if (was01 !== null && is01 !== null && Math.abs(is01 - was01) >= LEAST_01)
    found.push(difference('depart', nightId, { before01: was01, after01: is01 }))
  const [wasLeg, isLeg] = [before.outcome.leg, after.outcome.leg]
  if (wasLeg !== null && isLeg !== null && Math.abs(isLeg.marginWh - wasLeg.marginWh) >= LEAST_WH)
    found.push(difference('leg-margin', nightId, { beforeWh: wasLeg.marginWh, afterWh: isLeg.marginWh }))
  return found
}

function loadDifferences(trip: Trip, before: Plan, after: Plan): Difference[] {
  const nameOf = unitNames(trip)
  const drive = elsewhere(before.packing.drive, after.packing.drive).map(nameOf)
  const perNight = before.packing.nights.flatMap((night): Difference[] => {
    const other = after.packing.nights.find(({ nightId }) => nightId === night.nightId)
    if (other === undefined) return []
    const [wasMoves, isMoves] = [night.changeover.moves.length, other.changeover.moves.length]
    const units = elsewhere(night.bed, other.bed).map(nameOf)
    return [
      ...(wasMoves === isMoves ? [] : [difference('moves', night.nightId, { before: wasMoves, after: isMoves })]),
      ...(units.length === 0 ? [] : [difference('bed-other-place', night.nightId, { units, count: units.length })]),
    ]
  })
  return [
    ...(drive.length === 0 ? [] : [difference('drive-other-place', null, { units: drive, count: drive.length })]),
    ...perNight,
  ]
}

/** Units that are in another bay, or come or go. */
function elsewhere(before: Layout, after: Layout): readonly string[] {
  const bays = (of: Layout): ReadonlyMap<string, string> =>
    new Map(of.placements.map(({ unitId, bayId }) => [unitId, bayId]))
  const [was, is] = [bays(before), bays(after)]
  return [...new Set([...was.keys(), ...is.keys()])].filter((unitId) => was.get(unitId) !== is.get(unitId))
}

/** Bedding that the second plan's remedies ask for and the first one's did not. */
function beddingWanted(trip: Trip, before: Plan, after: Plan): Difference[] {
  const known = new Set(before.remedies.map(({ id }) => id))
  return after.remedies.flatMap(({ id, change }) =>
    change.kind === 'bring-bedding' && !known.has(id)
      ? [difference('bedding-wanted', change.nightId, { piece: unitNames(trip)(change.pieceId) })]
      : [],
  )
}

const MOVING: ReadonlySet<string> = new Set(['move-dusk', 'move-dawn', 'bin-dusk', 'bin-dawn'])

/** Moves are told by their number; here are the other steps. */
function stepDifferences(before: Plan, after: Plan): Difference[] {
  const others = (plan: Plan): readonly Step[] => plan.checklist.steps.filter(({ ruleId }) => !MOVING.has(ruleId))
  const missing = (from: readonly Step[], to: readonly Step[]): readonly Step[] => {
    const keys = new Set(to.map(({ key }) => key))
    return from.filter(({ key }) => !keys.has(key))
  }
  const added = missing(others(after), others(before))
  const gone = missing(others(before), others(after))
  return [
    ...(added.length === 0 ? [] : [difference('steps-added', null, { count: added.length }, { steps: added })]),
    ...(gone.length === 0 ? [] : [difference('steps-gone', null, { count: gone.length }, { steps: gone })]),
  ]
}
