/** Why the recommended plan, in numbers: each reason is read off the plan or its rivals on the front. */
import type { NightDecisions, NightInput, SupplyOutcome } from '../types.ts'
import type { SearchReason } from '../answers.ts'
import type { Scored } from './front.ts'
import { SAME_COST } from './front.ts'

/** Reasons for a plan of a front, most weighty first: warmth, leg, price, moves, then what it does to get there. */
export function reasonsFor(
  input: NightInput,
  front: readonly Scored[],
  chosen: Scored,
  supply: SupplyOutcome | null,
): readonly SearchReason[] {
  return [...outcomes(input, chosen), ...savings(front, chosen), ...means(input, chosen, supply)]
}

function outcomes(input: NightInput, { comfortMarginK, legMarginWh, legReachable }: Scored): SearchReason[] {
  const list: SearchReason[] = []
  if (input.sleepers.length > 0)
    list.push(
      comfortMarginK >= 0
        ? { code: 'warm-in-hand', valueK: comfortMarginK }
        : { code: 'too-cold-by', valueK: -comfortMarginK },
    )
  if (legMarginWh === null) return list
  list.push(
    legMarginWh >= 0
      ? { code: 'leg-in-hand', valueWh: legMarginWh }
      : legReachable
        ? { code: 'stop-to-charge' }
        : { code: 'leg-short-by', valueWh: -legMarginWh },
  )
  return list
}

function savings(front: readonly Scored[], chosen: Scored): SearchReason[] {
  const list: SearchReason[] = []
  const money = front.reduce((most, point) => Math.max(most, point.cost), 0) - chosen.cost
  if (money > SAME_COST) list.push({ code: 'saves-money', value: money })
  const moves = front.reduce((most, point) => Math.max(most, point.moves), 0) - chosen.moves
  if (moves > 0) list.push({ code: 'saves-moves', value: moves })
  return list
}

function means(input: NightInput, { decisions }: Scored, supply: SupplyOutcome | null): SearchReason[] {
  const list: SearchReason[] = []
  if (decisions.beddingSetId !== undefined && (input.beddingSets ?? []).length > 1)
    list.push({ code: 'bedding', setId: decisions.beddingSetId })
  const bedW = input.bedHeaters
    .filter(({ id }) => decisions.bedHeaterIds.includes(id))
    .reduce((sum, heater) => sum + heater.powerW, 0)
  if (bedW > 0) list.push({ code: 'bed-heat-first', valueW: bedW })
  list.push(...shapeOf(input, decisions))
  if (decisions.currentA !== null && supply !== null && decisions.currentA < supply.usableA)
    list.push({ code: 'less-current', valueA: decisions.currentA })
  if (
    input.battery !== null &&
    decisions.chargeLimit01 < Math.min(input.battery.chargeLimit01, input.decisions.chargeLimit01)
  )
    list.push({ code: 'charge-enough', value01: decisions.chargeLimit01 })
  if (decisions.covers && !input.decisions.covers) list.push({ code: 'covers-up' })
  if (decisions.windowGapMm > 0 && input.decisions.windowGapMm <= 0) list.push({ code: 'window-open' })
  return list
}

/** A lower level while asleep, and warming up before rising. */
function shapeOf(input: NightInput, { setPoints }: NightDecisions): SearchReason[] {
  const asleepC = setPoints.findLast(({ fromUtc }) => fromUtc <= input.sleepFromUtc)?.tempC ?? null
  const warmUp = setPoints.find(
    ({ fromUtc, tempC }) => fromUtc > input.sleepFromUtc && fromUtc <= input.sleepToUtc && tempC !== null,
  )
  if (warmUp?.tempC === undefined || warmUp.tempC === null || warmUp.tempC <= (asleepC ?? -Infinity)) return []
  const onSite =
    input.supply !== null && warmUp.fromUtc >= input.supply.plugInUtc && warmUp.fromUtc < input.supply.unplugUtc
  const lower: SearchReason[] = asleepC === null ? [] : [{ code: 'lower-asleep', valueC: asleepC }]
  return [...lower, { code: 'pre-warm', fromUtc: warmUp.fromUtc, onSite }]
}
