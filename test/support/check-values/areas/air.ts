/** Air rows: moist air, moisture, carbon dioxide and glass. */
import * as breath from '../../../../shared/climate/sources/breath.ts'
import type { Sex } from '../../../../shared/climate/sources/breath.ts'
import { GLASS, outsideFilmWPerM2K, paneSurface, paneUWPerM2K } from '../../../../shared/climate/sources/glass.ts'
import * as air from '../../../../shared/climate/sources/psychrometrics.ts'
import { RefusedInput, byWords, firstNumber, has, number, numberOr, text } from '../rows.ts'
import type { Handler, Inputs, Ours } from '../rows.ts'

const STANDARD_PA = 101_325

/** Coldest dew point that the handbook's equations reach, °C; air without water has none at all. */
const COLDEST_DEW_C = -100

/** Everything that a temperature and a humidity ratio fix. */
function moistAir(tempC: number, ratio: number, pressurePa: number): Ours {
  const humidity01 = ratio === 0 ? 0 : air.relativeHumidity01(tempC, ratio, pressurePa)
  const vapourPa = humidity01 * air.saturationPressurePa(tempC)
  return {
    w_kgkg: ratio,
    rh: humidity01,
    rh_pct: 100 * humidity01,
    t_dew_C:
      vapourPa > air.saturationPressurePa(COLDEST_DEW_C) ? air.dewPointOfRatioC(tempC, ratio, pressurePa) : undefined,
    // The way to the ratio and back leaves saturated air a rounding above 1.
    twb_C: humidity01 <= 1 + 1e-9 ? air.wetBulbC(tempC, Math.min(1, humidity01), pressurePa) : undefined,
    h_Jkg: air.enthalpyJPerKg(tempC, ratio),
    v_m3kg: air.volumeM3PerKg(tempC, ratio, pressurePa),
    rho_kgm3: air.moistDensityKgPerM3(tempC, ratio, pressurePa),
    abs_hum_gm3: air.absoluteHumidityGPerM3(tempC, ratio, pressurePa),
    psat_Pa: air.saturationPressurePa(tempC),
  }
}

const humidityOf = (inputs: Inputs): number =>
  has(inputs, 'rh') ? number(inputs, 'rh') : number(inputs, 'rh_pct') / 100

/** Ratio of air of a humidity; none where the vapour would press harder than the air itself (humid air hotter than it boils). */
function ratioOf(tempC: number, humidity01: number, pressurePa: number): number {
  if (humidity01 * air.saturationPressurePa(tempC) >= pressurePa)
    throw new RefusedInput(`p_Pa is ${pressurePa}, less than the vapour alone presses at t_C and rh`)
  return humidity01 === 0 ? 0 : air.humidityRatio(tempC, humidity01, pressurePa)
}

/** Ratio of air of a wet bulb; none where it lies above the dry bulb or below that of dry air. */
function ratioOfWetBulb(tempC: number, wetBulbC: number, pressurePa: number): number {
  const least = air.wetBulbC(tempC, 0, pressurePa)
  if (wetBulbC > tempC || wetBulbC < least - 1e-3)
    throw new RefusedInput(`twb_C is ${wetBulbC}, and has to lie between ${least} and the dry bulb`)
  return air.humidityRatioFromWetBulb(tempC, wetBulbC, pressurePa)
}

export const psychro: Handler = (inputs) => {
  if (has(inputs, 'alt_m')) {
    return {
      p_Pa: air.standardPressurePa(number(inputs, 'alt_m')),
      t_C: air.standardTemperatureC(number(inputs, 'alt_m')),
    }
  }
  const pressurePa = numberOr(inputs, 'p_Pa', STANDARD_PA)
  const tempC = firstNumber(inputs, 't_C', 'tdb_C')
  if (inputs['dry'] === true) return moistAir(tempC, 0, pressurePa)
  if (has(inputs, 'twb_C'))
    return moistAir(tempC, ratioOfWetBulb(tempC, number(inputs, 'twb_C'), pressurePa), pressurePa)
  if (has(inputs, 'w_kgkg')) return moistAir(tempC, number(inputs, 'w_kgkg'), pressurePa)
  if (has(inputs, 'rh') || has(inputs, 'rh_pct')) {
    const humidity01 = humidityOf(inputs)
    const moist = moistAir(tempC, ratioOf(tempC, humidity01, pressurePa), pressurePa)
    return moist['t_dew_C'] === undefined ? moist : { ...moist, t_dew_C: air.dewPointC(tempC, humidity01) }
  }
  return { psat_Pa: air.saturationPressurePa(tempC) }
}

export const moisture: Handler = (inputs) => {
  if (has(inputs, 'g_per_h_each'))
    return { total_g: number(inputs, 'persons') * number(inputs, 'g_per_h_each') * number(inputs, 'hours') }
  if (has(inputs, 'state')) {
    const state = text(inputs, 'state').toLowerCase()
    const each = state.includes('asleep')
      ? breath.ASLEEP_WATER_G_PER_H
      : state.includes('active')
        ? breath.ACTIVE_WATER_G_PER_H
        : undefined
    return each === undefined ? {} : { g_per_h: each * numberOr(inputs, 'persons', 1) }
  }
  const steady = breath.steadyHumidity({
    outsideC: number(inputs, 't_out_C'),
    outsideHumidity01: number(inputs, 'rh_out'),
    sourceGPerH: number(inputs, 'release_g_h'),
    airM3PerH: number(inputs, 'outdoor_air_m3_h'),
    insideC: number(inputs, 't_in_C'),
    pressurePa: numberOr(inputs, 'p_Pa', STANDARD_PA),
  })
  return { w_in_kgkg: steady.ratio, dew_point_in_C: steady.dewPointC, saturated: steady.saturated }
}

const isSex = (value: string): value is Sex => value === 'male' || value === 'female'

/** Ages as the table writes them: `<1`, `21-30`, `>=80`; rows also write `21 to 30`, `under 1`, `80+`. */
const agesOf = (words: string): string =>
  words
    .trim()
    .replace(/\s*(?:–|-|to)\s*/, '-')
    .replace(/^under\s*|^<\s*/, '<')
    .replace(/^(?:≥|>=|over)\s*(\d+)$|^(\d+)\+$/, '>=$1$2')

/** The published table for its own people; the equation behind it where a row states another basal rate. */
function byPerson(sex: Sex, inputs: Inputs): Ours {
  const row = breath.CARBON_DIOXIDE[sex].find((entry) => entry.ages === agesOf(text(inputs, 'age')))
  const basal = numberOr(inputs, 'bmr_MJ_day', row?.basalMJPerDay ?? Number.NaN)
  if (row !== undefined && Math.abs(basal - row.basalMJPerDay) < 0.005)
    return { L_s_1met: row.at1Met, L_s_1p2met: row.at1p2Met }
  if (Number.isNaN(basal)) return {}
  const at = (met: number): number =>
    breath.carbonDioxideLPerS({ respiratoryQuotient: 0.85, basalMJPerDay: basal, met, tempK: 273, pressureKPa: 101 })
  return { L_s_1met: at(1), L_s_1p2met: at(1.2) }
}

export const carbonDioxide: Handler = (inputs, expected) => {
  const sex = text(inputs, 'sex').toLowerCase()
  if (isSex(sex)) return byPerson(sex, inputs)
  if (sex !== '') throw new RefusedInput(`sex is ${sex}, and has to be one of male, female`)
  if (has(inputs, 'RQ')) {
    return {
      L_s: breath.carbonDioxideLPerS({
        respiratoryQuotient: number(inputs, 'RQ'),
        basalMJPerDay: number(inputs, 'BMR_MJ_day'),
        met: number(inputs, 'met'),
        tempK: number(inputs, 'T_K'),
        pressureKPa: number(inputs, 'P_kPa'),
      }),
    }
  }
  if (has(inputs, 'standard')) return limitsOf(text(inputs, 'standard'), expected)
  if (has(inputs, 'max_delta_ppm')) {
    const litres = breath.airForRiseLPerS(number(inputs, 'G_L_s'), number(inputs, 'max_delta_ppm'))
    return { Q_L_s: litres, Q_m3_h: litres * 3.6 }
  }
  if (has(inputs, 'A_eff_m2')) {
    return {
      m3_h: breath.openWindowM3PerH({
        areaM2: number(inputs, 'A_eff_m2'),
        windMPerS: number(inputs, 'wind_ms'),
        heightM: number(inputs, 'opening_height_m'),
        differenceK: number(inputs, 'dT_K'),
      }),
    }
  }
  return {
    ppm: breath.mixedPpm({
      sourceLPerS: number(inputs, 'G_L_s'),
      volumeM3: number(inputs, 'volume_m3'),
      exchangePerH: number(inputs, 'ach'),
      hours: number(inputs, 'hours'),
      outsidePpm: numberOr(inputs, 'c_out_ppm', 420),
      startPpm: numberOr(inputs, 'c0_ppm', 420),
    }),
  }
}

function limitsOf(standard: string, expected: readonly string[]): Ours {
  const limits = breath.CARBON_DIOXIDE_LIMITS
  if (/UBA|Umwelt/i.test(standard)) {
    return byWords(expected, [
      [/good|conspicuous.*min/, limits.goodBelowPpm],
      [/unacceptable|conspicuous.*max/, limits.unacceptableAbovePpm],
    ])
  }
  if (/OSHA|NIOSH/i.test(standard)) return byWords(expected, [[/8h|twa|limit/, limits.workdayPpm]])
  if (/bedroom/i.test(standard)) {
    return {
      delta_ppm_cat_I: limits.bedroomIPpm,
      delta_ppm_cat_II: limits.bedroomIIPpm,
      delta_ppm_cat_III: limits.bedroomIIIPpm,
    }
  }
  return {
    delta_ppm_cat_I: limits.categoryIPpm,
    delta_ppm_cat_II: limits.categoryIIPpm,
    delta_ppm_cat_III: limits.categoryIIIPpm,
  }
}

export const condensation: Handler = (inputs) => {
  const outside = has(inputs, 'h_ext') ? number(inputs, 'h_ext') : outsideFilmWPerM2K(number(inputs, 'wind_ms'))
  const pane = {
    outsideWPerM2K: outside,
    insideWPerM2K: numberOr(inputs, 'h_int', GLASS.insideWPerM2K),
    thicknessM: numberOr(inputs, 'thickness_m', GLASS.thicknessM),
    conductivityWPerMK: numberOr(inputs, 'lambda_W_mK', GLASS.conductivityWPerMK),
  }
  const u = { h_ext: outside, U_W_m2K: paneUWPerM2K(pane) }
  if (!has(inputs, 't_in_C')) return u
  const surface = paneSurface(pane, number(inputs, 't_in_C'), number(inputs, 't_out_C'))
  return { ...u, t_glass_in_C: surface.surfaceC, rh_at_onset_pct: 100 * surface.onsetHumidity01, frost: surface.frost }
}
