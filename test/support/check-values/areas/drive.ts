/** Charging and driving rows. */
import { fromFahrenheit } from '../../../../shared/units/index.ts'
import * as charging from '../../../../shared/climate/sources/charging.ts'
import * as driving from '../../../../shared/climate/sources/driving.ts'
import {
  chargeAfter,
  clockAt,
  fastChargeClock,
  fastChargePowerW,
  shareCabinet,
} from '../../../../shared/climate/sources/fast-charge.ts'
import {
  climbWh,
  dryAirDensity,
  roadLoadWhPerKm,
  rollingCoefficientWang,
} from '../../../../shared/climate/sources/road-load.ts'
import { MissingInput, RefusedInput, firstNumber, has, number, numberOr, numbers, positive, text } from '../rows.ts'
import type { Handler, Inputs, Ours } from '../rows.ts'

/** The car of the rows: 75 kWh, 250 kW at its peak (common practice). */
const CAR = { usableWh: 75_000, peakW: 250_000 } as const

function distanceRegained(inputs: Inputs): Ours {
  const heats = /heat on/i.test(text(inputs, 'case'))
  const heatW = heats ? charging.impliedHeatW(25, 20, charging.PLANNING_CHARGE.efficiency01, 0.23) : 0
  const supplyW = number(inputs, 'volts') * number(inputs, 'amps') - heatW
  const miles = charging.milesPerHour(
    charging.batteryPowerW(supplyW, charging.PLANNING_CHARGE.overheadW, charging.PLANNING_CHARGE.efficiency01),
  )
  return { miles_per_h_min: miles, miles_per_h_max: miles, miles_per_h: miles }
}

/** Ten minutes more from 38 %, and what they save at a stop joined at 10 %, minutes. */
function minutesSaved(): number {
  const charge = { ...CAR, chargerW: CAR.peakW }
  const clock = fastChargeClock(charge)
  const gained01 = chargeAfter(charge, 0.38, 600) - 0.38
  return (clockAt(clock, 0.1 + gained01) - clockAt(clock, 0.1)) / 60
}

/** Power to each car on one cabinet, kW; there are as many cars as stalls at most. */
function cabinetShares(inputs: Inputs): readonly number[] {
  const wanted = numbers(inputs, 'wanted_kW')
  const stalls = numberOr(inputs, 'stalls', wanted.length)
  if (wanted.length > stalls) throw new RefusedInput(`wanted_kW names ${wanted.length} cars at ${stalls} stalls`)
  return shareCabinet(number(inputs, 'cabinet_kW'), wanted)
}

export const charge: Handler = (inputs) => {
  if (has(inputs, 'duty_pct')) return { amps: charging.pilotCurrentA(number(inputs, 'duty_pct')) }
  if (has(inputs, 'state_voltages')) return { ...charging.PILOT_STATE_V }
  if (has(inputs, 'level1_vs_level2'))
    return {
      mean_gain_pct: charging.LEVEL_2_GAIN.meanPercent,
      gain_below_2kWh_pct: charging.LEVEL_2_GAIN.belowTwoKWhPercent,
    }
  if (has(inputs, 'heat_diff')) {
    return {
      implied_cabin_heat_W: charging.impliedHeatW(
        number(inputs, 'mi_h_off'),
        number(inputs, 'mi_h_on'),
        number(inputs, 'eta'),
        number(inputs, 'kWh_mi'),
      ),
    }
  }
  if (has(inputs, 'overhead_W')) {
    return {
      battery_W: charging.batteryPowerW(
        number(inputs, 'volts') * number(inputs, 'amps'),
        number(inputs, 'overhead_W'),
        number(inputs, 'efficiency'),
      ),
    }
  }
  if (has(inputs, 'supply_A')) {
    const both = charging.chargeWhileHeating(
      number(inputs, 'supply_A'),
      number(inputs, 'volts'),
      number(inputs, 'heater_W'),
      numberOr(inputs, 'min_pilot_A', 6),
    )
    return { can_charge_and_heat: both.possible, total_need_W: both.neededW, available_W: both.availableW }
  }
  if (has(inputs, 'cabinet_kW')) return { given_kW: cabinetShares(inputs) }
  if (has(inputs, 'dc_kW')) {
    const car = { ...CAR, chargerW: number(inputs, 'dc_kW') * 1000 }
    if (has(inputs, 'arrive_soc')) return { charge_kW: fastChargePowerW(car, number(inputs, 'arrive_soc')) / 1000 }
    return { soc_pct: 100 * chargeAfter(car, number(inputs, 'start_soc'), number(inputs, 'minutes') * 60) }
  }
  if (has(inputs, 'power_kW') || has(inputs, 'ac_kW')) {
    const efficiency01 = charging.chargeEfficiency01(firstNumber(inputs, 'power_kW', 'ac_kW'))
    return { efficiency: efficiency01, charge_eff: efficiency01, eta: efficiency01 }
  }
  if (/fastsim/i.test(JSON.stringify(inputs))) {
    const efficiency01 = charging.AGENCY_CHARGE_EFFICIENCY_01
    return { efficiency: efficiency01, charge_eff: efficiency01, chg_eff: efficiency01, wall_to_pack: efficiency01 }
  }
  if (has(inputs, 'volts', 'amps')) return distanceRegained(inputs)
  if (has(inputs, 'amps')) return { duty_pct: charging.pilotDutyPercent(number(inputs, 'amps')) ?? undefined }
  if (/ten more minutes/i.test(text(inputs, 'case'))) {
    const saved = minutesSaved()
    return { minutes_saved_at_next_stop_min: saved, minutes_saved_at_next_stop_max: saved }
  }
  return {}
}

/** A surface as rows write it, `asphalt good (1.25)`: its factor in brackets, else from the table. */
function roadFactorOf(words: string): number {
  const given = /\((\d+(?:\.\d+)?)\)/.exec(words)?.[1]
  const factor = given === undefined ? driving.ROAD_FACTOR[words.trim().toLowerCase()] : Number(given)
  if (factor === undefined) throw new MissingInput(`no road surface ${words}`)
  return factor
}

function tyreOf(words: string): driving.Tyre {
  if (words.includes('bias')) return 'bias-ply'
  if (words.includes('radial')) return 'radial'
  throw new RefusedInput(`tyre is ${words}, and has to be one of radial, bias-ply`)
}

function byTemperature(inputs: Inputs): Ours {
  const outsideC = has(inputs, 't_F') ? fromFahrenheit(number(inputs, 't_F')) : number(inputs, 't_C')
  if (typeof inputs['hvac'] === 'boolean') {
    const lossPercent = driving.rangeLossPercent(outsideC, inputs['hvac'])
    return lossPercent === null
      ? {}
      : { range_loss_pct: lossPercent, consumption_ratio: driving.consumptionRatio(lossPercent) }
  }
  const kWhPerMile = driving.consumptionKWhPerMile(outsideC)
  return {
    kWh_mi: kWhPerMile,
    ratio_to_70F: kWhPerMile / driving.consumptionKWhPerMile(fromFahrenheit(70)),
    range_loss_pct: outsideC <= 0 ? driving.WINTER_RANGE_LOSS_PERCENT : undefined,
  }
}

export const drive: Handler = (inputs) => {
  if (has(inputs, 'leg_miles')) {
    return {
      leave_with_miles: driving.leaveWithMiles(
        number(inputs, 'leg_miles'),
        number(inputs, 'range_full_miles'),
        number(inputs, 'reserve_fraction'),
      ),
    }
  }
  if (has(inputs, 'tyre')) {
    const tyre = tyreOf(text(inputs, 'tyre').toLowerCase())
    return { crr: driving.rollingCoefficientRakha(tyre, roadFactorOf(text(inputs, 'road')), number(inputs, 'v_kmh')) }
  }
  if (has(inputs, 't_C', 'v_kmh'))
    return { crr: rollingCoefficientWang(number(inputs, 't_C'), number(inputs, 'v_kmh')) }
  if (has(inputs, 'CdA_m2')) {
    return {
      Wh_km: roadLoadWhPerKm({
        speedMPerS: positive(inputs, 'v_kmh') / 3.6,
        massKg: number(inputs, 'mass_kg'),
        dragAreaM2: number(inputs, 'CdA_m2'),
        rollingCoefficient: number(inputs, 'crr'),
        airDensityKgPerM3: number(inputs, 'rho'),
        driveEfficiency01: number(inputs, 'drivetrain_eff'),
        auxiliaryW: numberOr(inputs, 'aux_W', 0),
        grade: numberOr(inputs, 'grade', 0),
      }),
    }
  }
  if (has(inputs, 'climb_m'))
    return {
      kWh: climbWh(number(inputs, 'mass_kg'), number(inputs, 'climb_m'), number(inputs, 'drivetrain_eff')) / 1000,
    }
  if (has(inputs, 'descent_m')) {
    return {
      kWh_recovered:
        -climbWh(number(inputs, 'mass_kg'), -number(inputs, 'descent_m'), 1, number(inputs, 'regen_eff')) / 1000,
    }
  }
  if (has(inputs, 'udds_kWh_mi')) {
    const row = has(inputs, 'fastsim_row') ? number(inputs, 'fastsim_row') : null
    const combined = driving.combinedKWhPerMile(row, number(inputs, 'udds_kWh_mi'), number(inputs, 'hwy_kWh_mi'))
    return { comb_kWh_mi: combined, comb_Wh_km: driving.whPerKm(combined) }
  }
  if (has(inputs, 't2_C')) {
    const pressurePa = numberOr(inputs, 'p_Pa', 101_325)
    return {
      density_ratio:
        dryAirDensity(number(inputs, 't_C'), pressurePa) / dryAirDensity(number(inputs, 't2_C'), pressurePa),
    }
  }
  return byTemperature(inputs)
}
