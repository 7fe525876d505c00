/** The thermostat of one part of a step: what it aims at in each stage, what that takes, and when the front air gets there. */
import { coilKgPerSPerW, coolingAimC, coolingCopAt, copAt, electricPerHeat } from './heater.ts'
import { EVAPORATION_J_PER_KG } from './moisture.ts'
import { BED, FRONT, GAMMA, REST, at } from './network-step.ts'
import { along } from './night-prepare.ts'
import type { Stage } from './network-step.ts'
import type { Drive, Part, Run } from './night-state.ts'
import type { HeaterParameters } from './types.ts'

/** Front air this close to its aim is held there, K: less than a second of any heater. */
const NEAR_K = 0.01
/** A heater that reaches its aim within a part is met at its own second where more than this would be misplaced, J: 0.02 K of the front air. */
const WORTH_J = 20
/** Shortest such part, s: less would not move the clock. */
const SHORTEST_S = 0.02
/** How closely that second is met, K. */
const MET_K = 1e-3
/** Turns of the search for it; each at least halves what is left in two, so that a part of 100 s is met within a millisecond. */
const TURNS = 40

/**
 * What the heater may do under a set-point, °C, and the electricity that it may take, W, at the outside air half way through the part:
 * at its end the heat pump's curve would be a little ahead all night, and a battery's last minute with it.
 */
export function driveOf({ prepared, temps, moisture, wet }: Run, setC: number, limitW: number, part: Part): Drive {
  const { heater } = prepared.input
  const outsideC = along(prepared.outsideC, part.knot, (part.from01 + part.to01) / 2)
  const spareW = limitW - heater.awakeLoadW
  const heatCop = copAt(heater, outsideC)
  const mostHeatW = Math.min(heater.maxHeatW, spareW * heatCop)
  if (!heater.canCool) return { setC, mostHeatW, heatCop, mostCoolW: 0, coolFromC: Infinity, coolCop: 1 }
  const coolCop = coolingCopAt(outsideC)
  const latentPerSensible =
    EVAPORATION_J_PER_KG * coilKgPerSPerW(at(temps, BED)) * Math.max(0, moisture.ratio - wet.coilRatio)
  const mostCoolW = Math.min(heater.maxHeatW, spareW * coolCop) / (1 + latentPerSensible)
  const coolFromC = coolingAimC(setC, along(prepared.outsideC, part.knot, part.from01))
  return { setC, mostHeatW, heatCop, mostCoolW, coolFromC, coolCop }
}

/** Sets what holds the front air in both stages: just the heat that meets the aim at the stage's own instant, within what heater and electricity allow. */
export function holdFront({ first, second, prepared }: Run, drive: Drive | null, part: Part): void {
  if (drive === null) {
    release(first)
    release(second)
    return
  }
  const middle01 = part.from01 + GAMMA * (part.to01 - part.from01)
  holdStage(first, drive, along(prepared.outsideC, part.knot, middle01))
  holdStage(second, drive, along(prepared.outsideC, part.knot, part.to01))
}

function release({ hold }: Stage): void {
  hold.heatToC = REST.heatToC
  hold.mostHeatW = REST.mostHeatW
  hold.coolToC = REST.coolToC
  hold.mostCoolW = REST.mostCoolW
}

function holdStage({ hold }: Stage, { setC, mostHeatW, mostCoolW }: Drive, outsideC: number): void {
  hold.heatToC = setC
  hold.mostHeatW = mostHeatW
  hold.coolToC = mostCoolW > 0 ? coolingAimC(setC, outsideC) : Infinity
  hold.mostCoolW = mostCoolW
}

/** Mean heat and electricity over the part by what the stages took, and the air that the coil dries, by the return air half way. */
export function takePower(run: Run, drive: Drive | null): void {
  const { first, second, wet, temps } = run
  const { heater } = run.prepared.input
  wet.coilKgPerS = 0
  run.heatW = 0
  run.electricW = drive === null ? 0 : heater.awakeLoadW
  if (drive === null || (first.heatW === 0 && second.heatW === 0)) return
  run.heatW = (1 - GAMMA) * first.heatW + GAMMA * second.heatW
  run.electricW += (1 - GAMMA) * electricW(heater, drive, first.heatW) + GAMMA * electricW(heater, drive, second.heatW)
  const cooledW = (1 - GAMMA) * Math.min(0, first.heatW) + GAMMA * Math.min(0, second.heatW)
  if (cooledW < 0) wet.coilKgPerS = -cooledW * coilKgPerSPerW((at(temps, BED) + at(second.temps, BED)) / 2)
}

/** Electricity of one stage's heat or cooling, W, without fan and controls and without what the coil dries. */
const electricW = (heater: HeaterParameters, { heatCop, coolCop }: Drive, heatW: number): number =>
  heatW > 0 ? heatW * electricPerHeat(heater, heatCop, heatW) : -heatW / coolCop

/** Electricity for the water that the coil took out of the air over the part, W. */
export const dryingW = ({ drive, moisture }: Run, stepS: number): number =>
  drive === null ? 0 : (EVAPORATION_J_PER_KG * moisture.drainedKg) / stepS / drive.coolCop

/**
 * Whether the front air, in a part just solved, comes to what it is heated or cooled to so early that the rest hangs on it: full power to the end would
 * be too much and the mean of the part too little, and either misplaces what the seconds after look like.
 */
export function crosses({ first, second, temps, drive }: Run, stepS: number): boolean {
  if (drive === null) return false
  const before = drivenW(drive, at(temps, FRONT))
  if (before === null || stepS <= SHORTEST_S) return false
  return Math.abs((1 - GAMMA) * (before - first.heatW) + GAMMA * (before - second.heatW)) * stepS >= WORTH_J
}

/**
 * Finds the length at which the front air comes to its aim, s, within a part that `crosses`; `solveFor` solves the part anew at another length,
 * and the last one solved is the one met.
 */
export function meetAim(run: Run, stepS: number, solveFor: (stepS: number) => void): void {
  const startC = at(run.temps, FRONT)
  const { first, second, drive } = run
  if (drive === null) return
  const before = drivenW(drive, startC) ?? 0
  const cools = before < 0 || (before === 0 && second.heatW < 0)
  const aimC = (): number => (cools ? second.hold.coolToC : second.hold.heatToC)
  /** How far past its aim the front air would have come, K; below zero while it is still on its way. */
  const past = (): number => {
    const misplacedW = Math.abs(before - first.heatW) + Math.abs(before - second.heatW)
    return misplacedW > 1e-9 ? misplacedW * run.factor.risePerW : -Math.abs(at(second.temps, FRONT) - aimC())
  }
  let [lowS, low] = [0, -Math.abs(startC - (cools ? drive.coolFromC : drive.setC))]
  let [highS, high] = [stepS, past()]
  for (let turn = 0; turn < TURNS; turn += 1) {
    const triedS = Math.max(
      SHORTEST_S,
      turn % 2 === 0 ? lowS + ((highS - lowS) * low) / (low - high) : (lowS + highS) / 2,
    )
    solveFor(triedS)
    const now = past()
    if (Math.abs(now) < MET_K || (now > 0 && triedS === SHORTEST_S)) return
    if (now < 0) [lowS, low] = [triedS, now]
    else [highS, high] = [triedS, now]
  }
}

/** Power that drives the front air while it is away from its aims, W; null where it is held at one. */
function drivenW({ setC, coolFromC, mostHeatW, mostCoolW }: Drive, frontC: number): number | null {
  if (frontC < setC - NEAR_K) return mostHeatW
  if (frontC > coolFromC + NEAR_K) return -mostCoolW
  return frontC > setC + NEAR_K && frontC < coolFromC - NEAR_K ? 0 : null
}
