/**
 * One step of the network: a two-stage, stiffly accurate, second-order implicit scheme, solved in closed form.
 * A numeric kernel: it writes into typed arrays that its caller owns, so that a search can run thousands of nights.
 */
import type { Network } from './network.ts'

/** Root of 1 - 2g + g2/2: the scheme is L-stable and of second order (Alexander 1977). */
export const GAMMA = 1 - Math.SQRT1_2
const CARRY = (1 - GAMMA) / GAMMA

export const FRONT = 0
export const BED = 1
export const MASS = 2
export const FLOOR = 3
export const FIRST_PANE = 4

/** Air flows as heat, W/K: leakage and gap at either place; fresh air drawn enters at the front and leaves by the rear. */
export type AirExchange = {
  readonly frontWPerK: number
  readonly bedWPerK: number
  readonly drawnWPerK: number
  readonly mixingWPerK: number
}

/** The factored matrix of one network, one air exchange and one step length; rewritten in place, as most steps need a new one. */
export type Factor = {
  network: Network
  readonly air: { frontWPerK: number; bedWPerK: number; drawnWPerK: number; mixingWPerK: number }
  stepS: number
  readonly capacity: Float64Array
  readonly paneDiagonal: Float64Array
  massDiagonal: number
  floorDiagonal: number
  ff: number
  fb: number
  bf: number
  bb: number
  determinant: number
  /** Rise of the front air in a stage for each W of heat there, K/W. */
  risePerW: number
}

/**
 * What holds the front air in one stage: it is heated just to `heatToC` and cooled just to `coolToC`, with no more than the powers given, W.
 * `coolToC` is never below `heatToC`; between them nothing runs.
 */
export type Hold = { heatToC: number; mostHeatW: number; coolToC: number; mostCoolW: number }

/** Nothing runs. */
export const REST: Readonly<Hold> = { heatToC: -Infinity, mostHeatW: 0, coolToC: Infinity, mostCoolW: 0 }

/** One stage: sources at its instant, W into each node, without the heater, and the temperatures that they lead to. */
export type Stage = {
  readonly sources: Float64Array
  readonly temps: Float64Array
  /** What of the sources stays inside (people, bed heaters, sun, condensing water), and what the sky takes, W. */
  gainW: number
  skyW: number
  readonly hold: Hold
  /** Heat that the hold took, W; below zero while cooling. */
  heatW: number
}

/** An empty stage for a number of nodes. */
export const blankStage = (size: number): Stage => ({
  sources: new Float64Array(size),
  temps: new Float64Array(size),
  gainW: 0,
  skyW: 0,
  hold: { ...REST },
  heatW: 0,
})

/** An empty factor for a network's size; `factorise` fills it. */
export function blankFactor(network: Network): Factor {
  return {
    network,
    air: { frontWPerK: -1, bedWPerK: -1, drawnWPerK: -1, mixingWPerK: -1 },
    stepS: -1,
    capacity: new Float64Array(FIRST_PANE + network.panes.length),
    paneDiagonal: new Float64Array(network.panes.length),
    massDiagonal: 0,
    floorDiagonal: 0,
    ff: 0,
    fb: 0,
    bf: 0,
    bb: 0,
    determinant: 0,
    risePerW: 0,
  }
}

/** Both stages of a step and a right-hand side: arrays that the caller owns and the kernel writes to. */
export type Workspace = { readonly first: Stage; readonly second: Stage; readonly right: Float64Array }

/** Lets a factor be made anew where its network was rewritten. */
export function forget(factor: Factor): void {
  factor.stepS = -1
}

/** Factors the matrix for a network, an air exchange and a step, unless it already stands. */
export function factorise(factor: Factor, network: Network, air: AirExchange, stepS: number): void {
  const known = factor.air
  if (
    factor.network === network &&
    factor.stepS === stepS &&
    known.frontWPerK === air.frontWPerK &&
    known.bedWPerK === air.bedWPerK &&
    known.drawnWPerK === air.drawnWPerK &&
    known.mixingWPerK === air.mixingWPerK
  ) {
    return
  }
  factor.network = network
  factor.stepS = stepS
  known.frontWPerK = air.frontWPerK
  known.bedWPerK = air.bedWPerK
  known.drawnWPerK = air.drawnWPerK
  known.mixingWPerK = air.mixingWPerK
  const { capacity, paneDiagonal } = factor
  const perS = 1 / (GAMMA * stepS)
  capacity[FRONT] = network.frontJPerK * perS
  capacity[BED] = network.bedJPerK * perS
  capacity[MASS] = network.massJPerK * perS
  capacity[FLOOR] = network.floorJPerK * perS
  const massDiagonal = network.massJPerK * perS + network.frontMassWPerK + network.bedMassWPerK
  const floorDiagonal = network.floorJPerK * perS + network.bedFloorWPerK + network.floorOutWPerK
  const passing = air.drawnWPerK + air.mixingWPerK
  let ff = at(capacity, FRONT) + network.frontBodyWPerK + network.frontMassWPerK + air.frontWPerK + passing
  let bb =
    at(capacity, BED) + network.bedBodyWPerK + network.bedMassWPerK + network.bedFloorWPerK + air.bedWPerK + passing
  for (let index = 0; index < network.panes.length; index += 1) {
    const pane = network.panes[index]
    if (pane === undefined) break
    capacity[FIRST_PANE + index] = pane.capacityJPerK * perS
    const diagonal = pane.capacityJPerK * perS + pane.innerWPerK + pane.outerWPerK
    paneDiagonal[index] = diagonal
    const own = pane.innerWPerK - (pane.innerWPerK * pane.innerWPerK) / diagonal
    if (pane.atFront) ff += own
    else bb += own
  }
  ff -= (network.frontMassWPerK * network.frontMassWPerK) / massDiagonal
  bb -=
    (network.bedMassWPerK * network.bedMassWPerK) / massDiagonal +
    (network.bedFloorWPerK * network.bedFloorWPerK) / floorDiagonal
  factor.massDiagonal = massDiagonal
  factor.floorDiagonal = floorDiagonal
  factor.ff = ff
  factor.bb = bb
  factor.fb = -air.mixingWPerK - (network.frontMassWPerK * network.bedMassWPerK) / massDiagonal
  factor.bf = factor.fb - air.drawnWPerK
  factor.determinant = ff * bb - factor.fb * factor.bf
  factor.risePerW = bb / factor.determinant
}

/** Solves (C / (g h) + K) T = right by eliminating panes, mass and floor, with the heat that the stage's hold asks for. */
function solve(factor: Factor, right: Float64Array, stage: Stage): void {
  const out = stage.temps
  const { network, paneDiagonal, massDiagonal, floorDiagonal } = factor
  const panes = network.panes
  let front = at(right, FRONT) + (network.frontMassWPerK * at(right, MASS)) / massDiagonal
  let bed =
    at(right, BED) +
    (network.bedMassWPerK * at(right, MASS)) / massDiagonal +
    (network.bedFloorWPerK * at(right, FLOOR)) / floorDiagonal
  for (let index = 0; index < panes.length; index += 1) {
    const pane = panes[index]
    if (pane === undefined) break
    const share = (pane.innerWPerK * at(right, FIRST_PANE + index)) / at(paneDiagonal, index)
    if (pane.atFront) front += share
    else bed += share
  }
  stage.heatW = heldHeatW(stage.hold, (front * factor.bb - factor.fb * bed) / factor.determinant, factor.risePerW)
  front += stage.heatW
  const frontC = (front * factor.bb - factor.fb * bed) / factor.determinant
  const bedC = (factor.ff * bed - factor.bf * front) / factor.determinant
  out[FRONT] = frontC
  out[BED] = bedC
  out[MASS] = (at(right, MASS) + network.frontMassWPerK * frontC + network.bedMassWPerK * bedC) / massDiagonal
  out[FLOOR] = (at(right, FLOOR) + network.bedFloorWPerK * bedC) / floorDiagonal
  for (let index = 0; index < panes.length; index += 1) {
    const pane = panes[index]
    if (pane === undefined) break
    out[FIRST_PANE + index] =
      (at(right, FIRST_PANE + index) + pane.innerWPerK * (pane.atFront ? frontC : bedC)) / at(paneDiagonal, index)
  }
}

/** Heat that holds the front air, W, from where it would come to rest without, °C. */
function heldHeatW(hold: Hold, freeC: number, risePerW: number): number {
  if (freeC < hold.heatToC) return Math.min(hold.mostHeatW, (hold.heatToC - freeC) / risePerW)
  return freeC > hold.coolToC ? -Math.min(hold.mostCoolW, (freeC - hold.coolToC) / risePerW) : 0
}

/**
 * Both stages of one step from `start`, each with the heat at the front that its hold asks for; the second's temperatures are the step's end.
 * Fluxes over the step are exactly (1 - g) of the first stage's and g of the second's.
 */
export function stages(factor: Factor, start: Float64Array, work: Workspace): void {
  const { first, second, right } = work
  const size = start.length
  for (let node = 0; node < size; node += 1)
    right[node] = at(factor.capacity, node) * at(start, node) + at(first.sources, node)
  solve(factor, right, first)
  for (let node = 0; node < size; node += 1) {
    const carried = at(start, node) + CARRY * (at(first.temps, node) - at(start, node))
    right[node] = at(factor.capacity, node) * carried + at(second.sources, node)
  }
  solve(factor, right, second)
}

/** Element of an array whose length the kernel itself has set. */
export const at = (values: Float64Array, index: number): number => values[index] ?? 0
