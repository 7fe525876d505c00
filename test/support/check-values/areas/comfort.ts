/** Comfort rows: votes, standard temperature, local discomfort, cold, sleep and insulation. */
import { CLO_M2K_PER_W, MET_W_PER_M2 } from '../../../../shared/units/index.ts'
import * as insulated from '../../../../shared/climate/sources/insulation.ts'
import { ireq, windChillC } from '../../../../shared/climate/sources/ireq.ts'
import {
  LOCAL_LIMITS,
  ankleDraughtPercent,
  asymmetryPercent,
  draughtPercent,
  floorPercent,
  gradientPercent,
  headAnklePercent,
  operativeC,
} from '../../../../shared/climate/sources/local-discomfort.ts'
import type { Asymmetry } from '../../../../shared/climate/sources/local-discomfort.ts'
import { pmv, ppdPercent } from '../../../../shared/climate/sources/pmv.ts'
import type { ComfortPoint } from '../../../../shared/climate/sources/pmv.ts'
import { sleepCourse, sleepMet } from '../../../../shared/climate/sources/sleep-two-node.ts'
import { standardEffectiveC } from '../../../../shared/climate/sources/two-node.ts'
import { RefusedInput, firstNumber, has, number, numberOr, numbers, oneOf, text, texts } from '../rows.ts'
import type { Handler, Inputs } from '../rows.ts'

const PERCENT = 100

const airOf = (inputs: Inputs): number => firstNumber(inputs, 'ta_C', 'tdb_C', 't_operative_C')
const speedOf = (inputs: Inputs): number =>
  numberOr(inputs, 'var_ms', numberOr(inputs, 'vr_ms', numberOr(inputs, 'v_ms', 0.1)))

const pointOf = (inputs: Inputs): ComfortPoint => ({
  airC: airOf(inputs),
  radiantC: numberOr(inputs, 'tr_C', airOf(inputs)),
  speedMPerS: speedOf(inputs),
  humidity01: number(inputs, 'rh_pct') / PERCENT,
  met: number(inputs, 'met'),
  clo: number(inputs, 'clo'),
  workMet: numberOr(inputs, 'wme', 0),
})

export const pmvRows: Handler = (inputs) => {
  if (has(inputs, 'pmv')) return { ppd: ppdPercent(number(inputs, 'pmv')) }
  const point = pointOf(inputs)
  if (point.met - (point.workMet ?? 0) <= 0) throw new RefusedInput('met leaves no heat after the work of wme')
  const vote = pmv(point)
  return { pmv: vote, ppd: ppdPercent(vote) }
}

export const setRows: Handler = (inputs) => {
  const posture = oneOf(inputs, 'position', ['standing', 'sitting'])
  return { set_C: standardEffectiveC(pointOf(inputs), posture, numberOr(inputs, 'p_Pa', 101_325)) }
}

export const operative: Handler = (inputs) => ({
  to_C: operativeC(
    number(inputs, 'ta_C'),
    number(inputs, 'tr_C'),
    number(inputs, 'v_ms'),
    oneOf(inputs, 'standard', ['iso', 'ashrae']),
  ),
})

function asymmetryOf(kind: string): Asymmetry | null {
  const heat = /warm|hot/.test(kind) ? 'warm' : /cool|cold/.test(kind) ? 'cool' : null
  const surface = /ceiling|roof/.test(kind) ? 'ceiling' : /wall|window/.test(kind) ? 'wall' : null
  return heat === null || surface === null ? null : `${heat}-${surface}`
}

export const local: Handler = (inputs) => {
  if (has(inputs, 'vertical_K_per_m')) {
    const percent = gradientPercent(pointOf(inputs), number(inputs, 'vertical_K_per_m'))
    return { ppd_vg: percent, acceptable: percent <= LOCAL_LIMITS.gradientPercent }
  }
  if (has(inputs, 'v_ankle_ms')) {
    const percent = ankleDraughtPercent(pointOf(inputs), number(inputs, 'v_ankle_ms'))
    return { ppd_ad: percent, acceptable: percent <= LOCAL_LIMITS.anklePercent }
  }
  if (has(inputs, 'standard')) {
    return {
      limit_warm_ceiling_K: LOCAL_LIMITS.warmCeilingK,
      limit_cool_ceiling_K: LOCAL_LIMITS.coolCeilingK,
      limit_warm_wall_K: LOCAL_LIMITS.warmWallK,
      limit_cool_wall_K: LOCAL_LIMITS.coolWallK,
      limit_head_ankle_K: LOCAL_LIMITS.headAnkleK,
      floor_min_C: LOCAL_LIMITS.floorMinimumC,
      floor_max_C: LOCAL_LIMITS.floorMaximumC,
    }
  }
  if (has(inputs, 'Tu_pct'))
    return { dr_pct: draughtPercent(number(inputs, 'ta_C'), number(inputs, 'v_ms'), number(inputs, 'Tu_pct')) }
  if (has(inputs, 't_floor_C')) return { pd_pct: floorPercent(number(inputs, 't_floor_C')) }
  const kind = text(inputs, 'kind').toLowerCase()
  const asymmetry = asymmetryOf(kind)
  if (asymmetry !== null) return { pd_pct: asymmetryPercent(asymmetry, firstNumber(inputs, 'delta_tpr_K', 'delta_K')) }
  if (/ankle|vertical/.test(kind) || has(inputs, 'delta_K'))
    return { pd_pct: headAnklePercent(number(inputs, 'delta_K')) }
  throw new RefusedInput(`kind is “${kind}”: no local discomfort that the engine knows by these inputs`)
}

export const cold: Handler = (inputs) => {
  if (has(inputs, 'v10_kmh')) return { twc_C: windChillC(number(inputs, 'ta_C'), number(inputs, 'v10_kmh')) }
  const required = ireq({
    metabolicWPerM2: number(inputs, 'M_Wm2'),
    workWPerM2: numberOr(inputs, 'W', 0),
    airC: number(inputs, 'ta_C'),
    radiantC: number(inputs, 'tr_C'),
    permeabilityLPerM2S: number(inputs, 'air_permeability_lm2s'),
    walkMPerS: number(inputs, 'walk_ms'),
    windMPerS: number(inputs, 'v_ms'),
    humidity01: number(inputs, 'rh_pct') / PERCENT,
    wornClo: numberOr(inputs, 'Icl_clo', 2.5),
  })
  if (required === null) return {}
  return {
    IREQmin_clo: required.minimal.ireqClo,
    IREQneutral_clo: required.neutral.ireqClo,
    ICLmin_clo: required.minimal.basicClo,
    ICLneutral_clo: required.neutral.basicClo,
    DLEmin_h: required.minimal.limitH ?? 'more than 8',
    DLEneutral_h: required.neutral.limitH ?? 'more than 8',
  }
}

export const sleep: Handler = (inputs) => {
  const clock = oneOf(inputs, 'polynomial_argument', ['hours', 'minutes']) === 'minutes' ? 'minutes' : 'published-hours'
  if (has(inputs, 'minutes_asleep')) return { met: sleepMet(number(inputs, 'minutes_asleep'), clock) }
  const [state] = sleepCourse(
    {
      airC: number(inputs, 'ta_C'),
      radiantC: number(inputs, 'tr_C'),
      speedMPerS: number(inputs, 'v_ms'),
      humidity01: number(inputs, 'rh_pct') / PERCENT,
      clo: number(inputs, 'clo'),
      quiltCm: number(inputs, 'quilt_cm'),
    },
    [number(inputs, 'minute')],
    clock,
  )
  if (state === undefined) return {}
  return {
    set_C: state.setC,
    t_core_C: state.coreC,
    t_skin_C: state.skinC,
    wettedness: state.wettedness,
    t_sens: state.sensation,
    skin_blood_flow: state.skinBloodFlow,
    met_shivering_Wm2: state.shiveringW,
  }
}

export const insulation: Handler = (inputs) => {
  if (has(inputs, 'activity')) {
    const met = insulated.ACTIVITY_MET[text(inputs, 'activity')]
    return met === undefined ? {} : { met, W_m2: met * MET_W_PER_M2 }
  }
  if (has(inputs, 'garment')) return { clo: insulated.GARMENT_CLO[text(inputs, 'garment')] }
  if (has(inputs, 'garments')) return { clo_sum: insulated.garmentsClo(texts(inputs, 'garments')) ?? undefined }
  if (has(inputs, 'rule')) return { invariant: insulated.BAG_LABEL_ORDER }
  if (has(inputs, 'label_comfort_C')) {
    const { limitC, extremeC } = insulated.labelsFromComfort(number(inputs, 'label_comfort_C'))
    return { label_limit_C: limitC, label_extreme_C: extremeC, est_limit_C: limitC, est_extreme_C: extremeC }
  }
  if (has(inputs, 'M_Wm2')) {
    return {
      t_balance_C: insulated.balanceTemperatureC({
        metabolicWPerM2: number(inputs, 'M_Wm2'),
        dryShare01: number(inputs, 'dry_fraction'),
        insulationM2KPerW: number(inputs, 'R_total_m2K_W'),
        skinC: number(inputs, 't_skin_C'),
      }),
    }
  }
  if (has(inputs, 'kg')) return { dubois_m2: insulated.bodyAreaM2(number(inputs, 'kg'), number(inputs, 'm')) }
  if (has(inputs, 'pad_R_us')) {
    const stack = Array.isArray(inputs['pad_R_us']) ? numbers(inputs, 'pad_R_us') : [number(inputs, 'pad_R_us')]
    const padR = insulated.stackedPadR(stack)
    return { pad_R_us: padR, m2K_W: insulated.fromPadR(padR), clo: insulated.toClo(insulated.fromPadR(padR)) }
  }
  if (has(inputs, 'tog')) {
    const m2KPerW = insulated.fromTog(number(inputs, 'tog'))
    return { m2K_W: m2KPerW, clo: insulated.toClo(m2KPerW) }
  }
  if (has(inputs, 'clo')) {
    const m2KPerW = insulated.fromClo(number(inputs, 'clo'))
    return { m2K_W: m2KPerW, tog: insulated.toTog(m2KPerW) }
  }
  if (has(inputs, 'm2K_W')) {
    const m2KPerW = number(inputs, 'm2K_W')
    return { clo: m2KPerW / CLO_M2K_PER_W, tog: insulated.toTog(m2KPerW) }
  }
  return text(inputs, 'standard').includes('23537') ? { model_lower_validity_C: insulated.BAG_MODEL_LOWEST_C } : {}
}
