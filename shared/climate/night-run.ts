/** The night from arrival to departure, step by step; one run is cheap enough for a search to do hundreds. */
import { at } from './network-step.ts'
import { supplyNow } from './night-power.ts'
import { record } from './night-record.ts'
import { heatContentJ, startRun, utcOf } from './night-state.ts'
import { INTEGRATION_S } from './night-prepare.ts'
import { advance } from './night-step.ts'
import { latch, untilSwitchS } from './night-switches.ts'
import type { Prepared } from './night-prepare.ts'
import type { PaneColumns, Run, RunColumns, RunTotals, Segment, StopReason } from './night-state.ts'
import type { Utc } from '../units/index.ts'
import type { NightDecisions } from './types.ts'

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
  const events = eventsOf(prepared, decisions)
  let nextEvent = 0
  let sinceUtc: number = prepared.input.arriveUtc
  let segment = segmentAt(prepared, decisions, sinceUtc)
  for (let step = 0; step < prepared.steps; step += 1) {
    const fromUtc = at(prepared.boundsUtc, step)
    const toUtc = at(prepared.boundsUtc, step + 1)
    const lengthS = toUtc - fromUtc
    beginStep(run, step)
    let atUtc = fromUtc
    while (atUtc < toUtc - 1e-6) {
      while (nextEvent < events.length && (events[nextEvent] ?? 0) <= atUtc + 1e-6) {
        sinceUtc = events[nextEvent] ?? sinceUtc
        segment = segmentAt(prepared, decisions, sinceUtc)
        nextEvent += 1
      }
      if (latch(run, segment, atUtc)) sinceUtc = atUtc
      const leftS = Math.min(toUtc, events[nextEvent] ?? Infinity) - atUtc
      const evenS = leftS / Math.ceil(leftS / longestPartS(prepared, atUtc - sinceUtc) - 1e-9)
      const stepS = Math.min(evenS, untilSwitchS(run, segment, atUtc))
      advance(run, segment, {
        step,
        from01: (atUtc - fromUtc) / lengthS,
        to01: (atUtc + stepS - fromUtc) / lengthS,
        atUtc,
        stepS,
      })
      atUtc += stepS
    }
    record(run, step, toUtc, lengthS)
  }
  return finish(run)
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
function eventsOf({ input }: Prepared, decisions: NightDecisions): readonly number[] {
  const { supply, fault } = input
  const instants: number[] = decisions.setPoints.map((point) => point.fromUtc)
  instants.push(input.sleepFromUtc, input.sleepToUtc)
  if (decisions.bedHeatersFromUtc !== undefined) instants.push(decisions.bedHeatersFromUtc)
  if (supply !== null) instants.push(supply.plugInUtc, supply.unplugUtc)
  if (fault !== null) {
    instants.push(fault.atUtc)
    if (fault.kind === 'breaker-trips' && fault.resetUtc !== null) instants.push(fault.resetUtc)
  }
  return instants
    .filter((instant) => instant > input.arriveUtc && instant < input.departUtc)
    .sort((left, right) => left - right)
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
    failed: input.fault?.kind === 'heater-fails' && atUtc >= input.fault.atUtc,
  }
}

/** Covers of a step, and its sums from nothing. */
function beginStep(run: Run, step: number): void {
  const { prepared, decisions, sums } = run
  run.covers = decisions.covers || at(prepared.boundsUtc, step) >= (decisions.coversFromUtc ?? Infinity)
  run.wet.covers = run.covers
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
    shellWPerK: prepared.networkAt(meanWind, run.decisions.covers).shellWPerK,
    freshWPerK: run.freshJPerK / nightS,
    gapWPerK: run.gapJPerK / nightS,
    leisureFrozenUtc: run.leisureFrozenUtc === null ? null : utcOf(run.leisureFrozenUtc),
  }
}
