/** Electricity of the night over one step: the supply shared by heater and charger, the rest to or from the battery. */
import { S_PER_HOUR } from '../units/index.ts'
import { chargerOutputW, packStep } from './battery.ts'
import { PILOT_MINIMUM_A, currentForPower, resistivePowerW, voltsAt, wattsAt } from './circuit.ts'
import type { Prepared } from './night-prepare.ts'
import type { NightDecisions, NightInput } from './types.ts'

/** Charger of a leisure battery, battery side over wall side (15 A at 13.5 V from 235 W, common practice). */
const LEISURE_CHARGER_01 = 0.86
/** Inverter, battery to mains (common practice 0.85 to 0.92). */
const INVERTER_01 = 0.88
/** An LFP cell takes no charge below this temperature, °C (cell data sheets, from memory). */
export const LFP_CHARGE_ABOVE_C = 0

/** The supply between two events: what flows at most, and whether the car may charge from it. */
export type SupplyNow = { readonly currentA: number; readonly wattsW: number; readonly volts: number }
export const NO_SUPPLY: SupplyNow = { currentA: 0, wattsW: 0, volts: 0 }

export type PowerState = { charge01: number; leisure01: number }

/** Loads of one step, W of electricity. */
export type Loads = {
  /** Heater, its fan and controls. */
  heatingW: number
  bedW: number
}

/** What the supply gives at an instant under the night's decisions and faults; nothing when unplugged. */
export function supplyNow(prepared: Prepared, decisions: NightDecisions, atUtc: number): SupplyNow {
  const { supply: outcome } = prepared
  const { supply, fault } = prepared.input
  if (supply === null || outcome === null || atUtc < supply.plugInUtc || atUtc >= supply.unplugUtc) return NO_SUPPLY
  // Nobody plugs in where there is no earth: the night must not count on it.
  if (supply.earthOk === 'no') return NO_SUPPLY
  let currentA = Math.min(outcome.usableA, decisions.currentA ?? outcome.usableA)
  if (fault?.kind === 'supply-lost' && atUtc >= fault.atUtc) return NO_SUPPLY
  if (fault?.kind === 'breaker-trips' && atUtc >= fault.atUtc) {
    if (fault.resetUtc === null || atUtc < fault.resetUtc) return NO_SUPPLY
    currentA = Math.min(currentA, fault.heldA ?? currentA)
  }
  if (currentA <= 0) return NO_SUPPLY
  return {
    currentA,
    wattsW: Math.max(0, wattsAt(outcome, currentA) - supply.otherLoadW),
    volts: voltsAt(outcome, currentA),
  }
}

/** Whether the heater hangs on the supply itself: a mains fan heater, or any in a vehicle without a driving battery. */
export const heatsFromSupply = (input: NightInput): boolean =>
  input.heater.kind === 'mains-fan-heater' || input.battery === null

/** Electricity that a heater on the supply itself can take, W: a fan heater's power falls with voltage squared. */
export function mainsHeaterW(prepared: Prepared, now: SupplyNow): number {
  const { heater, supply } = prepared.input
  if (supply === null || now.wattsW <= 0) return 0
  const ratedW =
    heater.kind === 'mains-fan-heater'
      ? resistivePowerW(heater.maxHeatW, supply.ratedV ?? supply.nominalV, now.volts)
      : Infinity
  return Math.min(ratedW, now.wattsW)
}

/**
 * Electricity that a mains heater can take from the leisure battery through its inverter, W: only while nothing comes from the site,
 * never below the reserve, and not at all where the heater's least setting is more than the inverter carries.
 */
export function inverterHeaterW(
  prepared: Prepared,
  now: SupplyNow,
  { leisure01, bedW, stepS }: { readonly leisure01: number; readonly bedW: number; readonly stepS: number },
): number {
  const { heater, leisure } = prepared.input
  if (heater.kind !== 'mains-fan-heater' || leisure === null || now.wattsW > 0) return 0
  if (leisure.inverterMaxW <= 0 || heater.minHeatW > leisure.inverterMaxW) return 0
  const leftW =
    (Math.max(0, leisure01 - leisure.reserve01) * leisure.usableWh * S_PER_HOUR) / stepS - leisureLoadW(prepared)
  const ownW = prepared.input.battery === null ? bedW : 0
  return Math.max(0, Math.min(heater.maxHeatW, leisure.inverterMaxW, (leftW - ownW) * INVERTER_01))
}

/** Loads that hang on the leisure battery all night, W. */
const leisureLoadW = ({ input }: Prepared): number =>
  (input.leisure?.loadW ?? 0) + (input.battery === null ? (input.keepsOnW ?? 0) : 0)

/**
 * Power for the car's own charger after the heater, W; none below the least current that charging control asks for, and no more than the whole
 * amperes that can be set, which is what the traveller is told to ask for.
 */
export function carOfferW(prepared: Prepared, now: SupplyNow, heaterOnSupplyW: number): number {
  const { supply: outcome } = prepared
  const { supply } = prepared.input
  if (supply === null || outcome === null || !supply.chargeAllowed || now.wattsW <= 0) return 0
  const leftW = now.wattsW - heaterOnSupplyW
  const leftA = (leftW / now.wattsW) * now.currentA
  if (leftA + 1e-9 < Math.max(supply.minimumA, PILOT_MINIMUM_A)) return 0
  return Math.min(leftW, wattsAt(outcome, Math.floor(now.currentA + 1e-9)))
}

/** Electricity that the built-in heater may take: all it wants above the reserve, only what the supply brings below it. */
export function builtInLimitW(prepared: Prepared, now: SupplyNow, atReserve: boolean, outsideC: number): number {
  const { battery } = prepared.input
  if (battery === null) return 0
  if (!atReserve) return Infinity
  return chargerOutputW(battery, carOfferW(prepared, now, 0), outsideC)
}

export type Settled = {
  supplyW: number
  wiringW: number
  intoBatteryW: number
  intoLeisureW: number
  keptOnW: number
}

type SettleStep = {
  readonly prepared: Prepared
  readonly decisions: NightDecisions
  readonly now: SupplyNow
  readonly loads: Loads
  readonly outsideC: number
  readonly floorC: number
  readonly stepS: number
}

/** Settles one step: writes the new charges to `state` and the mean powers to `out`. */
export function settle(step: SettleStep, state: PowerState, out: Settled): void {
  const { prepared, now, loads } = step
  const { battery, leisure } = prepared.input
  const onSupply = heatsFromSupply(prepared.input)
  const inverted = onSupply && now.wattsW <= 0 && leisure !== null
  const direct = onSupply && !inverted ? loads.heatingW : 0
  out.keptOnW = keepsOn(step, state) ? (prepared.input.keepsOnW ?? 0) : 0
  const bedOnSupply = battery === null && leisure === null ? Math.min(loads.bedW, Math.max(0, now.wattsW - direct)) : 0
  let drawnW = direct + bedOnSupply
  out.intoBatteryW = 0
  if (battery !== null) {
    const pack = packStep({
      battery,
      charge01: state.charge01,
      chargeLimit01: step.decisions.chargeLimit01,
      offeredW: carOfferW(prepared, now, drawnW),
      loadW: (onSupply ? 0 : loads.heatingW) + loads.bedW + out.keptOnW,
      outsideC: step.outsideC,
      stepS: step.stepS,
    })
    state.charge01 = pack.charge01
    out.intoBatteryW = pack.intoCellsW
    drawnW += pack.drawnW
  }
  const spareW = Math.max(0, now.wattsW - drawnW)
  const invertedW = inverted ? loads.heatingW / INVERTER_01 : 0
  const leisureW = leisureLoadW(prepared) + (battery === null ? loads.bedW : 0) + invertedW
  out.intoLeisureW = leisure === null ? 0 : settleLeisure(step, state, leisureW, spareW)
  drawnW += leisureDrawW(step, out.intoLeisureW, spareW)
  out.supplyW = drawnW
  out.wiringW = wiringLossW(prepared, drawnW)
}

/** Whether something carries what the vehicle keeps on: a battery above empty, or the supply behind it. */
function keepsOn({ prepared, now }: SettleStep, state: PowerState): boolean {
  const { battery, leisure } = prepared.input
  if (battery !== null) return state.charge01 > 0 || now.wattsW > 0
  return leisure !== null && (state.leisure01 > leisure.reserve01 + 1e-9 || now.wattsW > 0)
}

/** Net power into the leisure battery, W; loads stop at its reserve. */
function settleLeisure(step: SettleStep, state: PowerState, loadW: number, spareW: number): number {
  const leisure = step.prepared.input.leisure
  if (leisure === null) return 0
  const perStep = step.stepS / S_PER_HOUR / leisure.usableWh
  const mayCharge = leisure.kind !== 'lfp' || step.floorC >= LFP_CHARGE_ABOVE_C
  const wallW = Math.max(0, Math.min(leisure.chargerW, spareW))
  const offeredW = wallW * LEISURE_CHARGER_01
  // The charger carries the loads even where the cells may take nothing.
  const surplusW = offeredW - loadW
  const roomW = mayCharge ? Math.max(0, (1 - state.leisure01) / perStep) : 0
  const leftW = Math.max(0, (state.leisure01 - leisure.reserve01) / perStep)
  const netW = surplusW >= 0 ? Math.min(surplusW, roomW) : -Math.min(-surplusW, leftW)
  state.leisure01 += netW * perStep
  return netW
}

/** What the leisure charger draws at the wall for its loads and a net power into the cells, W. */
function leisureDrawW(step: SettleStep, intoLeisureW: number, spareW: number): number {
  const { leisure, battery } = step.prepared.input
  if (leisure === null || step.now.wattsW <= 0) return 0
  const neededW = intoLeisureW + leisureLoadW(step.prepared) + (battery === null ? step.loads.bedW : 0)
  return Math.max(0, Math.min(leisure.chargerW, spareW, neededW / LEISURE_CHARGER_01))
}

/** Heat in the supply path while a power is drawn, W; other loads on the same post count, as they warm it too. */
function wiringLossW(prepared: Prepared, drawnW: number): number {
  const { supply: outcome } = prepared
  if (outcome === null || drawnW <= 0) return 0
  const phases = outcome.phaseFactor
  const currentA =
    currentForPower(outcome, (drawnW + (prepared.input.supply?.otherLoadW ?? 0)) / phases) ?? outcome.usableA
  return phases * outcome.sourceOhm * currentA * currentA
}
