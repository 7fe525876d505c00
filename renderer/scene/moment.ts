/** Where everything is at one instant: the drive layout, the bed layout, or a move of the changeover between them. */
import { MOVE_S } from '../../shared/plan/index.ts'
import type { Plan } from '../../shared/plan/index.ts'
import type { Utc } from '../../shared/units/index.ts'
import type { AwayPlace, Move, Placement } from './types.ts'

export type MomentState = 'drive' | 'to-bed' | 'bed' | 'to-drive'

type Places = { readonly placements: readonly Placement[]; readonly away: readonly AwayPlace[] }

export type LayoutMoment = Places & {
  readonly state: MomentState
  readonly moves: readonly Move[]
  /** Moves made so far, the one in hand included. */
  readonly done: number
}

/** When each move of a changeover begins, and when the last one is finished. */
export type ChangeoverTimes = { readonly starts: readonly number[]; readonly endUtc: number }
export type NightTimes = { readonly toBed: ChangeoverTimes; readonly toDrive: ChangeoverTimes }

const isPlacement = (place: Placement | AwayPlace): place is Placement => 'bayId' in place

/** The load with the first `done` moves made. */
export function afterMoves(start: Places, moves: readonly Move[], done: number): Places {
  const placed = new Map(start.placements.map((place) => [place.unitId, place]))
  const away = new Map(start.away.map((place) => [place.unitId, place]))
  for (const move of moves.slice(0, done)) {
    placed.delete(move.unitId)
    away.delete(move.unitId)
    if (isPlacement(move.to)) placed.set(move.unitId, move.to)
    else away.set(move.unitId, move.to)
  }
  return { placements: [...placed.values()], away: [...away.values()] }
}

/** The moves' own steps of the checklist tell their times; where they have none, the moves end at `lastUtc` or start at `firstUtc`. */
export function nightTimes(plan: Plan, nightIndex: number): NightTimes {
  const night = plan.nights[nightIndex]
  const packing = plan.packing.nights[nightIndex]
  if (night === undefined || packing === undefined) {
    const never = { starts: [], endUtc: Infinity }
    return { toBed: never, toDrive: never }
  }
  const { bedtimeUtc, wakeUtc, departUtc } = night.clock
  const stepTimes = (ruleId: string, count: number): ChangeoverTimes | null => {
    const steps = plan.checklist.steps.filter((step) => step.ruleId === ruleId && step.nightId === night.nightId)
    const starts = steps
      .flatMap(({ startUtc }) => (startUtc === null ? [] : [startUtc as number]))
      .sort((a, b) => a - b)
    const last = starts.at(-1)
    if (starts.length !== count || last === undefined) return null
    return { starts, endUtc: last + (steps[0]?.durationS ?? MOVE_S) }
  }
  const evenly = (fromUtc: number, toUtc: number, count: number): ChangeoverTimes => ({
    starts: Array.from({ length: count }, (_, index) => fromUtc + ((toUtc - fromUtc) * index) / Math.max(1, count)),
    endUtc: toUtc,
  })
  const dusk = packing.changeover.moves.length
  const dawn = packing.changeback.moves.length
  return {
    toBed: stepTimes('move-dusk', dusk) ?? evenly(bedtimeUtc - dusk * MOVE_S, bedtimeUtc, dusk),
    toDrive: stepTimes('move-dawn', dawn) ?? evenly(wakeUtc, Math.min(departUtc, wakeUtc + dawn * MOVE_S), dawn),
  }
}

const begun = (times: ChangeoverTimes, atUtc: number): number => times.starts.filter((start) => start <= atUtc).length

/** Where everything is at `atUtc` of one night. */
export function layoutAt(plan: Plan, nightIndex: number, atUtc: Utc): LayoutMoment {
  const packing = plan.packing.nights[nightIndex]
  const drive = plan.packing.drive
  if (packing === undefined) return { state: 'drive', ...placesOf(drive), moves: [], done: 0 }
  const { toBed, toDrive } = nightTimes(plan, nightIndex)
  const out = packing.changeover.moves
  const back = packing.changeback.moves
  const doneOut = begun(toBed, atUtc)
  const doneBack = begun(toDrive, atUtc)
  if (doneBack > 0 && atUtc >= toBed.endUtc) {
    if (doneBack === back.length && atUtc >= toDrive.endUtc)
      return { state: 'drive', ...placesOf(drive), moves: back, done: back.length }
    return { state: 'to-drive', ...afterMoves(packing.bed, back, doneBack), moves: back, done: doneBack }
  }
  if (doneOut === out.length && atUtc >= toBed.endUtc) {
    return { state: 'bed', ...placesOf(packing.bed), moves: out, done: out.length }
  }
  if (doneOut > 0) return { state: 'to-bed', ...afterMoves(drive, out, doneOut), moves: out, done: doneOut }
  return { state: 'drive', ...placesOf(drive), moves: out, done: 0 }
}

const placesOf = ({ placements, away }: Places): Places => ({ placements, away })

/** The instant to go to for the next (`1`) or last (`-1`) move from `atUtc`, or null at the end of the night. */
export function stepInstant(times: NightTimes, atUtc: number, by: 1 | -1): number | null {
  const stops = [
    ...(times.toBed.starts.length === 0 ? [] : [times.toBed.starts[0] ?? 0].map((first) => first - 60)),
    ...times.toBed.starts,
    times.toBed.endUtc,
    ...times.toDrive.starts,
    times.toDrive.endUtc,
  ].filter((stop) => Number.isFinite(stop))
  if (by === 1) return stops.find((stop) => Math.ceil(stop) > atUtc) ?? null
  return stops.findLast((stop) => Math.ceil(stop) < atUtc) ?? null
}
