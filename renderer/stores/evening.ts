/** One evening as a ruler: its two ends and its marks. Load, night and checklist all share it. */
import type { NightPlan } from '../../shared/plan/index.ts'
import { S_PER_HOUR } from '../../shared/units/index.ts'
import type { Utc } from '../../shared/units/index.ts'

export const MARK_NAMES = [
  'arrive',
  'sunset',
  'quiet-from',
  'ban-from',
  'bedtime',
  'coldest',
  'wake',
  'dawn',
  'ban-to',
  'quiet-to',
  'depart',
  'sunrise',
  'target',
] as const

export type MarkName = (typeof MARK_NAMES)[number]
export type Mark = { readonly name: MarkName; readonly atUtc: Utc }
export type Evening = {
  readonly fromUtc: number
  readonly toUtc: number
  readonly zone: string
  readonly marks: readonly Mark[]
}

const STEP_S = 1800
const LEAD_S = 1800

/** The marks of a night in time order, and a ruler that holds all of them. */
export function eveningOf(night: NightPlan): Evening {
  const { clock, outcome } = night
  const instants: Readonly<Record<MarkName, Utc | null>> = {
    arrive: clock.arriveUtc,
    sunset: clock.sun.sunsetUtc,
    'quiet-from': clock.quietFromUtc,
    'ban-from': clock.banFromUtc,
    bedtime: clock.bedtimeUtc,
    coldest: outcome.coldestBedUtc,
    wake: clock.wakeUtc,
    dawn: clock.sun.civilDawnUtc,
    'ban-to': clock.banToUtc,
    'quiet-to': clock.quietToUtc,
    depart: clock.departUtc,
    sunrise: clock.sun.sunriseUtc,
    target: clock.beAtTargetUtc,
  }
  const marks = MARK_NAMES.flatMap((name): readonly Mark[] => {
    const atUtc = instants[name]
    return atUtc === null ? [] : [{ name, atUtc }]
  }).sort((a, b) => a.atUtc - b.atUtc)
  const from = Math.min(clock.arriveUtc, clock.sun.sunsetUtc ?? Infinity) - LEAD_S
  const to = Math.max(clock.departUtc, clock.sun.sunriseUtc ?? 0, clock.beAtTargetUtc ?? 0) + LEAD_S
  return {
    fromUtc: Math.floor(from / STEP_S) * STEP_S,
    toUtc: Math.ceil(to / STEP_S) * STEP_S,
    zone: clock.zone,
    marks,
  }
}

/** Place of an instant on the ruler, 0 at its start and 1 at its end. */
export const share01 = (evening: Evening, atUtc: number): number =>
  (atUtc - evening.fromUtc) / (evening.toUtc - evening.fromUtc)

export const instantAt = (evening: Evening, share: number): Utc =>
  Math.round(evening.fromUtc + Math.min(1, Math.max(0, share)) * (evening.toUtc - evening.fromUtc)) as Utc

/** The full hours on the ruler. */
export const hoursOf = ({ fromUtc, toUtc }: Evening): readonly Utc[] =>
  Array.from(
    { length: Math.max(0, Math.ceil((toUtc - Math.ceil(fromUtc / S_PER_HOUR) * S_PER_HOUR) / S_PER_HOUR)) },
    (_, index) => ((Math.ceil(fromUtc / S_PER_HOUR) + index) * S_PER_HOUR) as Utc,
  )

/** The row of the night's series that holds an instant. */
export function rowAt(times: readonly Utc[], atUtc: number): number {
  let low = 0
  let high = times.length - 1
  while (low < high) {
    const middle = Math.ceil((low + high) / 2)
    if ((times[middle] ?? Infinity) <= atUtc) low = middle
    else high = middle - 1
  }
  return low
}
