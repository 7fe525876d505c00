/** Hookup rows: receptacles, pitches, site demand, wires, contacts and sag. */
import { continuousA, voltsAt, wattsAt } from '../../../../shared/climate/circuit.ts'
import * as wiring from '../../../../shared/climate/sources/wiring.ts'
import { RefusedInput, byWords, has, number, numberOr, text } from '../rows.ts'
import type { Handler, Inputs, Ours, Value } from '../rows.ts'

const FT_PER_KFT = 1000
const M_PER_KM = 1000

function ampsIn(inputs: Inputs, name: string): number {
  const words = text(inputs, name)
  const amps = /(\d+(?:\.\d+)?)\s*A\b/.exec(words)?.[1]
  if (amps === undefined) throw new RefusedInput(`${name} is “${words}”, and names no amperes`)
  return Number(amps)
}

function editionOf(words: string): number {
  const found = /(\d{4})/.exec(words)?.[1]
  if (found === undefined) throw new RefusedInput(`edition is ${words}, and names no year`)
  const year = Number(found)
  return /before|pre-?/i.test(words) ? year - 1 : year
}

function demand(inputs: Inputs): Ours {
  const counts = ['50A', '30A', '20A'].map((size) => ({
    sites: numberOr(inputs, `sites_${size}`, 0),
    va: numberOr(inputs, `VA_${size}`, wiring.siteVa(Number.parseInt(size, 10), 2014)),
  }))
  const sites = counts.reduce((sum, entry) => sum + entry.sites, 0)
  if (sites === 0) throw new RefusedInput('sites_20A, sites_30A and sites_50A are 0: no site at all')
  const connected = counts.reduce((sum, entry) => sum + entry.sites * entry.va, 0)
  const factor = wiring.siteDemand01(sites)
  return {
    connected_VA: connected,
    demand_factor: factor,
    demand_VA: connected * factor,
    VA_per_site: (connected * factor) / sites,
  }
}

function lead(oneWayOhm: number, inputs: Inputs): Ours {
  const phases = numberOr(inputs, 'phases', 1)
  if (phases !== 1 && phases !== 3) throw new RefusedInput(`phases is ${phases}, and has to be 1 or 3`)
  const drop = wiring.leadDrop(oneWayOhm, number(inputs, 'amps'), number(inputs, 'volts'), phases)
  return {
    drop_V: drop.dropV,
    drop_pct: 100 * drop.drop01,
    loss_W: drop.lossW,
    exceeds_3pct: drop.drop01 > wiring.ADVISED_BRANCH_DROP_01,
    exceeds_5pct: drop.drop01 > 0.05,
  }
}

function byGauge(inputs: Inputs): Ours {
  const wire = wiring.copperWire(text(inputs, 'awg').replace(/awg|#/gi, '').trim())
  if (wire === null) return {}
  if (has(inputs, 'one_way_ft')) return lead((wire.dcOhmPerKft * number(inputs, 'one_way_ft')) / FT_PER_KFT, inputs)
  return {
    ohm_kft_dc: wire.dcOhmPerKft,
    ohm_kft_ac_pvc: wire.acOhmPerKft,
    ampacity_60C: wire.ampacity60A,
    ampacity_75C: wire.ampacity75A,
  }
}

/** Rules of a pitch, by the words that rows name them with. */
const PITCH: readonly (readonly [RegExp, Value])[] = [
  [/per_rcd|rcd_per/, wiring.PITCH_RULES.socketsPerDevice],
  [/mA$/, wiring.PITCH_RULES.residualCurrentMA],
  [/length/, wiring.PITCH_RULES.leadLengthM],
  [/mm2/, wiring.PITCH_RULES.leadMm2],
  [/type/, wiring.PITCH_RULES.leadType],
  [/height.*min|min.*height/, wiring.PITCH_RULES.socketHeightMinimumM],
  [/height.*max|max.*height/, wiring.PITCH_RULES.socketHeightMaximumM],
  [/distance/, wiring.PITCH_RULES.pillarWithinM],
  [/sockets/, wiring.PITCH_RULES.socketsPerPillar],
]

/** Shares of sites by receptacle, %, and which are protected against residual current. */
const RECEPTACLES: readonly (readonly [RegExp, Value])[] = [
  [/gfci.*(?:15|20)/i, true],
  [/gfci.*(?:30|50)/i, false],
  [/20_?A/, wiring.SITE_RECEPTACLES.with20APercent],
  [/30_?A/, wiring.SITE_RECEPTACLES.with30APercent],
  [/50_?A.*new|new.*50_?A/, wiring.SITE_RECEPTACLES.with50ANewPercent],
  [/50_?A/, wiring.SITE_RECEPTACLES.with50AExistingPercent],
]

export const hookup: Handler = (inputs, expected) => {
  if (has(inputs, 'v_open')) {
    const source = { noLoadV: number(inputs, 'v_open'), sourceOhm: number(inputs, 'loop_ohm') }
    return { v_load: voltsAt(source, number(inputs, 'amps')), power_W: wattsAt(source, number(inputs, 'amps')) }
  }
  if (has(inputs, 'contact_milliohm')) {
    const contact = wiring.contactHeat(number(inputs, 'contact_milliohm') / 1000, number(inputs, 'amps'))
    return { contact_W: contact.heatW, drop_V: contact.dropV }
  }
  if (has(inputs, 'awg')) return byGauge(inputs)
  if (has(inputs, 'mm2')) {
    const table = wiring.FLEXIBLE_OHM_PER_KM[String(number(inputs, 'mm2'))]
    const ohmPerKm = has(inputs, 'ohm_km_20C') ? number(inputs, 'ohm_km_20C') : table
    if (ohmPerKm === undefined) return {}
    return lead((ohmPerKm * number(inputs, 'length_m')) / M_PER_KM, inputs)
  }
  if (has(inputs, 'sites_30A') || has(inputs, 'sites_50A') || has(inputs, 'sites_20A')) return demand(inputs)
  if (has(inputs, 'sites')) return { demand_factor: wiring.siteDemand01(number(inputs, 'sites')) }
  if (has(inputs, 'site')) return { VA: wiring.siteVa(ampsIn(inputs, 'site'), editionOf(text(inputs, 'edition'))) }
  if (has(inputs, 'evse_max_A')) return { breaker_min_A: wiring.breakerForA(number(inputs, 'evse_max_A')) }
  if (has(inputs, 'evse'))
    return { individual_branch_circuit: ampsIn(inputs, 'evse') >= wiring.INDIVIDUAL_BRANCH_ABOVE.currentA }
  if (has(inputs, 'breaker_A')) {
    const amps = continuousA(number(inputs, 'breaker_A'))
    return {
      continuous_A: amps,
      continuous_W: has(inputs, 'volts') ? amps * number(inputs, 'volts') : undefined,
      amps_max: amps,
    }
  }
  if (has(inputs, 'supply')) return { rated_W: number(inputs, 'volts') * ampsIn(inputs, 'supply') }
  const words = text(inputs, 'rule') + text(inputs, 'standard')
  if (/551\.71|receptacle share/i.test(words)) return byWords(expected, RECEPTACLES)
  return has(inputs, 'cord') || /708/.test(words) ? byWords(expected, PITCH) : {}
}
