/**
 * One integration step of the night: what may run, how the air moves, heat, water, heat again, electricity.
 * Heat is solved twice: with the last step's condensation, then with this step's, so that both meet at second order.
 */
import { J_PER_WH, S_PER_HOUR } from '../units/index.ts'
import { coilKgPerSPerW, coolingAimC, copAt, coolingCopAt, electricPerHeat } from './heater.ts'
import { EVAPORATION_J_PER_KG, co2After, moistureStep, settleFog } from './moisture.ts'
import { gapM3PerH, leakageM3PerH } from './network-air.ts'
import { BED, FIRST_PANE, FLOOR, FRONT, GAMMA, MASS, at, factorise, stages } from './network-step.ts'
import { BODY_SKY_VIEW_01 } from './network.ts'
import { builtInLimitW, heatsFromSupply, inverterHeaterW, mainsHeaterW, settle } from './night-power.ts'
import { OUTSIDE_CO2_PPM } from './night-state.ts'
import type { Stage } from './network-step.ts'
import type { Run, Segment, StopReason } from './night-state.ts'

/** Daylight that comes through glass, all windows together over level ground, and what a cover lets through of it (estimates). */
const GLASS_DAYLIGHT_01 = 0.45
const COVER_DAYLIGHT_01 = 0.1
/** Share of a sleeper's and a bed heater's warmth that goes into the bed and what it lies on; the rest to the bed's air (estimate). */
const BED_MASS_01 = 0.25
/** A heater off while this much is missing counts as stopped, K (engine's convention). */
const STOPPED_BELOW_K = 0.5
/** Leaks are shared like the air itself: front 0.4 (estimate). */
const FRONT_LEAK_01 = 0.4
/** Condensation that turns out this much different from the first guess is worth solving heat again, W (engine's convention; grid-independence is tested). */
const SOLVE_AGAIN_W = 0.2

/** Where an integration step lies: its outer step, its bounds as shares of it, and its length. */
export type Part = {
  readonly step: number
  readonly from01: number
  readonly to01: number
  readonly atUtc: number
  readonly stepS: number
}

export function advance(run: Run, segment: Segment, part: Part): void {
  const { prepared } = run
  const { input } = prepared
  const bedW = segment.bedHeat && bedHeatersRun(run, segment) ? run.bedHeaterW : 0
  const held = segment.setC === null ? null : heldOff(run, segment)
  const limitW = segment.setC === null || held !== null ? 0 : electricLimitW(run, segment, part, bedW)
  const on = segment.setC !== null && limitW > input.heater.awakeLoadW
  if (on && run.heatingSinceUtc === null) run.heatingSinceUtc = part.atUtc
  const exchangeM3PerH = setAir(run, on, part)
  factorise(run.factor, run.network, run.air, part.stepS, run)
  const release = segment.asleep ? prepared.asleep : prepared.awake
  const middle01 = part.from01 + GAMMA * (part.to01 - part.from01)
  const firstSkyW = sources(run, run.first, part.step, middle01, release.sensibleW + bedW)
  const firstGainW = run.gainW
  const secondSkyW = sources(run, run.second, part.step, part.to01, release.sensibleW + bedW)
  const secondGainW = run.gainW
  solveHeat(run, segment.setC, on, limitW, part)
  const outKg = moveWater(run, part, exchangeM3PerH, release.waterKgPerS)
  const latentW = correctCondensation(run)
  if (latentW !== null) solveHeat(run, segment.setC, on, limitW, part)
  const gainW = run.heatW + (latentW ?? 0)
  const outsideEndC = along(prepared.outsideC, part.step, part.to01)
  tally(
    run,
    run.first,
    part.stepS * (1 - GAMMA),
    along(prepared.outsideC, part.step, middle01),
    gainW + firstGainW,
    firstSkyW,
  )
  tally(run, run.second, part.stepS * GAMMA, outsideEndC, gainW + secondGainW, secondSkyW)
  noteStop(run, segment, part.atUtc, on, held)
  run.temps.set(run.second.temps)
  settleFog(run.moisture, run.wet, Math.min(at(run.temps, FRONT), at(run.temps, BED)))
  const { totals, moisture } = run
  totals.waterInKg += release.waterKgPerS * part.stepS
  totals.waterOutKg += outKg
  totals.drainedKg += moisture.drainedKg
  moisture.co2Ppm = co2After(
    moisture.co2Ppm,
    OUTSIDE_CO2_PPM,
    input.cabin.airVolumeM3,
    exchangeM3PerH,
    release.co2LPerH,
    part.stepS,
  )
  if (segment.asleep) run.leastFreshM3PerH = Math.min(run.leastFreshM3PerH, exchangeM3PerH)
  const jPerKPerM3H = (prepared.airJPerM3K * part.stepS) / S_PER_HOUR
  run.freshJPerK += exchangeM3PerH * jPerKPerM3H
  run.gapJPerK += run.gapM3PerH * jPerKPerM3H
  if (on) totals.overheadWh += (input.heater.awakeLoadW * part.stepS) / J_PER_WH
  moveElectricity(run, segment, part, along(prepared.outsideC, part.step, (part.from01 + part.to01) / 2), bedW)
}

/** Why the heater may not run now; null where it may. */
function heldOff(run: Run, segment: Segment): StopReason | null {
  if (segment.failed) return 'failed'
  if (run.switchedOff) return 'switched-off'
  return !run.prepared.input.heater.mayRunAllNight && segment.asleep ? 'may-not-run' : null
}

/** Whether the battery that the bed heaters hang on is above its reserve, or the supply carries them. */
function bedHeatersRun(run: Run, segment: Segment): boolean {
  const { battery, leisure } = run.prepared.input
  if (segment.supply.wattsW > 0) return true
  if (battery !== null) return !run.atReserve
  return leisure !== null && !run.leisureEmpty
}

/** Electricity that the heater with its fan and controls may take, W. */
function electricLimitW(run: Run, segment: Segment, part: Part, bedW: number): number {
  const { prepared } = run
  if (heatsFromSupply(prepared.input))
    return segment.supply.wattsW > 0
      ? mainsHeaterW(prepared, segment.supply)
      : run.leisureEmpty
        ? 0
        : inverterHeaterW(prepared, segment.supply, { leisure01: run.power.leisure01, bedW, stepS: part.stepS })
  return (
    builtInLimitW(
      prepared,
      segment.supply,
      run.atReserve,
      along(prepared.outsideC, part.step, (part.from01 + part.to01) / 2),
    ) - bedW
  )
}

/** Sets the part's network by its wind and the air exchange, W/K; gives the outdoor air, m3/h. */
function setAir(run: Run, on: boolean, part: Part): number {
  const { prepared, air, decisions } = run
  run.windMPerS = along(prepared.windMPerS, part.step, (part.from01 + part.to01) / 2)
  run.network = prepared.networkAt(run.windMPerS, run.covers)
  const { network } = run
  const { cabin } = prepared.input
  const insideC = (at(run.temps, FRONT) + at(run.temps, BED)) / 2
  const differenceK = insideC - along(prepared.outsideC, part.step, part.from01)
  run.gapM3PerH = gapM3PerH(decisions.windowGapMm, decisions.windowSides, run.windMPerS, differenceK)
  const leak = leakageM3PerH(cabin)
  const drawn = on ? cabin.freshAirM3PerH : 0
  const wPerM3H = prepared.airJPerM3K / S_PER_HOUR
  air.frontWPerK = (leak * FRONT_LEAK_01 + run.gapM3PerH / 2) * wPerM3H
  air.bedWPerK = (leak * (1 - FRONT_LEAK_01) + run.gapM3PerH / 2) * wPerM3H
  air.drawnWPerK = drawn * wPerM3H
  air.mixingWPerK = on ? network.mixingFanWPerK : network.mixingStillWPerK
  return leak + drawn + run.gapM3PerH
}

/** Writes the sources of one instant, W into each node, and their inner part to `gainW`; gives the heat that the sky takes, W. */
function sources(run: Run, stage: Stage, step: number, share01: number, bedSourceW: number): number {
  const { prepared, network, moisture, air } = run
  const out = stage.sources
  const outsideC = along(prepared.outsideC, step, share01)
  const perFilmK = along(prepared.skyWPerM2, step, share01) / network.outerFilmWPerM2K
  const bodyC = outsideC - perFilmK * BODY_SKY_VIEW_01
  const lining = network.panes.length
  out[FRONT] = network.frontBodyWPerK * bodyC + (air.frontWPerK + air.drawnWPerK) * outsideC
  out[BED] = network.bedBodyWPerK * bodyC + air.bedWPerK * outsideC + bedSourceW * (1 - BED_MASS_01)
  out[FLOOR] = network.floorOutWPerK * outsideC
  let skyW = (network.frontBodyWPerK + network.bedBodyWPerK) * (outsideC - bodyC)
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
  const daylight = along(prepared.daylightWPerM2, step, share01)
  const sunW = daylight * glassM2 * GLASS_DAYLIGHT_01 * (run.covers ? COVER_DAYLIGHT_01 : 1)
  out[MASS] = bedSourceW * BED_MASS_01 + sunW + EVAPORATION_J_PER_KG * at(moisture.flowKgPerS, lining)
  run.gainW = bedSourceW + sunW + latentW
  return skyW
}

/** The thermostat, solved with the step: just the heat that ends it at the set-point, within what heater and electricity allow. */
function solveHeat(run: Run, setC: number | null, on: boolean, limitW: number, part: Part): void {
  const { heater } = run.prepared.input
  // Half way: at the part's end the heat pump's curve would be a little ahead all night, and a battery's last minute with it.
  const outsideC = along(run.prepared.outsideC, part.step, (part.from01 + part.to01) / 2)
  stages(run.factor, run.temps, run, 0)
  run.heatW = 0
  run.wet.coilKgPerS = 0
  run.electricW = on ? heater.awakeLoadW : 0
  if (!on || setC === null) return
  const missingK = setC - at(run.second.temps, FRONT)
  const spareW = limitW - heater.awakeLoadW
  if (missingK > 0) {
    const cop = copAt(heater, outsideC)
    run.heatW = Math.min(missingK / run.factor.risePerW, heater.maxHeatW, spareW * cop)
    run.electricW += run.heatW * electricPerHeat(heater, cop, run.heatW)
  } else if (heater.canCool) cool(run, coolingAimC(setC, outsideC), spareW, outsideC)
  if (run.heatW !== 0) stages(run.factor, run.temps, run, run.heatW)
}

/** Cooling by a coil: what dries the air on the way costs capacity and electricity as well. */
function cool(run: Run, toC: number, spareW: number, outsideC: number): void {
  const missingK = at(run.second.temps, FRONT) - toC
  if (missingK <= 0) return
  const { heater } = run.prepared.input
  const cop = coolingCopAt(outsideC)
  const kgPerSPerW = coilKgPerSPerW(at(run.temps, BED))
  const latentPerSensible = EVAPORATION_J_PER_KG * kgPerSPerW * Math.max(0, run.moisture.ratio - run.wet.coilRatio)
  const mostW = Math.min(heater.maxHeatW, spareW * cop) / (1 + latentPerSensible)
  const sensibleW = Math.min(missingK / run.factor.risePerW, mostW)
  run.heatW = -sensibleW
  run.wet.coilKgPerS = sensibleW * kgPerSPerW
  run.electricW += (sensibleW * (1 + latentPerSensible)) / cop
}

/** Water over the step, at temperatures halfway to the first guess; gives what left with the air, kg. */
function moveWater(run: Run, part: Part, exchangeM3PerH: number, releaseKgPerS: number): number {
  const { prepared, wet, middle, temps, second, scratch, moisture } = run
  for (let node = 0; node < temps.length; node += 1) middle[node] = (at(temps, node) + at(second.temps, node)) / 2
  scratch.lagged.set(moisture.flowKgPerS)
  wet.stepS = part.stepS
  wet.exchangeKgPerS = (exchangeM3PerH * prepared.airKgPerM3) / S_PER_HOUR
  wet.outsideRatio = along(prepared.outsideRatio, part.step, (part.from01 + part.to01) / 2)
  wet.releaseKgPerS = releaseKgPerS
  wet.coldestAirC = Math.min(at(second.temps, FRONT), at(second.temps, BED))
  return moistureStep(moisture, wet, middle, scratch)
}

/** Puts this step's condensation in the place of the last one's; gives the difference in all, W, or null where it is not worth solving again. */
function correctCondensation(run: Run): number | null {
  const { moisture, scratch, first, second, network } = run
  const lining = network.panes.length
  let changeW = 0
  let sizeW = 0
  for (let surface = 0; surface <= lining; surface += 1) {
    const difference = EVAPORATION_J_PER_KG * (at(moisture.flowKgPerS, surface) - at(scratch.lagged, surface))
    changeW += difference
    sizeW += Math.abs(difference)
  }
  if (sizeW < SOLVE_AGAIN_W) return null
  for (let surface = 0; surface <= lining; surface += 1) {
    const difference = EVAPORATION_J_PER_KG * (at(moisture.flowKgPerS, surface) - at(scratch.lagged, surface))
    const node = surface === lining ? MASS : FIRST_PANE + surface
    first.sources[node] = at(first.sources, node) + difference
    second.sources[node] = at(second.sources, node) + difference
  }
  return changeW
}

/** Adds one stage's flows to the sums: what entered, and what left through shell, sky and air. */
function tally(run: Run, stage: Stage, seconds: number, outsideC: number, insideW: number, skyW: number): void {
  const { network, totals, air } = run
  const front = at(stage.temps, FRONT) - outsideC
  const bed = at(stage.temps, BED) - outsideC
  let shellW =
    network.frontBodyWPerK * front +
    network.bedBodyWPerK * bed +
    network.floorOutWPerK * (at(stage.temps, FLOOR) - outsideC)
  for (let index = 0; index < network.panes.length; index += 1) {
    shellW += (network.panes[index]?.outerWPerK ?? 0) * (at(stage.temps, FIRST_PANE + index) - outsideC)
  }
  totals.heatInJ += insideW * seconds
  totals.shellJ += shellW * seconds
  totals.skyJ += skyW * seconds
  totals.airJ += (air.frontWPerK * front + (air.bedWPerK + air.drawnWPerK) * bed) * seconds
}

/** Remembers the first instant at which warmth is asked for and none comes. */
function noteStop(run: Run, segment: Segment, atUtc: number, on: boolean, held: StopReason | null): void {
  if (on || segment.setC === null || run.stopsUtc !== null) return
  if (segment.setC - at(run.second.temps, FRONT) <= STOPPED_BELOW_K) return
  run.stopsUtc = atUtc
  const inverter = (run.prepared.input.leisure?.inverterMaxW ?? 0) > 0
  run.stopReason = held ?? (heatsFromSupply(run.prepared.input) && !inverter ? 'no-supply' : 'reserve')
}

function moveElectricity(run: Run, segment: Segment, part: Part, outsideC: number, bedW: number): void {
  const { prepared, sums, totals, settled } = run
  const loads = { heatingW: run.electricW, bedW }
  const floorC = at(run.temps, FLOOR)
  settle(
    { prepared, decisions: run.decisions, now: segment.supply, loads, outsideC, floorC, stepS: part.stepS },
    run.power,
    settled,
  )
  if (prepared.input.leisure?.kind === 'lfp' && segment.supply.wattsW > 0 && floorC < 0)
    run.leisureFrozenUtc ??= part.atUtc
  sums.heatJ += run.heatW * part.stepS
  sums.electricJ += run.electricW * part.stepS
  sums.bedJ += bedW * part.stepS
  sums.supplyJ += settled.supplyW * part.stepS
  sums.chargeJ += settled.intoBatteryW * part.stepS
  sums.wiringJ += settled.wiringW * part.stepS
  const hours = part.stepS / J_PER_WH
  totals.heatingWh += (run.electricW + bedW) * hours
  totals.supplyWh += settled.supplyW * hours
  totals.wiringWh += settled.wiringW * hours
  totals.keptOnWh += settled.keptOnW * hours
  totals.intoBatteryWh += Math.max(0, settled.intoBatteryW + settled.intoLeisureW) * hours
}

/** Straight line between the bounds of a step. */
const along = (values: Float64Array, step: number, share01: number): number =>
  at(values, step) + (at(values, step + 1) - at(values, step)) * share01
