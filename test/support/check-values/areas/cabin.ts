/** Cabin rows: shell, cooling, moving heat, air exchange, sky; the sun; heat pumps. */
import { fromFahrenheit } from '../../../../shared/units/index.ts'
import { coolingCopAt } from '../../../../shared/climate/heater.ts'
import * as shell from '../../../../shared/climate/sources/cabin-shell.ts'
import { coveredUWPerM2K, skyAt } from '../../../../shared/climate/sources/glass.ts'
import {
  MINIBUS,
  RESISTANCE_COP,
  drivingHeatW,
  heatPumpPoint,
  minibusHeatKW,
  planningCop,
} from '../../../../shared/climate/sources/hvac.ts'
import { parkedRiseK, sunOnPerson } from '../../../../shared/climate/sources/sun-heat.ts'
import { firstNumber, has, number, numberOr, oneOf, text } from '../rows.ts'
import type { Handler, Inputs, Ours } from '../rows.ts'

const S_PER_HOUR = 3600

function cooling(inputs: Inputs): Ours {
  const node = {
    lossWPerK: number(inputs, 'UA_W_K'),
    heatKJPerK: number(inputs, 'C_kJ_K'),
    startC: number(inputs, 't0_C'),
    outsideC: number(inputs, 't_out_C'),
    gainW: numberOr(inputs, 'gain_W', 0),
  }
  const { timeS, steadyC } = shell.coolingNode(node)
  return {
    t_C: shell.cooledC(node, number(inputs, 'hours') * S_PER_HOUR),
    t_eq_C: steadyC,
    tau_min: timeS / 60,
    tau_h: timeS / S_PER_HOUR,
  }
}

/** Air exchange by a situation in words; `windows` is not the wind. */
function exchangeOf(situation: string): Ours {
  const words = situation.toLowerCase()
  if (/one window|window (?:fully )?open/.test(words)) return { ach: shell.PARKED_EXCHANGE.oneWindowOpenPerH }
  if (/driv|moving/.test(words))
    return { ach_min: shell.DRIVING_EXCHANGE.leastPerH, ach_max: shell.DRIVING_EXCHANGE.mostPerH }
  if (/\bwind(?!ow)|windy|breez/.test(words))
    return { ach_min: 0, ach_max: shell.PARKED_EXCHANGE.closedWindyMaximumPerH }
  if (/fan off|closed/.test(words)) return { ach_min: 0, ach_max: shell.PARKED_EXCHANGE.closedMaximumPerH }
  return {}
}

export const heat: Handler = (inputs) => {
  if (has(inputs, 'R_shell')) {
    const lossWPerK = shell.plateLossWPerK({
      lengthM: number(inputs, 'length_m'),
      widthM: number(inputs, 'width_m'),
      filmWPerM2K: number(inputs, 'h_stop'),
      shellM2KPerW: number(inputs, 'R_shell'),
    })
    const heatKJPerK = numberOr(inputs, 'C_kJ_K', shell.PLATE_HEAT_KJ_PER_K)
    return { UA_W_K: lossWPerK, C_kJ_K: heatKJPerK, tau_min: (heatKJPerK * 1000) / lossWPerK / 60 }
  }
  if (has(inputs, 't0_C', 'C_kJ_K')) return cooling(inputs)
  if (has(inputs, 'UA_W_K', 't_in_C')) {
    return {
      heater_W: shell.holdingHeatW(
        number(inputs, 'UA_W_K'),
        number(inputs, 't_in_C'),
        number(inputs, 't_out_C'),
        numberOr(inputs, 'gain_W', 0),
      ),
    }
  }
  if (has(inputs, 'air_flow_kg_min')) {
    return {
      hvac_electric_W: drivingHeatW({
        outsideC: number(inputs, 't_amb_C'),
        airKgPerMin: number(inputs, 'air_flow_kg_min'),
        cabinAreaM2: number(inputs, 'cabin_area_m2'),
        recirculated01: number(inputs, 'recirculated_fraction'),
      }),
    }
  }
  if (/minibus/i.test(text(inputs, 'vehicle'))) {
    return {
      heat_kW: minibusHeatKW(numberOr(inputs, 'setpoint_C', 23) - number(inputs, 't_amb_C')),
      window_share_min: MINIBUS.windowShareMinimum01,
      window_share_max: MINIBUS.windowShareMaximum01,
    }
  }
  if (has(inputs, 'volume_m3', 'ach')) {
    return {
      W_K: shell.airLossWPerK(
        number(inputs, 'volume_m3'),
        number(inputs, 'ach'),
        numberOr(inputs, 'rho', 1.2),
        numberOr(inputs, 'cp', 1006),
      ),
    }
  }
  if (has(inputs, 'Ag', 'Ab')) {
    const body = {
      airVolumeM3: number(inputs, 'V'),
      glassM2: number(inputs, 'Ag'),
      bodyM2: number(inputs, 'Ab'),
      bodyUWPerM2K: number(inputs, 'Ub'),
      exchangePerH: number(inputs, 'n0'),
    }
    return { UA_W_K: shell.shellLossWPerK(body, numberOr(inputs, 'wind_ms', 0), numberOr(inputs, 'R_cover_m2K_W', 0)) }
  }
  if (has(inputs, 'R_cover_m2K_W'))
    return { U_covered: coveredUWPerM2K(number(inputs, 'U_glass'), number(inputs, 'R_cover_m2K_W')) }
  if (has(inputs, 't_dew_C')) {
    const sky = skyAt(
      number(inputs, 't_C'),
      number(inputs, 't_dew_C'),
      numberOr(inputs, 'opaque_tenths', 0),
      numberOr(inputs, 'sigma', 5.6697e-8),
    )
    return { eps_sky: sky.emissivity, ir_Wm2: sky.infraredW, t_sky_C: sky.skyC }
  }
  return exchangeOf(text(inputs, 'case'))
}

const FAHRENHEIT_PER_KELVIN = 1.8

export const solar: Handler = (inputs, expected) => {
  if (has(inputs, 'I_dir_Wm2')) {
    const posture = oneOf(inputs, 'posture', ['sitting', 'seated', 'standing', 'supine'])
    const sun = sunOnPerson({
      altitudeDeg: number(inputs, 'sol_altitude_deg'),
      azimuthDeg: number(inputs, 'sharp_deg'),
      directWPerM2: number(inputs, 'I_dir_Wm2'),
      transmittance01: number(inputs, 'tau'),
      skyView01: number(inputs, 'f_svv'),
      exposed01: number(inputs, 'f_bes'),
      absorptance01: numberOr(inputs, 'asw', 0.7),
      posture: posture === 'seated' ? 'sitting' : posture,
    })
    return { erf_Wm2: sun.fieldWPerM2, delta_mrt_K: sun.radiantRiseK }
  }
  const outsideC = fromFahrenheit(numberOr(inputs, 't_amb_F', 77))
  const riseF = (minutes: number): number => parkedRiseK(minutes, outsideC) * FAHRENHEIT_PER_KELVIN
  const rises = expected.flatMap((name) => {
    const minutes = /^rise_(\d+)min_F$/.exec(name)?.[1]
    return minutes === undefined ? [] : [[name, riseF(Number(minutes))] as const]
  })
  return {
    ...Object.fromEntries(rises),
    mean_rise_F_per_5min: riseF(60) / 12,
    share_in_first_30min: riseF(30) / riseF(60),
    total_60min_F: riseF(60),
  }
}

export const hvac: Handler = (inputs) => {
  if (/resist|ptc/i.test(text(inputs, 'device'))) return { cop: RESISTANCE_COP }
  if (/planning/i.test(text(inputs, 'basis'))) return { cop: planningCop(number(inputs, 't_amb_C')) }
  const cools = oneOf(inputs, 'mode', ['heat', 'cool']) === 'cool'
  const outsideC = firstNumber(inputs, 't_amb_C', 't_cond_air_C')
  const point = heatPumpPoint(cools ? 'cool' : 'heat', outsideC)
  if (point === null) return { cop: cools ? coolingCopAt(outsideC) : planningCop(outsideC) }
  return { cop: point.cop, heat_kW: point.powerKW, cool_kW: point.powerKW, supply_C: point.supplyC ?? undefined }
}
