/**
 * One integration step of the night: what may run, how the air moves, heat, water, heat again, electricity.
 * Heat is solved twice: with the last step's condensation, then with this step's, so that both meet at second order.
 */
import { J_PER_WH, S_PER_HOUR } from '../units/index.ts'
import { EVAPORATION_J_PER_KG, co2After, moistureStep, settleFog } from './moisture.ts'
import { gapM3PerH, leakageM3PerH } from './network-air.ts'
import { BED, FIRST_PANE, FLOOR, FRONT, GAMMA, MASS, at, factorise, forget, stages } from './network-step.ts'
import { blend } from './network-blend.ts'
import { BODY_SKY_VIEW_01 } from './network.ts'
import { builtInLimitW, heatsFromSupply, inverterHeaterW, mainsHeaterW, settle } from './night-power.ts'
import { WIND_GRAIN_M_PER_S, along, daylightAlong } from './night-prepare.ts'
import { OUTSIDE_CO2_PPM } from './night-state.ts'
import { crosses, driveOf, dryingW, holdFront, meetAim, takePower } from './night-thermostat.ts'
import type { Stage } from './network-step.ts'
import type { Part, Run, Segment, StopReason } from './night-state.ts'
import { acidFreezesC } from './sources/lead-acid.ts'

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

/** A part longer than this many times the last one cannot be foreseen from it (parts grow by half). */
const FORESEEN = 4

/**
 * Moves the night on by a part and gives the part's length, s: the one asked for, or less where the front air comes to its aim within it,
 * so that the next begins there.
 */
export function advance(run: Run, segment: Segment, longest: Part): number {
  const { prepared } = run
  const bedW = segment.bedHeat && bedHeatersRun(run, segment) ? run.bedHeaterW : 0
  const release = segment.asleep ? prepared.asleep : prepared.awake
  const bedSourceW = release.sensibleW + bedW
  solvePart(run, segment, longest, bedW, bedSourceW)
  const part = crosses(run, longest.stepS) ? upToAim(run, segment, longest, bedW, bedSourceW) : longest
  const outKg = moveWater(run, part, release.waterKgPerS)
  if (correctCondensation(run)) solveHeat(run, part)
  run.electricW += dryingW(run, part.stepS)
  const middle01 = part.from01 + GAMMA * (part.to01 - part.from01)
  tally(run, run.first, part.stepS * (1 - GAMMA), along(prepared.outsideC, part.knot, middle01))
  tally(run, run.second, part.stepS * GAMMA, along(prepared.outsideC, part.knot, part.to01))
  noteStop(run, segment, part.atUtc)
  const { temps, second } = run
  run.insideKPerS =
    (at(second.temps, FRONT) + at(second.temps, BED) - at(temps, FRONT) - at(temps, BED)) / 2 / part.stepS
  run.lastPartS = part.stepS
  temps.set(second.temps)
  settleFog(run.moisture, run.wet, Math.min(at(temps, FRONT), at(temps, BED)))
  countAir(run, segment, part, outKg)
  moveElectricity(run, segment, part, along(prepared.outsideC, part.knot, (part.from01 + part.to01) / 2), bedW)
  return part.stepS
}

/** Solves a part only as far as the front air's aim; gives what is left of it. */
function upToAim(run: Run, segment: Segment, longest: Part, bedW: number, bedSourceW: number): Part {
  let part = longest
  meetAim(run, longest.stepS, (stepS) => {
    part = shortened(longest, stepS)
    solvePart(run, segment, part, bedW, bedSourceW)
  })
  return part
}

const shortened = (part: Part, stepS: number): Part => ({
  ...part,
  to01: part.from01 + ((part.to01 - part.from01) * stepS) / part.stepS,
  stepS,
})

/** Air, sources and heat of a part, from the night's state at its start. */
function solvePart(run: Run, segment: Segment, part: Part, bedW: number, bedSourceW: number): void {
  const { setC } = segment
  const limitW = setC === null || heldOff(run, segment) !== null ? 0 : electricLimitW(run, segment, part, bedW)
  const on = setC !== null && limitW > run.prepared.input.heater.awakeLoadW
  run.drive = on ? driveOf(run, setC, limitW, part) : null
  if (on) run.heatingSinceUtc ??= part.atUtc
  setAir(run, on, part)
  factorise(run.factor, run.network, run.air, part.stepS)
  sources(run, run.first, part.knot, part.from01 + GAMMA * (part.to01 - part.from01), bedSourceW)
  sources(run, run.second, part.knot, part.to01, bedSourceW)
  solveHeat(run, part)
}

function solveHeat(run: Run, part: Part): void {
  holdFront(run, run.drive, part)
  stages(run.factor, run.temps, run)
  takePower(run, run.drive)
}

/** What the part's air brought and took: water, CO2, heat for each kelvin. */
function countAir(run: Run, segment: Segment, { stepS }: Part, outKg: number): void {
  const { prepared, totals, moisture, exchangeM3PerH } = run
  const { cabin, heater } = prepared.input
  const release = segment.asleep ? prepared.asleep : prepared.awake
  totals.waterInKg += release.waterKgPerS * stepS
  totals.waterOutKg += outKg
  totals.drainedKg += moisture.drainedKg
  moisture.co2Ppm = co2After(
    moisture.co2Ppm,
    OUTSIDE_CO2_PPM,
    cabin.airVolumeM3,
    exchangeM3PerH,
    release.co2LPerH,
    stepS,
  )
  if (segment.asleep) run.leastFreshM3PerH = Math.min(run.leastFreshM3PerH, exchangeM3PerH)
  const jPerKPerM3H = (prepared.airJPerM3K * stepS) / S_PER_HOUR
  run.freshJPerK += exchangeM3PerH * jPerKPerM3H
  run.gapJPerK += run.gapM3PerH * jPerKPerM3H
  if (run.drive !== null) totals.overheadWh += (heater.awakeLoadW * stepS) / J_PER_WH
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
      along(prepared.outsideC, part.knot, (part.from01 + part.to01) / 2),
    ) - bedW
  )
}

/** Puts the network at the part's wind and covers. */
function setNetwork(run: Run): void {
  const { prepared, windMPerS, covers } = run
  if (run.networkWindMPerS === windMPerS && run.networkCovers === covers) return
  const grains = windMPerS / WIND_GRAIN_M_PER_S
  const low = Math.floor(grains)
  blend(run.network, prepared.networkAt(low, covers), prepared.networkAt(low + 1, covers), grains - low)
  run.networkWindMPerS = windMPerS
  run.networkCovers = covers
  forget(run.factor)
}

/** Sets the part's network by its wind, and the air exchange, W/K, by wind and temperatures half way. */
function setAir(run: Run, on: boolean, part: Part): void {
  const { prepared, air, decisions } = run
  const middle01 = (part.from01 + part.to01) / 2
  run.windMPerS = along(prepared.windMPerS, part.knot, middle01)
  setNetwork(run)
  const { network } = run
  const { cabin } = prepared.input
  const foreseenK = part.stepS > run.lastPartS * FORESEEN ? 0 : (run.insideKPerS * part.stepS) / 2
  const insideC = (at(run.temps, FRONT) + at(run.temps, BED)) / 2 + foreseenK
  const differenceK = insideC - along(prepared.outsideC, part.knot, middle01)
  run.gapM3PerH = gapM3PerH(decisions.windowGapMm, decisions.windowSides, run.windMPerS, differenceK)
  const leak = leakageM3PerH(cabin)
  const drawn = on ? cabin.freshAirM3PerH : 0
  const wPerM3H = prepared.airJPerM3K / S_PER_HOUR
  air.frontWPerK = (leak * FRONT_LEAK_01 + run.gapM3PerH / 2) * wPerM3H
  air.bedWPerK = (leak * (1 - FRONT_LEAK_01) + run.gapM3PerH / 2) * wPerM3H
  air.drawnWPerK = drawn * wPerM3H
  air.mixingWPerK = on ? network.mixingFanWPerK : network.mixingStillWPerK
  run.exchangeM3PerH = leak + drawn + run.gapM3PerH
}

/** Writes the sources of one instant, W into each node, and what of them stays inside or goes to the sky. */
function sources(run: Run, stage: Stage, knot: number, share01: number, bedSourceW: number): void {
  const { prepared, network, moisture, air } = run
  const out = stage.sources
  const outsideC = along(prepared.outsideC, knot, share01)
  const perFilmK = along(prepared.skyWPerM2, knot, share01) / network.outerFilmWPerM2K
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
  const daylight = daylightAlong(prepared, knot, share01)
  const sunW = daylight * glassM2 * GLASS_DAYLIGHT_01 * (run.covers ? COVER_DAYLIGHT_01 : 1)
  out[MASS] = bedSourceW * BED_MASS_01 + sunW + EVAPORATION_J_PER_KG * at(moisture.flowKgPerS, lining)
  stage.gainW = bedSourceW + sunW + latentW
  stage.skyW = skyW
}

/** Water over the step, at temperatures halfway to the first guess; gives what left with the air, kg. */
function moveWater(run: Run, part: Part, releaseKgPerS: number): number {
  const { prepared, wet, middle, temps, second, scratch, moisture } = run
  for (let node = 0; node < temps.length; node += 1) middle[node] = (at(temps, node) + at(second.temps, node)) / 2
  scratch.lagged.set(moisture.flowKgPerS)
  wet.stepS = part.stepS
  wet.exchangeKgPerS = (run.exchangeM3PerH * prepared.airKgPerM3) / S_PER_HOUR
  wet.outsideRatio = along(prepared.outsideRatio, part.knot, (part.from01 + part.to01) / 2)
  wet.releaseKgPerS = releaseKgPerS
  wet.coldestAirC = Math.min(at(second.temps, FRONT), at(second.temps, BED))
  return moistureStep(moisture, wet, middle, scratch)
}

/** Puts this step's condensation in the place of the last one's; whether that is worth solving again. */
function correctCondensation(run: Run): boolean {
  const { moisture, scratch, first, second, network } = run
  const lining = network.panes.length
  let sizeW = 0
  for (let surface = 0; surface <= lining; surface += 1)
    sizeW += EVAPORATION_J_PER_KG * Math.abs(at(moisture.flowKgPerS, surface) - at(scratch.lagged, surface))
  if (sizeW < SOLVE_AGAIN_W) return false
  for (let surface = 0; surface <= lining; surface += 1) {
    const differenceW = EVAPORATION_J_PER_KG * (at(moisture.flowKgPerS, surface) - at(scratch.lagged, surface))
    const node = surface === lining ? MASS : FIRST_PANE + surface
    first.sources[node] = at(first.sources, node) + differenceW
    second.sources[node] = at(second.sources, node) + differenceW
    first.gainW += differenceW
    second.gainW += differenceW
  }
  return true
}

/** Adds one stage's flows to the sums: what entered, and what left through shell, sky and air. */
function tally(run: Run, stage: Stage, seconds: number, outsideC: number): void {
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
  totals.heatInJ += (stage.heatW + stage.gainW) * seconds
  totals.shellJ += shellW * seconds
  totals.skyJ += stage.skyW * seconds
  totals.airJ += (air.frontWPerK * front + (air.bedWPerK + air.drawnWPerK) * bed) * seconds
}

/** A heater on the supply ends with it: once everybody is up and has unplugged, that is the plan and no stop. */
function unpluggedAwake({ prepared: { input } }: Run, atUtc: number): boolean {
  return heatsFromSupply(input) && input.supply !== null && atUtc >= Math.max(input.supply.unplugUtc, input.sleepToUtc)
}

/** Remembers the first instant at which warmth is asked for and none comes. */
function noteStop(run: Run, segment: Segment, atUtc: number): void {
  if (run.drive !== null || segment.setC === null || run.stopsUtc !== null) return
  if (segment.setC - at(run.second.temps, FRONT) <= STOPPED_BELOW_K) return
  if (unpluggedAwake(run, atUtc)) return
  run.stopsUtc = atUtc
  const inverter = (run.prepared.input.leisure?.inverterMaxW ?? 0) > 0
  run.stopReason = heldOff(run, segment) ?? (heatsFromSupply(run.prepared.input) && !inverter ? 'no-supply' : 'reserve')
}

/** A lithium battery is harmed by charge below freezing, a lead one by the ice in its acid, charged or not. */
function leisureFreezes({ prepared, power }: Run, { supply }: Segment, floorC: number): boolean {
  const kind = prepared.input.leisure?.kind
  if (kind === 'lead') return floorC < acidFreezesC(power.leisure01)
  return kind === 'lfp' && supply.wattsW > 0 && floorC < 0
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
  if (leisureFreezes(run, segment, floorC)) run.leisureFrozenUtc ??= part.atUtc
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
