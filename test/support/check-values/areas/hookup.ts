/** Hookup rows: receptacles, pitches, site demand, wires, contacts and sag. */
import { continuousA, voltsAt, wattsAt } from '../../../../shared/climate/circuit.ts'
import * as wiring from '../../../../shared/climate/sources/wiring.ts'
import { MissingInput, has, number, numberOr, text } from '../rows.ts'
import type { Handler, Inputs, Ours } from '../rows.ts'

const FT_PER_KFT = 1000
const M_PER_KM = 1000

function ampsIn(words: string): number {
  const amps = /(\d+(?:\.\d+)?)\s*A\b/.exec(words)?.[1]
  if (amps === undefined) throw new MissingInput('no amperes in words')
  return Number(amps)
}

function editionOf(words: string): number {
  const found = /(\d{4})/.exec(words)?.[1]
  if (found === undefined) throw new MissingInput('no year of edition')
  const year = Number(found)
  return /before|pre-?/i.test(words) ? year - 1 : year
}

function demand(inputs: Inputs): Ours {
  const counts = ['50A', '30A', '20A'].map((size) => ({
    sites: numberOr(inputs, `sites_${size}`, 0),
    va: numberOr(inputs, `VA_${size}`, wiring.siteVa(Number.parseInt(size, 10), 2014)),
  }))
  const sites = counts.reduce((sum, entry) => sum + entry.sites, 0)
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
  const drop = wiring.leadDrop(
    oneWayOhm,
    number(inputs, 'amps'),
    number(inputs, 'volts'),
    numberOr(inputs, 'phases', 1) === 3 ? 3 : 1,
  )
  return {
    drop_V: drop.dropV,
    drop_pct: 100 * drop.drop01,
    loss_W: drop.lossW,
    exceeds_3pct: drop.drop01 > wiring.ADVISED_BRANCH_DROP_01,
    exceeds_5pct: drop.drop01 > 0.05,
  }
}

function byGauge(inputs: Inputs): Ours {
  const wire = wiring.copperWire(text(inputs, 'awg'))
  if (wire === null) return {}
  if (has(inputs, 'one_way_ft')) return lead((wire.dcOhmPerKft * number(inputs, 'one_way_ft')) / FT_PER_KFT, inputs)
  return {
    ohm_kft_dc: wire.dcOhmPerKft,
    ohm_kft_ac_pvc: wire.acOhmPerKft,
    ampacity_60C: wire.ampacity60A,
    ampacity_75C: wire.ampacity75A,
  }
}

/** Rules of a pitch, under the names that rows give them. */
const pitchRules: Ours = {
  rcd_mA: wiring.PITCH_RULES.residualCurrentMA,
  sockets_per_rcd: wiring.PITCH_RULES.socketsPerDevice,
  max_length_m: wiring.PITCH_RULES.leadLengthM,
  min_mm2: wiring.PITCH_RULES.leadMm2,
  type: wiring.PITCH_RULES.leadType,
  sockets_per_pillar_max: wiring.PITCH_RULES.socketsPerPillar,
  max_sockets_per_pillar: wiring.PITCH_RULES.socketsPerPillar,
  max_distance_m: wiring.PITCH_RULES.pillarWithinM,
  max_pitch_distance_m: wiring.PITCH_RULES.pillarWithinM,
  socket_height_min_m: wiring.PITCH_RULES.socketHeightMinimumM,
  socket_height_max_m: wiring.PITCH_RULES.socketHeightMaximumM,
  height_min_m: wiring.PITCH_RULES.socketHeightMinimumM,
  height_max_m: wiring.PITCH_RULES.socketHeightMaximumM,
  max_sockets: wiring.PITCH_RULES.socketsPerPillar,
}

/** Shares of sites by receptacle, %. */
const receptacleShares: Ours = {
  sites_20A_pct: wiring.SITE_RECEPTACLES.with20APercent,
  sites_30A_pct: wiring.SITE_RECEPTACLES.with30APercent,
  sites_50A_existing_pct: wiring.SITE_RECEPTACLES.with50AExistingPercent,
  sites_50A_new_pct: wiring.SITE_RECEPTACLES.with50ANewPercent,
  pct_30A: wiring.SITE_RECEPTACLES.with30APercent,
  pct_50A_existing: wiring.SITE_RECEPTACLES.with50AExistingPercent,
  pct_50A_new: wiring.SITE_RECEPTACLES.with50ANewPercent,
}

export const hookup: Handler = (inputs) => {
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
  if (has(inputs, 'site'))
    return { VA: wiring.siteVa(ampsIn(text(inputs, 'site')), editionOf(text(inputs, 'edition'))) }
  if (has(inputs, 'evse_max_A')) return { breaker_min_A: wiring.breakerForA(number(inputs, 'evse_max_A')) }
  if (has(inputs, 'evse'))
    return { individual_branch_circuit: ampsIn(text(inputs, 'evse')) >= wiring.INDIVIDUAL_BRANCH_ABOVE.currentA }
  if (has(inputs, 'breaker_A')) {
    const amps = continuousA(number(inputs, 'breaker_A'))
    return {
      continuous_A: amps,
      continuous_W: has(inputs, 'volts') ? amps * number(inputs, 'volts') : undefined,
      amps_max: amps,
    }
  }
  if (has(inputs, 'supply')) return { rated_W: number(inputs, 'volts') * ampsIn(text(inputs, 'supply')) }
  if (/551\.71|receptacle share/i.test(text(inputs, 'rule') + text(inputs, 'standard'))) return receptacleShares
  return has(inputs, 'cord') || /708/.test(text(inputs, 'standard')) ? pitchRules : {}
}
