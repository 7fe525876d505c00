/** The night from arrival to departure, step by step; one run is cheap enough for a search to do hundreds. */
import { COLD_BELOW_C } from './battery.ts'
import { easesBelowC } from './heater.ts'
import { at } from './network-step.ts'
import { buildNetwork } from './network.ts'
import { supplyNow } from './night-power.ts'
import { record } from './night-record.ts'
import { heatContentJ, startRun, utcOf } from './night-state.ts'
import { INTEGRATION_S, passings } from './night-prepare.ts'
import { advance } from './night-step.ts'
import { latch, untilSwitchS } from './night-switches.ts'
import type { Prepared } from './night-prepare.ts'
import type { PaneColumns, Run, RunColumns, RunTotals, Segment, StopReason } from './night-state.ts'
import type { Utc } from '../units/index.ts'
import type { NightDecisions, NightInput } from './types.ts'

/** The first step after an event is this many times shorter than the longest; coarse nights, that only rank plans, do with less. */
const FIRST_PART = 50
const FIRST_PART_COARSE = 10

export type NightRun = {
  readonly columns: RunColumns
  readonly panes: readonly PaneColumns[]
  readonly totals: RunTotals
  readonly charge01: number
  readonly leisure01: number
  readonly stopsUtc: Utc | null
  readonly stopReason: StopReason | null
  readonly leastFreshM3PerH: number
  readonly shellWPerK: number
  readonly freshWPerK: number
  readonly gapWPerK: number
  readonly leisureFrozenUtc: Utc | null
}

/**
 * Runs one night under given decisions.
 * Decisions in °C, A, mm and fractions; panes one by one only where asked for. Result: one row a step, stamped at the step's end (temperatures then, powers as means over the step), and sums.
 * Bounds of the integration fall on every event, so that a set-point or a plug takes effect at its own second.
 */
export function runNight(prepared: Prepared, decisions: NightDecisions, withPanes = false): NightRun {
  const run = startRun(prepared, decisions, withPanes)
  const { arriveUtc } = prepared.input
  const course: Course = {
    events: eventsOf(prepared, decisions),
    next: 0,
    sinceUtc: arriveUtc,
    segment: segmentAt(prepared, decisions, arriveUtc),
  }
  for (let step = 0; step < prepared.steps; step += 1) {
    beginStep(run)
    for (let knot = prepared.boundKnot[step] ?? 0; knot < (prepared.boundKnot[step + 1] ?? 0); knot += 1)
      runBetween(run, course, knot)
    record(run, step, at(prepared.boundsUtc, step + 1), at(prepared.boundsUtc, step + 1) - at(prepared.boundsUtc, step))
  }
  return finish(run)
}

/** Where a run stands between what was foreseen to switch: what holds now, since when, and what comes next. */
type Course = { readonly events: readonly number[]; next: number; sinceUtc: number; segment: Segment }

/** Runs from one knot of the weather to the next, in parts that end on every event. */
function runBetween(run: Run, course: Course, knot: number): void {
  const { prepared, decisions } = run
  const fromUtc = at(prepared.knotsUtc, knot)
  const toUtc = at(prepared.knotsUtc, knot + 1)
  const lengthS = toUtc - fromUtc
  let atUtc = fromUtc
  while (atUtc < toUtc - 1e-6) {
    while (course.next < course.events.length && (course.events[course.next] ?? 0) <= atUtc + 1e-6) {
      course.sinceUtc = course.events[course.next] ?? course.sinceUtc
      course.segment = segmentAt(prepared, decisions, course.sinceUtc)
      course.next += 1
    }
    const { segment } = course
    if (latch(run, segment, atUtc)) course.sinceUtc = atUtc
    run.covers = segment.covers
    run.wet.covers = segment.covers
    const leftS = Math.min(toUtc, course.events[course.next] ?? Infinity) - atUtc
    const evenS = leftS / Math.ceil(leftS / longestPartS(prepared, atUtc - course.sinceUtc) - 1e-9)
    const stepS = Math.min(evenS, untilSwitchS(run, segment, atUtc))
    const wentS = advance(run, segment, {
      knot,
      from01: (atUtc - fromUtc) / lengthS,
      to01: (atUtc + stepS - fromUtc) / lengthS,
      atUtc,
      stepS,
    })
    atUtc += wentS
    if (wentS < stepS) course.sinceUtc = atUtc
  }
}

/** Short steps just after something switched, while the air moves fast; longer ones as it settles. */
const longestPartS = (prepared: Prepared, sinceEventS: number): number =>
  Math.min(
    prepared.integrationS,
    Math.max(
      prepared.integrationS / (prepared.integrationS > INTEGRATION_S ? FIRST_PART_COARSE : FIRST_PART),
      sinceEventS / 2,
    ),
  )

/** Instants at which something switches, in order. */
function eventsOf(prepared: Prepared, decisions: NightDecisions): readonly number[] {
  const { input } = prepared
  const { supply, fault } = input
  const instants: number[] = decisions.setPoints.map((point) => point.fromUtc)
  instants.push(input.sleepFromUtc, input.sleepToUtc)
  if (decisions.coversFromUtc !== undefined) instants.push(decisions.coversFromUtc)
  if (decisions.bedHeatersFromUtc !== undefined) instants.push(decisions.bedHeatersFromUtc)
  if (supply !== null) instants.push(supply.plugInUtc, supply.unplugUtc)
  if (fault !== null) {
    instants.push(fault.atUtc)
    if (fault.kind === 'breaker-trips' && fault.resetUtc !== null) instants.push(fault.resetUtc)
  }
  for (const levelC of levelsC(input, decisions)) instants.push(...passings(prepared, levelC))
  return instants
    .filter((instant) => instant > input.arriveUtc && instant < input.departUtc)
    .sort((left, right) => left - right)
}

/** Outside temperatures at which the heater or the charger turns to something else, °C. */
function levelsC({ heater, battery }: NightInput, decisions: NightDecisions): readonly number[] {
  const levels: number[] = []
  if (battery !== null && battery.coldOverheadW > 0) levels.push(COLD_BELOW_C)
  if (heater.kind === 'heat-pump' && typeof heater.lowerLimitC === 'number') levels.push(heater.lowerLimitC)
  if (heater.canCool) for (const { tempC } of decisions.setPoints) if (tempC !== null) levels.push(easesBelowC(tempC))
  return levels
}

function segmentAt(prepared: Prepared, decisions: NightDecisions, atUtc: number): Segment {
  const { input } = prepared
  let ruling: NightDecisions['setPoints'][number] | null = null
  for (const point of decisions.setPoints) {
    if (point.fromUtc <= atUtc && (ruling === null || point.fromUtc >= ruling.fromUtc)) ruling = point
  }
  return {
    supply: supplyNow(prepared, decisions, atUtc),
    setC: input.heater.kind === 'none' ? null : (ruling?.tempC ?? null),
    asleep: atUtc >= input.sleepFromUtc && atUtc < input.sleepToUtc,
    bedHeat: atUtc >= (decisions.bedHeatersFromUtc ?? input.sleepFromUtc) && atUtc < input.sleepToUtc,
    covers: decisions.covers || atUtc >= (decisions.coversFromUtc ?? Infinity),
    failed: input.fault?.kind === 'heater-fails' && atUtc >= input.fault.atUtc,
  }
}

/** A step's sums from nothing. */
function beginStep({ sums }: Run): void {
  sums.heatJ = 0
  sums.electricJ = 0
  sums.bedJ = 0
  sums.supplyJ = 0
  sums.chargeJ = 0
  sums.wiringJ = 0
}

function finish(run: Run): NightRun {
  const { prepared, totals, moisture } = run
  const nightS = prepared.input.departUtc - prepared.input.arriveUtc
  totals.storedJ = heatContentJ(run.network, run.temps) - run.startJ
  const filmKg = moisture.filmKg.reduce((sum, kg) => sum + kg, 0)
  totals.waterStoredKg = moisture.ratio * prepared.airKg + filmKg - run.startWaterKg
  const meanWind = prepared.windMPerS.reduce((sum, wind) => sum + wind, 0) / prepared.windMPerS.length
  return {
    columns: run.columns,
    panes: run.panes,
    totals,
    charge01: run.power.charge01,
    leisure01: run.power.leisure01,
    stopsUtc: run.stopsUtc === null ? null : utcOf(run.stopsUtc),
    stopReason: run.stopReason,
    leastFreshM3PerH: run.leastFreshM3PerH,
    shellWPerK: buildNetwork(prepared.input.cabin, meanWind, run.decisions.covers, prepared.airJPerM3K).shellWPerK,
    freshWPerK: run.freshJPerK / nightS,
    gapWPerK: run.gapJPerK / nightS,
    leisureFrozenUtc: run.leisureFrozenUtc === null ? null : utcOf(run.leisureFrozenUtc),
  }
}
