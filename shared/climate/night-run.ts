/**
 * The night's inner loop: thermostat, heat, water and electricity, step by step, into typed arrays.
 * A numeric kernel: long, and sparing with allocation, because a search runs it hundreds of times.
 */
import { J_PER_WH, S_PER_HOUR } from '../units/index.ts'
import { copAt, coolingCopAt, electricPerHeat } from './heater.ts'
import { EVAPORATION_J_PER_KG, co2After, moistureStep } from './moisture.ts'
import { dewPointFromPa, saturationRatio, vapourPa } from './moisture-saturation.ts'
import { gapM3PerH, leakageM3PerH } from './network-air.ts'
import { skyExchangeWPerM2K } from './network-sky.ts'
import { BED, FIRST_PANE, FLOOR, FRONT, GAMMA, MASS, at, factorise, stages } from './network-step.ts'
import { BODY_SKY_VIEW_01, EMISSIVITY_01, FLOOR_SHARE_01, FRONT_SHARE_01, INNER_FILM_W_PER_M2K } from './network.ts'
import { builtInLimitW, heatsFromSupply, mainsHeaterW, settle, supplyNow } from './night-power.ts'
import type { MoistureScratch, MoistureState } from './moisture.ts'
import type { Factor, Stage } from './network-step.ts'
import type { Network } from './network.ts'
import type { PowerState, Settled, SupplyNow } from './night-power.ts'
import type { Prepared } from './night-prepare.ts'
import type { Utc } from '../units/index.ts'
import type { NightDecisions } from './types.ts'

/** CO2 outdoors, ppm (about 2025, from memory). */
export const OUTSIDE_CO2_PPM = 425
/** Inside on arrival after a heated drive, °C (common practice). */
const WARM_FROM_DRIVE_C = 18
/** Daylight that comes through glass, all windows together over level ground, bare and covered (estimates). */
const GLASS_DAYLIGHT_01 = 0.45
const COVER_DAYLIGHT_01 = 0.1
/** Share of a sleeper's and a bed heater's warmth that goes into the bed and what it lies on; the rest to the bed's air (estimate). */
const BED_MASS_01 = 0.25
/** A heater off while this much is missing counts as stopped, K. */
const STOPPED_BELOW_K = 0.5
/** Air that leaks in with the heater off is shared like the air itself: front 0.4 (estimate). */
const FRONT_LEAK_01 = 0.4

export const COLUMN_NAMES = [
  'outsideC',
  'frontAirC',
  'bedAirC',
  'massC',
  'floorC',
  'glassC',
  'operativeC',
  'feetC',
  'dewPointC',
  'relativeHumidity01',
  'co2Ppm',
  'condensateG',
  'frostG',
  'heatW',
  'heatingElectricW',
  'bedHeatW',
  'supplyW',
  'chargeW',
  'wiringLossW',
  'charge01',
  'leisure01',
] as const
export type ColumnName = (typeof COLUMN_NAMES)[number]
export type RunColumns = { readonly atUtc: Float64Array } & Readonly<Record<ColumnName, Float64Array>>

/** Sums over the night: heat in J, water in kg, electricity in Wh. */
export type RunTotals = {
  heatInJ: number
  shellJ: number
  skyJ: number
  airJ: number
  storedJ: number
  waterInKg: number
  waterOutKg: number
  waterStoredKg: number
  heatingWh: number
  supplyWh: number
  wiringWh: number
  intoBatteryWh: number
}

export type NightRun = {
  readonly columns: RunColumns
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
export type StopReason = 'reserve' | 'switched-off' | 'may-not-run' | 'no-supply' | 'failed'

type Segment = {
  readonly supply: SupplyNow
  readonly setC: number | null
  readonly asleep: boolean
  readonly bedHeat: boolean
  readonly failed: boolean
}

/**
 * Runs one night under given decisions.
 * Decisions in °C, A, mm and fractions. Result: one row a step, stamped at the step's end (temperatures then, powers as means over the step), and sums.
 * Bounds of the integration fall on every event, so that a set-point or a plug takes effect at its own second.
 */
export function runNight(prepared: Prepared, decisions: NightDecisions): NightRun {
  const run = startRun(prepared, decisions)
  const events = eventsOf(prepared, decisions)
  const { arriveUtc } = prepared.input
  let nextEvent = 0
  let segment = segmentAt(prepared, decisions, arriveUtc)
  for (let step = 0; step < prepared.steps; step += 1) {
    const fromUtc = arriveUtc + step * prepared.stepS
    const toUtc = fromUtc + prepared.stepS
    beginStep(run, step)
    let atUtc = fromUtc
    while (atUtc < toUtc - 1e-6) {
      while (nextEvent < events.length && (events[nextEvent] ?? 0) <= atUtc + 1e-6) nextEvent += 1
      segment = segmentAt(prepared, decisions, atUtc + 1e-6)
      const endUtc = Math.min(toUtc, events[nextEvent] ?? Infinity)
      const parts = Math.max(1, Math.ceil((endUtc - atUtc) / prepared.integrationS - 1e-9))
      const partS = (endUtc - atUtc) / parts
      for (let part = 0; part < parts; part += 1) advance(run, segment, step, atUtc + part * partS, partS)
      atUtc = endUtc
    }
    record(run, step, toUtc)
  }
  return finish(run)
}

type Run = {
  readonly prepared: Prepared
  readonly decisions: NightDecisions
  readonly columns: RunColumns
  readonly totals: RunTotals
  readonly temps: Float64Array
  readonly first: Stage
  readonly second: Stage
  readonly right: Float64Array
  readonly moisture: MoistureState
  readonly scratch: MoistureScratch
  readonly areasM2: Float64Array
  readonly power: PowerState
  readonly settled: Settled
  readonly bedHeaterW: number
  readonly startJ: number
  readonly startWaterKg: number
  network: Network
  factor: Factor
  gapM3PerH: number
  /** Heat from people, bed heaters, sun and condensing water at the last instant asked, W. */
  gainW: number
  heatingSinceUtc: number | null
  switchedOff: boolean
  stopsUtc: number | null
  stopReason: StopReason | null
  leastFreshM3PerH: number
  freshJPerK: number
  gapJPerK: number
  leisureFrozenUtc: number | null
  stepHeatJ: number
  stepElectricJ: number
  stepBedJ: number
  stepSupplyJ: number
  stepChargeJ: number
  stepWiringJ: number
}

function startRun(prepared: Prepared, decisions: NightDecisions): Run {
  const { input } = prepared
  const network = prepared.networkAt(at(prepared.windMPerS, 0), decisions.covers)
  const size = FIRST_PANE + network.panes.length
  const outsideC = at(prepared.outsideC, 0)
  const insideC = input.arriveInsideC ?? Math.max(outsideC, WARM_FROM_DRIVE_C)
  const temps = new Float64Array(size).fill(insideC)
  for (let node = FIRST_PANE; node < size; node += 1) temps[node] = (insideC + outsideC) / 2
  const ratio = Math.min(
    at(prepared.outsideRatio, 0),
    saturationRatio(Math.min(insideC, outsideC), prepared.pressurePa),
  )
  const bedHeaterW = input.bedHeaters.reduce(
    (sum, heater) => sum + (decisions.bedHeaterIds.includes(heater.id) ? heater.powerW : 0),
    0,
  )
  const still = { frontWPerK: 0, bedWPerK: 0, drawnWPerK: 0, mixingWPerK: network.mixingStillWPerK }
  const run: Run = {
    prepared,
    decisions,
    columns: emptyColumns(prepared.steps),
    totals: {
      heatInJ: 0,
      shellJ: 0,
      skyJ: 0,
      airJ: 0,
      storedJ: 0,
      waterInKg: 0,
      waterOutKg: 0,
      waterStoredKg: 0,
      heatingWh: 0,
      supplyWh: 0,
      wiringWh: 0,
      intoBatteryWh: 0,
    },
    temps,
    first: { sources: new Float64Array(size), temps: new Float64Array(size) },
    second: { sources: new Float64Array(size), temps: new Float64Array(size) },
    right: new Float64Array(size),
    moisture: {
      ratio,
      co2Ppm: OUTSIDE_CO2_PPM,
      filmKg: new Float64Array(network.panes.length + 1),
      flowKgPerS: new Float64Array(network.panes.length + 1),
    },
    scratch: {
      transfer: new Float64Array(network.panes.length + 1),
      saturation: new Float64Array(network.panes.length + 1),
    },
    areasM2: Float64Array.of(...network.panes.map((pane) => pane.areaM2), input.cabin.bodyAreaM2),
    power: { charge01: input.battery?.arrive01 ?? 0, leisure01: input.leisure?.arrive01 ?? 0 },
    settled: { supplyW: 0, wiringW: 0, intoBatteryW: 0, intoLeisureW: 0 },
    bedHeaterW,
    startJ: heatContent(network, temps),
    startWaterKg: ratio * prepared.airKg,
    network,
    factor: factorise(network, still, prepared.integrationS),
    gapM3PerH: 0,
    gainW: 0,
    heatingSinceUtc: null,
    switchedOff: false,
    stopsUtc: null,
    stopReason: null,
    leastFreshM3PerH: Infinity,
    freshJPerK: 0,
    gapJPerK: 0,
    leisureFrozenUtc: null,
    stepHeatJ: 0,
    stepElectricJ: 0,
    stepBedJ: 0,
    stepSupplyJ: 0,
    stepChargeJ: 0,
    stepWiringJ: 0,
  }
  return run
}

function emptyColumns(steps: number): RunColumns {
  const column = (): Float64Array => new Float64Array(steps)
  return {
    atUtc: column(),
    outsideC: column(),
    frontAirC: column(),
    bedAirC: column(),
    massC: column(),
    floorC: column(),
    glassC: column(),
    operativeC: column(),
    feetC: column(),
    dewPointC: column(),
    relativeHumidity01: column(),
    co2Ppm: column(),
    condensateG: column(),
    frostG: column(),
    heatW: column(),
    heatingElectricW: column(),
    bedHeatW: column(),
    supplyW: column(),
    chargeW: column(),
    wiringLossW: column(),
    charge01: column(),
    leisure01: column(),
  }
}

/** Instants at which something switches, in order. */
function eventsOf(prepared: Prepared, decisions: NightDecisions): readonly number[] {
  const { input } = prepared
  const { supply, fault } = input
  const instants: number[] = decisions.setPoints.map((point) => point.fromUtc)
  instants.push(input.sleepFromUtc, input.sleepToUtc)
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
  const asleep = atUtc >= input.sleepFromUtc && atUtc < input.sleepToUtc
  return {
    supply: supplyNow(prepared, decisions, atUtc),
    setC: input.heater.kind === 'none' ? null : (ruling?.tempC ?? null),
    asleep,
    bedHeat: asleep,
    failed: input.fault?.kind === 'heater-fails' && atUtc >= input.fault.atUtc,
  }
}

/** Network and air exchange of a step: wind as the mean of its ends, the gap's flow by the difference at its start. */
function beginStep(run: Run, step: number): void {
  const { prepared, decisions } = run
  const wind = (at(prepared.windMPerS, step) + at(prepared.windMPerS, step + 1)) / 2
  run.network = prepared.networkAt(wind, decisions.covers)
  const inside = (at(run.temps, FRONT) + at(run.temps, BED)) / 2
  run.gapM3PerH = gapM3PerH(decisions.windowGapMm, decisions.windowSides, wind, inside - at(prepared.outsideC, step))
  run.stepHeatJ = 0
  run.stepElectricJ = 0
  run.stepBedJ = 0
  run.stepSupplyJ = 0
  run.stepChargeJ = 0
  run.stepWiringJ = 0
}

/** Why the heater may not run now; null where it may. Latches what switches itself off. */
function heldOff(run: Run, segment: Segment, atUtc: number): StopReason | null {
  const { heater, battery } = run.prepared.input
  if (segment.failed) return 'failed'
  if (
    run.heatingSinceUtc !== null &&
    heater.switchesOffAfterS !== null &&
    atUtc - run.heatingSinceUtc >= heater.switchesOffAfterS - 1e-6
  ) {
    run.switchedOff = true
  }
  if (battery !== null && heater.switchesOffBelow01 !== null && run.power.charge01 < heater.switchesOffBelow01)
    run.switchedOff = true
  if (run.switchedOff) return 'switched-off'
  if (!heater.mayRunAllNight && segment.asleep) return 'may-not-run'
  return null
}

/** One integration step from `atUtc` over `stepS`. */
function advance(run: Run, segment: Segment, step: number, atUtc: number, stepS: number): void {
  const { prepared, network, totals } = run
  const { input } = prepared
  const { heater, cabin } = input
  const share = (atUtc - input.arriveUtc) / prepared.stepS - step
  const span = stepS / prepared.stepS
  const outsideStart = along(prepared.outsideC, step, share)
  const onSupply = heatsFromSupply(input)
  const held = segment.setC === null ? null : heldOff(run, segment, atUtc)
  // Electricity the heater may take; awake loads come out of it first.
  let electricLimitW =
    segment.setC === null || held !== null ? 0 : onSupply ? mainsHeaterW(prepared, segment.supply) : Infinity
  const bedW = segment.bedHeat && bedHeatersRun(run, segment) ? run.bedHeaterW : 0
  if (electricLimitW > 0 && !onSupply) {
    electricLimitW = builtInLimitW(prepared, segment.supply, run.power.charge01, outsideStart) - bedW
  }
  const on = segment.setC !== null && electricLimitW > heater.awakeLoadW
  if (on && run.heatingSinceUtc === null) run.heatingSinceUtc = atUtc
  // Air.
  const leak = leakageM3PerH(cabin)
  const drawn = on ? cabin.freshAirM3PerH : 0
  const wPerM3H = prepared.airJPerM3K / S_PER_HOUR
  const frontW = (leak * FRONT_LEAK_01 + run.gapM3PerH / 2) * wPerM3H
  const bedAirW = (leak * (1 - FRONT_LEAK_01) + run.gapM3PerH / 2) * wPerM3H
  const drawnW = drawn * wPerM3H
  const mixing = on ? network.mixingFanWPerK : network.mixingStillWPerK
  const known = run.factor
  if (
    known.network !== network ||
    known.stepS !== stepS ||
    known.air.frontWPerK !== frontW ||
    known.air.bedWPerK !== bedAirW ||
    known.air.drawnWPerK !== drawnW ||
    known.air.mixingWPerK !== mixing
  ) {
    run.factor = factorise(
      network,
      { frontWPerK: frontW, bedWPerK: bedAirW, drawnWPerK: drawnW, mixingWPerK: mixing },
      stepS,
    )
  }
  const release = segment.asleep ? prepared.asleep : prepared.awake
  const skyFirst = sources(run, run.first.sources, step, share + GAMMA * span, release.sensibleW + bedW)
  const gainFirst = run.gainW
  const skySecond = sources(run, run.second.sources, step, share + span, release.sensibleW + bedW)
  const gainSecond = run.gainW
  // Heat.
  stages(run.factor, run.temps, run.first, run.second, 0, run.right)
  const outsideEnd = along(prepared.outsideC, step, share + span)
  let heatW = 0
  let electricW = on ? heater.awakeLoadW : 0
  if (segment.setC !== null) {
    const missingK = segment.setC - at(run.second.temps, FRONT)
    if (on && missingK > 0) {
      const cop = copAt(heater, outsideEnd)
      const mostW = Math.min(heater.maxHeatW, (electricLimitW - heater.awakeLoadW) * cop)
      heatW = Math.min(missingK / run.factor.risePerW, mostW)
      electricW += heatW * electricPerHeat(heater, cop, heatW)
    } else if (on && heater.canCool && outsideEnd > segment.setC && missingK < 0) {
      const cop = coolingCopAt(outsideEnd)
      heatW = -Math.min(-missingK / run.factor.risePerW, heater.maxHeatW, (electricLimitW - heater.awakeLoadW) * cop)
      electricW += -heatW / cop
    }
    if (!on && missingK > STOPPED_BELOW_K && run.stopsUtc === null) {
      run.stopsUtc = atUtc
      run.stopReason = held ?? (onSupply ? 'no-supply' : 'reserve')
    }
    if (heatW !== 0) stages(run.factor, run.temps, run.first, run.second, heatW, run.right)
  }
  tally(
    run,
    run.first,
    stepS * (1 - GAMMA),
    along(prepared.outsideC, step, share + GAMMA * span),
    heatW + gainFirst,
    skyFirst,
  )
  tally(run, run.second, stepS * GAMMA, outsideEnd, heatW + gainSecond, skySecond)
  run.temps.set(run.second.temps)
  // Water and air quality.
  const exchangeM3PerH = leak + drawn + run.gapM3PerH
  const moved = moistureStep(
    run.moisture,
    {
      stepS,
      airKg: prepared.airKg,
      exchangeKgPerS: (exchangeM3PerH * prepared.airKgPerM3) / S_PER_HOUR,
      outsideRatio: along(prepared.outsideRatio, step, share + span),
      releaseKgPerS: release.waterKgPerS,
      pressurePa: prepared.pressurePa,
      covers: run.decisions.covers,
      areasM2: run.areasM2,
      temps: run.temps,
      coldestAirC: Math.min(at(run.temps, FRONT), at(run.temps, BED)),
    },
    run.scratch,
  )
  totals.waterInKg += release.waterKgPerS * stepS
  totals.waterOutKg += moved.outKg
  run.moisture.co2Ppm = co2After(
    run.moisture.co2Ppm,
    OUTSIDE_CO2_PPM,
    cabin.airVolumeM3,
    exchangeM3PerH,
    release.co2LPerH,
    stepS,
  )
  if (segment.asleep && exchangeM3PerH < run.leastFreshM3PerH) run.leastFreshM3PerH = exchangeM3PerH
  run.freshJPerK += exchangeM3PerH * wPerM3H * stepS
  run.gapJPerK += run.gapM3PerH * wPerM3H * stepS
  // Electricity.
  settle(
    {
      prepared,
      decisions: run.decisions,
      now: segment.supply,
      loads: { heatingW: electricW, bedW },
      outsideC: outsideEnd,
      floorC: at(run.temps, FLOOR),
      stepS,
    },
    run.power,
    run.settled,
  )
  if (input.leisure?.kind === 'lfp' && segment.supply.wattsW > 0 && at(run.temps, FLOOR) < 0)
    run.leisureFrozenUtc ??= atUtc
  run.stepHeatJ += heatW * stepS
  run.stepElectricJ += electricW * stepS
  run.stepBedJ += bedW * stepS
  run.stepSupplyJ += run.settled.supplyW * stepS
  run.stepChargeJ += run.settled.intoBatteryW * stepS
  run.stepWiringJ += run.settled.wiringW * stepS
  totals.heatingWh += ((electricW + bedW) * stepS) / J_PER_WH
  totals.supplyWh += (run.settled.supplyW * stepS) / J_PER_WH
  totals.wiringWh += (run.settled.wiringW * stepS) / J_PER_WH
  totals.intoBatteryWh += (Math.max(0, run.settled.intoBatteryW + run.settled.intoLeisureW) * stepS) / J_PER_WH
}

/** Whether the battery that the bed heaters hang on is above its reserve, or the supply carries them. */
function bedHeatersRun(run: Run, segment: Segment): boolean {
  const { battery, leisure } = run.prepared.input
  if (battery !== null) return run.power.charge01 > battery.reserve01 || segment.supply.wattsW > 0
  if (leisure !== null) return run.power.leisure01 > leisure.reserve01 + 1e-9 || segment.supply.wattsW > 0
  return segment.supply.wattsW > 0
}

/** Writes the sources of one instant, W into each node, and their inner part to `gainW`; gives the heat that the clear sky takes, W. */
function sources(run: Run, out: Float64Array, step: number, share: number, bedSourceW: number): number {
  const { prepared, network, moisture } = run
  const { air } = run.factor
  const outsideC = along(prepared.outsideC, step, share)
  const sky = along(prepared.skyC, step, share)
  const daylight = along(prepared.daylightWPerM2, step, share)
  const perFilmK = (EMISSIVITY_01 * skyExchangeWPerM2K(outsideC, sky) * (outsideC - sky)) / network.outerFilmWPerM2K
  const bodyDropK = perFilmK * BODY_SKY_VIEW_01
  const lining = network.panes.length
  out[FRONT] = network.frontBodyWPerK * (outsideC - bodyDropK) + (air.frontWPerK + air.drawnWPerK) * outsideC
  out[BED] = network.bedBodyWPerK * (outsideC - bodyDropK) + air.bedWPerK * outsideC + bedSourceW * (1 - BED_MASS_01)
  out[FLOOR] = network.floorOutWPerK * outsideC
  let skyW = (network.frontBodyWPerK + network.bedBodyWPerK) * bodyDropK
  let glassM2 = 0
  let latentW = EVAPORATION_J_PER_KG * at(moisture.flowKgPerS, lining)
  for (let index = 0; index < network.panes.length; index += 1) {
    const pane = network.panes[index]
    if (pane === undefined) break
    const dropK = perFilmK * pane.skyView01
    const condensingW = EVAPORATION_J_PER_KG * at(moisture.flowKgPerS, index)
    skyW += pane.outerWPerK * dropK
    glassM2 += pane.areaM2
    latentW += condensingW
    out[FIRST_PANE + index] = pane.outerWPerK * (outsideC - dropK) + condensingW
  }
  const sunW = daylight * glassM2 * GLASS_DAYLIGHT_01 * (run.decisions.covers ? COVER_DAYLIGHT_01 : 1)
  out[MASS] = bedSourceW * BED_MASS_01 + sunW + EVAPORATION_J_PER_KG * at(moisture.flowKgPerS, lining)
  run.gainW = bedSourceW + sunW + latentW
  return skyW
}

/** Adds one stage's flows to the sums: what entered, and what left through shell, sky and air. */
function tally(run: Run, stage: Stage, seconds: number, outsideC: number, insideW: number, skyW: number): void {
  const { network, totals } = run
  const { air } = run.factor
  const front = at(stage.temps, FRONT) - outsideC
  const bed = at(stage.temps, BED) - outsideC
  let shellW =
    network.frontBodyWPerK * front +
    network.bedBodyWPerK * bed +
    network.floorOutWPerK * (at(stage.temps, FLOOR) - outsideC)
  for (let index = 0; index < network.panes.length; index += 1) {
    const pane = network.panes[index]
    if (pane === undefined) break
    shellW += pane.outerWPerK * (at(stage.temps, FIRST_PANE + index) - outsideC)
  }
  totals.heatInJ += insideW * seconds
  totals.shellJ += shellW * seconds
  totals.skyJ += skyW * seconds
  totals.airJ += (air.frontWPerK * front + (air.bedWPerK + air.drawnWPerK) * bed) * seconds
}

function record(run: Run, step: number, toUtc: number): void {
  const { columns, temps, network, prepared, moisture } = run
  const outsideC = at(prepared.outsideC, step + 1)
  const bedC = at(temps, BED)
  columns.atUtc[step] = toUtc
  columns.outsideC[step] = outsideC
  columns.frontAirC[step] = at(temps, FRONT)
  columns.bedAirC[step] = bedC
  columns.massC[step] = at(temps, MASS)
  columns.floorC[step] = at(temps, FLOOR)
  recordRadiant(run, step, outsideC)
  const vapour = vapourPa(moisture.ratio, prepared.pressurePa)
  columns.dewPointC[step] = dewPointFromPa(vapour)
  columns.relativeHumidity01[step] = Math.min(1, moisture.ratio / saturationRatio(bedC, prepared.pressurePa))
  columns.co2Ppm[step] = moisture.co2Ppm
  let waterKg = 0
  let frostKg = 0
  for (let pane = 0; pane <= network.panes.length; pane += 1) {
    const surfaceC = pane < network.panes.length ? at(temps, FIRST_PANE + pane) : at(temps, MASS)
    if (surfaceC < 0) frostKg += at(moisture.filmKg, pane)
    else waterKg += at(moisture.filmKg, pane)
  }
  columns.condensateG[step] = waterKg * 1000
  columns.frostG[step] = frostKg * 1000
  columns.heatW[step] = run.stepHeatJ / prepared.stepS
  columns.heatingElectricW[step] = run.stepElectricJ / prepared.stepS
  columns.bedHeatW[step] = run.stepBedJ / prepared.stepS
  columns.supplyW[step] = run.stepSupplyJ / prepared.stepS
  columns.chargeW[step] = run.stepChargeJ / prepared.stepS
  columns.wiringLossW[step] = run.stepWiringJ / prepared.stepS
  columns.charge01[step] = run.power.charge01
  columns.leisure01[step] = run.power.leisure01
}

/** Operative temperature at the bed and at the feet: air, walls, seats and the glass one lies beside. */
function recordRadiant(run: Run, step: number, outsideC: number): void {
  const { columns, temps, network, prepared } = run
  const bedC = at(temps, BED)
  const wallM2 = prepared.input.cabin.bodyAreaM2 * (1 - FLOOR_SHARE_01) * (1 - FRONT_SHARE_01)
  const wallC = bedC - (network.bedBodyWPerK / network.scale / wallM2 / INNER_FILM_W_PER_M2K) * (bedC - outsideC)
  let weight = 2 * wallM2
  let radiant = wallM2 * wallC + wallM2 * at(temps, MASS)
  let glassSum = 0
  let glassM2 = 0
  for (let index = 0; index < network.panes.length; index += 1) {
    const pane = network.panes[index]
    if (pane === undefined) break
    const paneC = at(temps, FIRST_PANE + index)
    glassSum += pane.areaM2 * paneC
    glassM2 += pane.areaM2
    if (pane.atFront) continue
    // What the sleeper faces is the glass, or the cover before it.
    const facing = bedC - (pane.innerWPerK / network.scale / pane.areaM2 / INNER_FILM_W_PER_M2K) * (bedC - paneC)
    radiant += pane.areaM2 * facing
    weight += pane.areaM2
  }
  const radiantC = radiant / weight
  columns.glassC[step] = glassM2 > 0 ? glassSum / glassM2 : wallC
  columns.operativeC[step] = (bedC + radiantC) / 2
  columns.feetC[step] = 0.5 * at(temps, FLOOR) + 0.3 * bedC + 0.2 * radiantC
}

function heatContent(network: Network, temps: Float64Array): number {
  let joule =
    network.frontJPerK * at(temps, FRONT) +
    network.bedJPerK * at(temps, BED) +
    network.massJPerK * at(temps, MASS) +
    network.floorJPerK * at(temps, FLOOR)
  network.panes.forEach((pane, index) => {
    joule += pane.capacityJPerK * at(temps, FIRST_PANE + index)
  })
  return joule
}

function finish(run: Run): NightRun {
  const { prepared, totals, moisture } = run
  const nightS = prepared.input.departUtc - prepared.input.arriveUtc
  totals.storedJ = heatContent(run.network, run.temps) - run.startJ
  let filmKg = 0
  for (const kg of moisture.filmKg) filmKg += kg
  totals.waterStoredKg = moisture.ratio * prepared.airKg + filmKg - run.startWaterKg
  const meanWind = prepared.windMPerS.reduce((sum, wind) => sum + wind, 0) / prepared.windMPerS.length
  return {
    columns: run.columns,
    totals,
    charge01: run.power.charge01,
    leisure01: run.power.leisure01,
    stopsUtc: utcOrNull(run.stopsUtc),
    stopReason: run.stopReason,
    leastFreshM3PerH: run.leastFreshM3PerH,
    shellWPerK: prepared.networkAt(meanWind, run.decisions.covers).shellWPerK,
    freshWPerK: run.freshJPerK / nightS,
    gapWPerK: run.gapJPerK / nightS,
    leisureFrozenUtc: utcOrNull(run.leisureFrozenUtc),
  }
}

/** Whole seconds, as an instant. */
export const utcOf = (seconds: number): Utc => Math.round(seconds) as Utc
const utcOrNull = (seconds: number | null): Utc | null => (seconds === null ? null : utcOf(seconds))

/** Straight line between the bounds of a step. */
const along = (values: Float64Array, step: number, share: number): number =>
  at(values, step) + (at(values, step + 1) - at(values, step)) * share
