/** Night and safety rows. */
import {
  stopG,
  looseObject,
  ADAPTER_PROTECTS,
  CARGO_RESTRAINT_G,
  COLD_FOOD,
  EXTENSION_LEAD,
  GENERATOR_DISTANCE,
  HEAT_STROKE_CORE,
  HYPOTHERMIA_CORE,
  LFP_CHARGE_MINIMUM_C,
  PAYLOAD_RULE,
} from '../../../../shared/climate/sources/safety-limits.ts'
import {
  airLossWPerK,
  budgetNight,
  cooledC,
  coolingNode,
  holdingHeatW,
  plateLossWPerK,
} from '../../../../shared/climate/sources/cabin-shell.ts'
import { holdingDrawW } from '../../../../shared/climate/sources/hvac.ts'
import { has, number, numberOr, numbers, text } from '../rows.ts'
import type { Handler, Inputs, Ours } from '../rows.ts'

const S_PER_HOUR = 3600

function budget(inputs: Inputs): Ours {
  const hourly = has(inputs, 't_out_by_hour')
  const hours = hourly ? numbers(inputs, 't_out_by_hour').length : number(inputs, 'hours')
  const given = {
    lossWPerK: number(inputs, 'UA_W_K'),
    insideC: hourly ? number(inputs, 't_in_set_C') : number(inputs, 't_in_C'),
    gainW: number(inputs, 'occupants_W'),
    supplyW: number(inputs, 'supply_W'),
    overheadW: numberOr(inputs, 'charger_overhead_W', numberOr(inputs, 'overhead_W', 0)),
    efficiency01: numberOr(inputs, 'charge_eff', numberOr(inputs, 'eff', 1)),
    cop: numberOr(inputs, 'cop', 1),
  }
  if (hourly) {
    const sum = budgetNight({ ...given, outsideByHourC: numbers(inputs, 't_out_by_hour') })
    return { heater_kWh: sum.heaterElectricKWh, battery_kWh: sum.batteryKWh }
  }
  const outsideC = number(inputs, 't_out_C')
  const one = budgetNight({ ...given, outsideByHourC: [outsideC] })
  return {
    heater_W: holdingHeatW(given.lossWPerK, given.insideC, outsideC, given.gainW),
    heater_kWh: one.heaterElectricKWh * hours,
    battery_W: one.batteryKWh * 1000,
    battery_kWh: one.batteryKWh * hours,
    soc_gain_pct: (100 * one.batteryKWh * hours) / number(inputs, 'battery_kWh'),
  }
}

function tripped(inputs: Inputs, expected: readonly string[]): Ours {
  const node = {
    lossWPerK: number(inputs, 'UA_W_K'),
    heatKJPerK: number(inputs, 'C_kJ_K'),
    startC: number(inputs, 't0_C'),
    outsideC: number(inputs, 't_out_C'),
    gainW: numberOr(inputs, 'occupants_W', 0),
  }
  const { timeS, steadyC } = coolingNode(node)
  const later = expected.flatMap((name) => {
    const hours = /^t_(\d+(?:\.\d+)?)h_C$/.exec(name)?.[1]
    return hours === undefined ? [] : [[name, cooledC(node, Number(hours) * S_PER_HOUR)] as const]
  })
  return {
    ...Object.fromEntries(later),
    tau_h: timeS / S_PER_HOUR,
    t_eq_C: steadyC,
    energy_not_delivered_kWh:
      (holdingHeatW(node.lossWPerK, node.startC, node.outsideC, node.gainW) * number(inputs, 'hours')) / 1000,
  }
}

/** Two kinds of evening for one car: 0 °C outside held at 20, and 33 °C after sunset held at 22; one person, 50 m3/h of fresh air. */
function drawRatio(): number {
  const shell = plateLossWPerK({ lengthM: 2, widthM: 2, filmWPerM2K: 10, shellM2KPerW: 0.02 })
  const lossWPerK = shell + airLossWPerK(50, 1)
  const gainW = 130
  return (
    holdingDrawW({ insideC: 20, outsideC: 0, lossWPerK, gainW }) /
    holdingDrawW({ insideC: 22, outsideC: 33, lossWPerK, gainW })
  )
}

export const night: Handler = (inputs, expected) => {
  if (has(inputs, 't0_C')) return tripped(inputs, expected)
  if (has(inputs, 'UA_W_K')) return budget(inputs)
  if (/air-conditioning/i.test(text(inputs, 'case'))) {
    const ratio = drawRatio()
    return { draw_ratio_min: ratio, draw_ratio_max: ratio }
  }
  return {}
}

/** Facts by a word of their topic. */
const TOPICS: readonly (readonly [RegExp, Ours])[] = [
  [/generator/i, { min_m: GENERATOR_DISTANCE.minimumM, min_ft: GENERATOR_DISTANCE.minimumFt }],
  [/hypothermia/i, { core_below_C: HYPOTHERMIA_CORE.belowC, core_below_F: HYPOTHERMIA_CORE.belowF }],
  [
    /heat stroke/i,
    {
      core_above_F: HEAT_STROKE_CORE.aboveF,
      can_reach_F: HEAT_STROKE_CORE.canReachF,
      minutes: HEAT_STROKE_CORE.withinMinutes,
    },
  ],
  [
    /cargo/i,
    {
      forward_g: CARGO_RESTRAINT_G.forward,
      rearward_g: CARGO_RESTRAINT_G.rearward,
      lateral_g: CARGO_RESTRAINT_G.sideways,
    },
  ],
  [/payload/i, { rule: PAYLOAD_RULE }],
  [
    /food/i,
    {
      fridge_max_C: COLD_FOOD.fridgeMaximumC,
      danger_zone_C: [COLD_FOOD.dangerFromC, COLD_FOOD.dangerToC],
      hours_limit: COLD_FOOD.hoursLimit,
      hours_limit_above_32C: COLD_FOOD.hoursLimitAbove32C,
    },
  ],
  [/LFP/i, { min_cell_C: LFP_CHARGE_MINIMUM_C }],
  [
    /extension/i,
    {
      coiled_or_covered: EXTENSION_LEAD.coiledOrCovered,
      hot_cord: EXTENSION_LEAD.hotCord,
      min_gauge_general_AWG: EXTENSION_LEAD.minimumGaugeAwg,
    },
  ],
  [/adapter/i, { protected: ADAPTER_PROTECTS }],
]

export const safety: Handler = (inputs) => {
  if (has(inputs, 'stop_distance_m'))
    return { g: stopG(number(inputs, 'speed_kmh') / 3.6, number(inputs, 'stop_distance_m')) }
  if (has(inputs, 'mass_kg')) {
    const loose = looseObject(number(inputs, 'speed_kmh'), number(inputs, 'mass_kg'))
    return { ratio: loose.ratio, equivalent_kg: loose.equivalentKg, equivalent_t: loose.equivalentKg / 1000 }
  }
  return TOPICS.find(([word]) => word.test(text(inputs, 'topic')))?.[1] ?? {}
}
