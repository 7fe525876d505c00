/** What switches itself in the night: a battery that reaches its reserve, a heater that goes off by time or charge; each met at its own second. */
import { S_PER_HOUR } from '../units/index.ts'
import type { Run, Segment } from './night-state.ts'

/** Heating from the battery resumes only when this much is above the reserve, so that it does not chatter (engine's convention). */
const RESUME_01 = 0.002
const SAME_01 = 1e-9
/** Shortest part of a step before a switch, s. */
const SHORTEST_S = 0.02
/** A switch by charge is come up to by this share of the way at a time: the power of the next part is not quite that of the last. */
const APPROACH_01 = 0.95
/** So near that it is met in one, s. */
const NEAR_S = 0.2

/** Sets what has switched by now; whether anything has. */
export function latch(run: Run, segment: Segment, atUtc: number): boolean {
  const { heater, battery, leisure } = run.prepared.input
  const before = [run.switchedOff, run.atReserve, run.leisureEmpty]
  const { charge01, leisure01 } = run.power
  if (battery !== null) run.atReserve = charge01 <= battery.reserve01 + (run.atReserve ? RESUME_01 : SAME_01)
  if (leisure !== null) run.leisureEmpty = leisure01 <= leisure.reserve01 + (run.leisureEmpty ? RESUME_01 : SAME_01)
  if (segment.setC !== null && !segment.failed) {
    const { switchesOffAfterS, switchesOffBelow01 } = heater
    const ranS = run.heatingSinceUtc === null ? 0 : atUtc - run.heatingSinceUtc
    if (switchesOffAfterS !== null && run.heatingSinceUtc !== null && ranS >= switchesOffAfterS - 1e-6)
      run.switchedOff = true
    if (battery !== null && switchesOffBelow01 !== null && charge01 < switchesOffBelow01 + SAME_01)
      run.switchedOff = true
  }
  return before[0] !== run.switchedOff || before[1] !== run.atReserve || before[2] !== run.leisureEmpty
}

/** Time to go until something switches, s, by the powers of the last part; endless where nothing is on its way. */
export function untilSwitchS(run: Run, segment: Segment, atUtc: number): number {
  const { heater } = run.prepared.input
  const { heatingSinceUtc } = run
  const byChargeS = untilChargeS(run, segment)
  const stepS = byChargeS > NEAR_S ? byChargeS * APPROACH_01 : byChargeS
  const byTimeS =
    heats(run, segment) && heater.switchesOffAfterS !== null && heatingSinceUtc !== null
      ? heatingSinceUtc + heater.switchesOffAfterS - atUtc
      : Infinity
  return Math.max(Math.min(stepS, byTimeS), SHORTEST_S)
}

const heats = (run: Run, segment: Segment): boolean => segment.setC !== null && !segment.failed && !run.switchedOff

/** Time until a battery comes to a charge at which something switches, s. */
function untilChargeS(run: Run, segment: Segment): number {
  const { heater, battery, leisure } = run.prepared.input
  const { settled, power } = run
  let soonestS = Infinity
  if (battery !== null && settled.intoBatteryW < 0) {
    const perS = -settled.intoBatteryW / (battery.usableWh * S_PER_HOUR)
    if (!run.atReserve) soonestS = Math.min(soonestS, (power.charge01 - battery.reserve01) / perS)
    const offBelow01 = heater.switchesOffBelow01
    if (heats(run, segment) && offBelow01 !== null && power.charge01 > offBelow01)
      soonestS = Math.min(soonestS, (power.charge01 - offBelow01) / perS)
  }
  if (leisure !== null && settled.intoLeisureW < 0 && !run.leisureEmpty) {
    const perS = -settled.intoLeisureW / (leisure.usableWh * S_PER_HOUR)
    soonestS = Math.min(soonestS, (power.leisure01 - leisure.reserve01) / perS)
  }
  return soonestS
}
