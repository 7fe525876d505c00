/** Insulation of clothes, bedding and mats, and activity, as tables and conversions. */
import { CLO_M2K_PER_W, R_US_M2K_PER_W, TOG_M2K_PER_W } from '../../units/index.ts'

/** Activity, met (ANSI/ASHRAE 55 typical tasks, as carried in pythermalcomfort 3). */
export const ACTIVITY_MET: Readonly<Record<string, number>> = {
  Sleeping: 0.7,
  Reclining: 0.8,
  'Seated, quiet': 1,
  'Reading, seated': 1,
  Writing: 1,
  Typing: 1.1,
  'Standing, relaxed': 1.2,
  'Filing, seated': 1.2,
  'Flying aircraft, routine': 1.2,
  'Filing, standing': 1.4,
  'Driving a car': 1.5,
  'Walking about': 1.7,
  Cooking: 1.8,
  'Table sawing': 1.8,
  'Walking 2mph (3.2kmh)': 2,
  'Lifting/packing': 2.1,
  'Seated, heavy limb movement': 2.2,
  'Light machine work': 2.2,
  'Flying aircraft, combat': 2.4,
  'Walking 3mph (4.8kmh)': 2.6,
  'House cleaning': 2.7,
  'Driving, heavy vehicle': 3.2,
  Dancing: 3.4,
  Calisthenics: 3.5,
  'Walking 4mph (6.4kmh)': 3.8,
  Tennis: 3.8,
  'Heavy machine work': 4,
  'Handling 100lb (45 kg) bags': 4,
  'Pick and shovel work': 4.4,
  Basketball: 6.3,
  Wrestling: 7.8,
}

/** Garment insulation, clo (ANSI/ASHRAE 55 garment table, as carried in pythermalcomfort 3). */
export const GARMENT_CLO: Readonly<Record<string, number>> = {
  'Metal chair': 0,
  Bra: 0.01,
  'Wooden stool': 0.01,
  'Ankle socks': 0.02,
  'Shoes or sandals': 0.02,
  Slippers: 0.03,
  'Panty hose': 0.02,
  'Calf length socks': 0.03,
  "Women's underwear": 0.03,
  "Men's underwear": 0.04,
  'Knee socks (thick)': 0.06,
  'Short shorts': 0.06,
  'Walking shorts': 0.08,
  'T-shirt': 0.08,
  'Standard office chair': 0.1,
  'Executive chair': 0.15,
  Boots: 0.1,
  'Sleeveless scoop-neck blouse': 0.12,
  'Half slip': 0.14,
  'Long underwear bottoms': 0.15,
  'Full slip': 0.16,
  'Short-sleeve knit shirt': 0.17,
  'Sleeveless vest (thin)': 0.1,
  'Sleeveless vest (thick)': 0.17,
  'Sleeveless short gown (thin)': 0.18,
  'Short-sleeve dress shirt': 0.19,
  'Sleeveless long gown (thin)': 0.2,
  'Long underwear top': 0.2,
  'Thick skirt': 0.23,
  'Long-sleeve dress shirt': 0.25,
  'Long-sleeve flannel shirt': 0.34,
  'Long-sleeve sweat shirt': 0.34,
  'Short-sleeve hospital gown': 0.31,
  'Short-sleeve short robe (thin)': 0.34,
  'Short-sleeve pajamas': 0.42,
  'Long-sleeve long gown': 0.46,
  'Long-sleeve short wrap robe (thick)': 0.48,
  'Long-sleeve pajamas (thick)': 0.57,
  'Long-sleeve long wrap robe (thick)': 0.69,
  'Thin trousers': 0.15,
  'Thick trousers': 0.24,
  Sweatpants: 0.28,
  Overalls: 0.3,
  Coveralls: 0.49,
  'Thin skirt': 0.14,
  'Long-sleeve shirt dress (thin)': 0.33,
  'Long-sleeve shirt dress (thick)': 0.47,
  'Short-sleeve shirt dress': 0.29,
  'Sleeveless, scoop-neck shirt (thin)': 0.23,
  'Sleeveless, scoop-neck shirt (thick)': 0.27,
  'Long sleeve shirt (thin)': 0.25,
  'Long sleeve shirt (thick)': 0.36,
  'Single-breasted coat (thin)': 0.36,
  'Single-breasted coat (thick)': 0.44,
  'Double-breasted coat (thin)': 0.42,
  'Double-breasted coat (thick)': 0.48,
}

/** Sum of garments worn together, clo; null where one is not in the table. */
export function garmentsClo(garments: readonly string[]): number | null {
  let sum = 0
  for (const garment of garments) {
    const clo = GARMENT_CLO[garment]
    if (clo === undefined) return null
    sum += clo
  }
  return sum
}

/** m2K/W of an insulation in clo (1 clo = 0.155 m2K/W, ISO 9920). */
export const fromClo = (clo: number): number => clo * CLO_M2K_PER_W
/** clo of an insulation in m2K/W. */
export const toClo = (m2KPerW: number): number => m2KPerW / CLO_M2K_PER_W
/** m2K/W of a flat togmeter value (1 tog = 0.1 m2K/W, BS 4745); a duvet draped on a person insulates far less. */
export const fromTog = (tog: number): number => tog * TOG_M2K_PER_W
/** tog of an insulation in m2K/W. */
export const toTog = (m2KPerW: number): number => m2KPerW / TOG_M2K_PER_W
/** m2K/W of a mat's R value in US units (ASTM F3340). */
export const fromPadR = (padR: number): number => padR * R_US_M2K_PER_W
/** R value of stacked mats: they add (ASTM F3340). */
export const stackedPadR = (padR: readonly number[]): number => padR.reduce((sum, r) => sum + r, 0)

/** Skin area, m2, from mass in kg and height in m (DuBois and DuBois 1916). */
export const bodyAreaM2 = (massKg: number, heightM: number): number => 0.202 * massKg ** 0.425 * heightM ** 0.725

/** Coldest comfort rating for which the ISO 23537-1:2016 model is stated to hold, °C (scope, note 2). */
export const BAG_MODEL_LOWEST_C = -20

/** The order of a bag's ratings by definition (EN 13537, ISO 23537). */
export const BAG_LABEL_ORDER = 'T_comfort > T_limit > T_extreme'

/** Limit and extreme of a bag, °C, from its comfort rating, °C: a straight line through typical labels (from memory); a fallback only. */
export const labelsFromComfort = (comfortC: number): { readonly limitC: number; readonly extremeC: number } => ({
  limitC: 1.2 * comfortC - 5.5,
  extremeC: 1.65 * comfortC - 22.6,
})

/**
 * Air temperature at which a sleeper's dry loss equals heat made, °C: T = Tskin - M f R.
 * Metabolic rate in W/m2, dry share 0 to 1 (the rest is breath and diffusion), insulation in m2K/W with its air layer.
 * Source: derived, first order; stands in for the annexes of ISO 23537, which were not available.
 */
export const balanceTemperatureC = (input: {
  readonly metabolicWPerM2: number
  readonly dryShare01: number
  readonly insulationM2KPerW: number
  readonly skinC: number
}): number => input.skinC - input.metabolicWPerM2 * input.dryShare01 * input.insulationM2KPerW
