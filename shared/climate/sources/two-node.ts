/** Two-node body (Gagge, Fobelets and Berglund 1986) and the standard effective temperature, ANSI/ASHRAE 55. */
import { CLO_M2K_PER_W } from '../../units/index.ts'
import { pmv } from './pmv.ts'
import type { ComfortPoint } from './pmv.ts'

/** Watts a square metre per met in this model (ASHRAE 55 Appendix D). */
const MET_W = 58.2
const STEFAN_BOLTZMANN = 5.6697e-8 // W/m2K4, the value of the model's own listing
const SKIN_NEUTRAL_C = 33.7
const CORE_NEUTRAL_C = 36.8
const BODY_MASS_KG = 70
const BODY_AREA_M2 = 1.8258 // DuBois area of the model's standard person
const ATMOSPHERE_PA = 101_325
const MINUTES = 59 // one-minute steps of the hour that the index simulates

/** Saturation vapour pressure, mmHg, as the model's listing has it. */
export const saturationTorr = (tempC: number): number => Math.exp(18.6686 - 4030.183 / (tempC + 235))

export type BodyState = {
  readonly skinC: number
  readonly coreC: number
  readonly wettedness: number
  readonly evaporativeW: number
  readonly dryW: number
}

type Surroundings = {
  readonly point: ComfortPoint
  readonly atmospheres: number
  readonly vapourTorr: number
  readonly clothing: number
  readonly areaFactor: number
  readonly convection: number
  readonly radiantShare: number
  readonly wettestSkin: number
  readonly permeation: number
}

export type Posture = 'standing' | 'sitting'

/** Whether the body's own movement stirs the air; the elevated air speed method leaves it out. */
type Stirring = 'by-activity' | 'none'

/** Convection that activity alone makes, W/m2K (ASHRAE 55 Appendix D). */
const activityConvection = (met: number, stirring: Stirring): number =>
  stirring === 'by-activity' && met > 0.85 ? 5.66 * (met - 0.85) ** 0.39 : 0

function surroundings(
  point: ComfortPoint,
  how: { posture: Posture; pressurePa: number; stirring: Stirring },
): Surroundings {
  const { posture, pressurePa, stirring } = how
  const speed = Math.max(point.speedMPerS, 0.1)
  const atmospheres = pressurePa / ATMOSPHERE_PA
  const still = 3 * atmospheres ** 0.53
  const forced = 8.600001 * (speed * atmospheres) ** 0.53
  const moving = activityConvection(point.met, stirring)
  return {
    point,
    atmospheres,
    vapourTorr: point.humidity01 * saturationTorr(point.airC),
    clothing: CLO_M2K_PER_W * point.clo,
    areaFactor: 1 + 0.15 * point.clo,
    convection: Math.max(still, forced, moving),
    radiantShare: posture === 'sitting' ? 0.7 : 0.73,
    wettestSkin: point.clo > 0 ? 0.59 * speed ** -0.08 : 0.38 * speed ** -0.29,
    permeation: point.clo > 0 ? 0.45 : 1,
  }
}

/** Clothing surface by fixed point; result: its film resistance, operative temperature and radiation coefficient. */
function clothed(
  around: Surroundings,
  skinC: number,
  start: { airR: number; operativeC: number },
): { airR: number; operativeC: number; radiation: number } {
  const { point, clothing } = around
  let { airR, operativeC } = start
  let surfaceC = (airR * skinC + clothing * operativeC) / (airR + clothing)
  let radiation = 0
  for (let i = 0; i < 150; i += 1) {
    radiation = 4 * 0.95 * STEFAN_BOLTZMANN * ((surfaceC + point.radiantC) / 2 + 273.15) ** 3 * around.radiantShare
    const total = radiation + around.convection
    airR = 1 / (around.areaFactor * total)
    operativeC = (radiation * point.radiantC + around.convection * point.airC) / total
    const next = (airR * skinC + clothing * operativeC) / (airR + clothing)
    const done = Math.abs(next - surfaceC) <= 0.01
    surfaceC = next
    if (done) break
  }
  return { airR, operativeC, radiation }
}

/** Sweat and diffusion through skin and clothing, W/m2, and wettedness. */
export function evaporation(input: { sweatW: number; maximumW: number; wettestSkin: number }): {
  evaporativeW: number
  wettedness: number
} {
  const maximumW = input.maximumW === 0 ? 0.001 : input.maximumW
  const wettedness = 0.06 + (0.94 * input.sweatW) / maximumW
  if (maximumW < 0) return { evaporativeW: 0, wettedness: input.wettestSkin }
  if (wettedness <= input.wettestSkin) return { evaporativeW: wettedness * maximumW, wettedness }
  const share = input.wettestSkin / 0.94
  return { evaporativeW: share * maximumW + 0.06 * (1 - share) * maximumW, wettedness: input.wettestSkin }
}

/** The body after an hour in constant surroundings, and the coefficients that the index needs. */
function anHour(around: Surroundings): { body: BodyState; radiation: number } {
  const { point, clothing } = around
  const restW = (point.met - (point.workMet ?? 0)) * MET_W
  let skinC = SKIN_NEUTRAL_C
  let coreC = CORE_NEUTRAL_C
  let flow = 6.3
  let skinShare = 0.1
  let metabolicW = point.met * MET_W
  let evaporativeW = 0.1 * point.met
  let wettedness = 0
  let dryW = 0
  const neutralBodyC = 0.1 * SKIN_NEUTRAL_C + 0.9 * CORE_NEUTRAL_C
  const breathW = 0.0023 * metabolicW * (44 - around.vapourTorr) + 0.0014 * metabolicW * (34 - point.airC)
  const first = 4.7 + around.convection
  let film = {
    airR: 1 / (around.areaFactor * first),
    operativeC: (4.7 * point.radiantC + around.convection * point.airC) / first,
    radiation: 4.7,
  }
  for (let minute = 0; minute < MINUTES; minute += 1) {
    film = clothed(around, skinC, film)
    dryW = (skinC - film.operativeC) / (film.airR + clothing)
    const inward = (coreC - skinC) * (5.28 + 1.163 * flow)
    const coreStored = metabolicW - inward - breathW - (point.workMet ?? 0) * MET_W
    const skinStored = inward - dryW - evaporativeW
    skinC += (skinStored * BODY_AREA_M2) / (0.97 * skinShare * BODY_MASS_KG) / 60
    coreC += (coreStored * BODY_AREA_M2) / (0.97 * (1 - skinShare) * BODY_MASS_KG) / 60
    const bodyC = skinShare * skinC + (1 - skinShare) * coreC
    const skinCold = Math.max(SKIN_NEUTRAL_C - skinC, 0)
    const skinWarm = Math.max(skinC - SKIN_NEUTRAL_C, 0)
    flow = Math.min(90, Math.max(0.5, (6.3 + 120 * Math.max(coreC - CORE_NEUTRAL_C, 0)) / (1 + 0.5 * skinCold)))
    const sweat = Math.min(500, 170 * Math.max(bodyC - neutralBodyC, 0) * Math.exp(skinWarm / 10.7))
    const lewis = 2.2 / around.atmospheres
    const vapourR = 1 / (lewis * around.areaFactor * around.convection) + clothing / (lewis * around.permeation)
    const maximumW = (saturationTorr(skinC) - around.vapourTorr) / vapourR
    ;({ evaporativeW, wettedness } = evaporation({ sweatW: 0.68 * sweat, maximumW, wettestSkin: around.wettestSkin }))
    metabolicW = restW + 19.4 * skinCold * Math.max(CORE_NEUTRAL_C - coreC, 0)
    skinShare = 0.0417737 + 0.7451833 / (flow + 0.585417)
  }
  return { body: { skinC, coreC, wettedness, evaporativeW, dryW }, radiation: film.radiation }
}

/** Temperature of the standard room in which a body in this state loses as much heat, °C: the root of the balance by Newton's rule. */
export function standardTemperatureOf(input: {
  readonly body: BodyState
  readonly radiation: number
  readonly convection: number
  readonly met: number
  readonly atmospheres: number
}): number {
  const { body, radiation, convection } = input
  const total = convection + radiation
  const clo = 1.52 / (input.met + 0.6944) - 0.1835
  const clothing = CLO_M2K_PER_W * clo
  const area = 1 + 0.25 * clo
  const bare = 1 / (1 + CLO_M2K_PER_W * area * total * clo)
  const permeation = (0.45 * (convection / total) * (1 - bare)) / (convection / total - bare * 0.45)
  const lewis = 2.2 / input.atmospheres
  const dryH = 1 / (1 / (area * total) + clothing)
  const vapourH = 1 / (1 / (lewis * area * convection) + clothing / (lewis * permeation))
  const skinTorr = saturationTorr(body.skinC)
  const lossW = body.dryW + body.evaporativeW
  const excess = (tempC: number): number =>
    lossW - dryH * (body.skinC - tempC) - body.wettedness * vapourH * (skinTorr - 0.5 * saturationTorr(tempC))
  let tempC = body.skinC - lossW / dryH
  for (let i = 0; i < 100; i += 1) {
    const step = (1e-4 * excess(tempC)) / (excess(tempC + 1e-4) - excess(tempC))
    tempC -= step
    if (Math.abs(step) <= 1e-6) break
  }
  return tempC
}

function effectiveC(point: ComfortPoint, how: { posture: Posture; pressurePa: number; stirring: Stirring }): number {
  const around = surroundings(point, how)
  const { body, radiation } = anHour(around)
  const convection = Math.max(3 * around.atmospheres ** 0.53, activityConvection(point.met, how.stirring), 3)
  return standardTemperatureOf({
    body,
    radiation,
    convection,
    met: point.met - (point.workMet ?? 0),
    atmospheres: around.atmospheres,
  })
}

/**
 * Standard effective temperature, °C.
 * Temperatures in °C, air speed in m/s, humidity 0 to 1, met, clo; posture changes the radiating share of the body.
 * Source: ANSI/ASHRAE 55-2017 Appendix D, after Gagge 1986; within 0.1 K of its validation table.
 */
export const standardEffectiveC = (
  point: ComfortPoint,
  posture: Posture = 'standing',
  pressurePa = ATMOSPHERE_PA,
): number => effectiveC(point, { posture, pressurePa, stirring: 'by-activity' })

/** Air speed at and below which air counts as still, m/s (ASHRAE 55). */
const STILL_M_PER_S = 0.1

/**
 * Cooling by moving air, K: how much colder still air would feel the same. 0 in still air; not below 0, at most 40.
 * Source: ANSI/ASHRAE 55-2017 elevated air speed method, Appendix D.
 */
export function coolingEffectK(point: ComfortPoint): number {
  if (point.speedMPerS <= STILL_M_PER_S) return 0
  const how = { posture: 'sitting', pressurePa: ATMOSPHERE_PA, stirring: 'none' } as const
  const moving = effectiveC(point, how)
  let [low, high] = [0, 40]
  for (let i = 0; i < 50; i += 1) {
    const middle = (low + high) / 2
    const still = effectiveC(
      { ...point, airC: point.airC - middle, radiantC: point.radiantC - middle, speedMPerS: STILL_M_PER_S },
      how,
    )
    if (still > moving) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** Predicted mean vote of ANSI/ASHRAE 55: in moving air, that of still air colder by the cooling effect. */
export function ashraePmv(point: ComfortPoint): number {
  const effectK = coolingEffectK(point)
  return pmv({
    ...point,
    airC: point.airC - effectK,
    radiantC: point.radiantC - effectK,
    speedMPerS: Math.min(point.speedMPerS, STILL_M_PER_S),
  })
}
