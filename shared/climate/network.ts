/** The cabin as a network of conductances: which node touches which, by covers, wind and overrides. */
import { invariant } from '../result/index.ts'
import { J_PER_WH } from '../units/index.ts'
import type { CabinParameters, GlassPane } from './types.ts'

/** Inner film of glass and lining, W/m2K (EN 673 gives 7.7 indoors, from memory). */
export const INNER_FILM_W_PER_M2K = 7.7
/** Share of the inner film that is convection, W/m2K (EN 673 gives 3.6 of 8, from memory). */
export const INNER_CONVECTION_W_PER_M2K = 3.4
/** 4 mm of glass at 1 W/mK, m2K/W (EN 673). */
const PANE_M2K_PER_W = 0.004
/** 4 mm of glass: 2500 kg/m3, 840 J/kgK (from memory). */
const PANE_J_PER_M2K = 0.004 * 2500 * 840
/** Share of the body that lies under the bed and feet (estimate). */
export const FLOOR_SHARE_01 = 0.2
/** Share of the rest of the body that stands round the front seats (estimate). */
export const FRONT_SHARE_01 = 0.45
/** Share of the cabin air round the front seats (estimate). */
const FRONT_AIR_01 = 0.4
/** Share of the interior's capacity in the floor and what lies on it (estimate). */
const FLOOR_CAPACITY_01 = 0.15
/** Trim and seats met by air, as a multiple of the body's area (estimate). */
const INTERIOR_AREA_RATIO = 0.9
/** Exchange between front and rear without a fan, W/K (buoyancy through a 0.5 m2 opening at 1 to 2 K, derived). */
const STILL_MIXING_W_PER_K = 60
/** Air that the running fan drives past the front seats, m3/h (a blower on low, common practice). */
const FAN_MIXING_M3_PER_H = 300
/** View of the sky averaged over roof and sides of the body without its floor (derived). */
export const BODY_SKY_VIEW_01 = 0.35
/** Emissivity of glass and paint at long wave (from memory). */
export const EMISSIVITY_01 = 0.88
/** Stronger winds are reported than stand at a parked car's glass; the film's formula turns beyond 46 m/s. */
const FILM_WIND_MAX_M_PER_S = 30

export type Pane = {
  readonly id: GlassPane['id']
  readonly atFront: boolean
  readonly areaM2: number
  readonly skyView01: number
  readonly capacityJPerK: number
  /** Air to glass, and glass to outside, W/K. */
  readonly innerWPerK: number
  readonly outerWPerK: number
}

export type Network = {
  readonly panes: readonly Pane[]
  readonly frontJPerK: number
  readonly bedJPerK: number
  readonly massJPerK: number
  readonly floorJPerK: number
  readonly frontBodyWPerK: number
  readonly bedBodyWPerK: number
  readonly frontMassWPerK: number
  readonly bedMassWPerK: number
  readonly bedFloorWPerK: number
  readonly floorOutWPerK: number
  readonly mixingStillWPerK: number
  readonly mixingFanWPerK: number
  readonly outerFilmWPerM2K: number
  /** What the parts were multiplied by to meet the owner's figures. */
  readonly scale: number
  /** Whole shell in steady state, W/K. */
  readonly shellWPerK: number
}

/** Outer film of a pane, W/m2K, by wind in m/s: 8.23 + 3.33 v - 0.036 v2 (EnergyPlus, very smooth glass, from memory). */
export function outerFilmWPerM2K(windMPerS: number): number {
  const v = Math.min(Math.max(windMPerS, 0), FILM_WIND_MAX_M_PER_S)
  return 8.23 + 3.33 * v - 0.036 * v * v
}

/** Loss of one m2 of glass from air to outside, W/m2K, by wind and by a cover in series, m2K/W. */
export const glassUWPerM2K = (windMPerS: number, coverM2KPerW: number): number =>
  1 / (1 / outerFilmWPerM2K(windMPerS) + PANE_M2K_PER_W + 1 / INNER_FILM_W_PER_M2K + coverM2KPerW)

/** Loss of the shell from its parts, W/K: glass by wind and cover, and body. Overrides and scale are not in it. */
export function shellFromPartsWPerK(cabin: CabinParameters, windMPerS: number, covers: boolean): number {
  const glassM2 = cabin.panes.reduce((sum, pane) => sum + pane.areaM2, 0)
  return glassM2 * glassUWPerM2K(windMPerS, covers ? cabin.coverM2KPerW : 0) + cabin.bodyAreaM2 * cabin.bodyUWPerM2K
}

/** What the parts are multiplied by so that the shell meets the owner's own figures and calibration. */
function shellScale(cabin: CabinParameters, windMPerS: number, covers: boolean): number {
  const still = shellFromPartsWPerK(cabin, 0, covers)
  const own = overrideWPerK(cabin, covers)
  const wind =
    cabin.windFactorPerMPerS === null
      ? 1
      : ((1 + cabin.windFactorPerMPerS * Math.max(windMPerS, 0)) * still) /
        shellFromPartsWPerK(cabin, windMPerS, covers)
  return (own === null ? 1 : own / still) * wind * cabin.lossScale
}

/** The owner's still-air loss, W/K; where only one of bare and covered is known, the other follows from the parts' ratio. */
function overrideWPerK(cabin: CabinParameters, covers: boolean): number | null {
  const own = covers ? cabin.lossCoveredWPerK : cabin.lossBareWPerK
  if (own !== null) return own
  const other = covers ? cabin.lossBareWPerK : cabin.lossCoveredWPerK
  if (other === null) return null
  return (other * shellFromPartsWPerK(cabin, 0, covers)) / shellFromPartsWPerK(cabin, 0, !covers)
}

/**
 * The network of a cabin at one wind.
 * Cabin in its units, wind in m/s (reported, zero or more), covers up or not, density times heat of air in J/m3K.
 * Result: capacities J/K, conductances W/K; in steady state they add to `shellWPerK`.
 */
export function buildNetwork(cabin: CabinParameters, windMPerS: number, covers: boolean, airJPerM3K: number): Network {
  invariant(
    cabin.airVolumeM3 > 0 && cabin.heatCapacityKJPerK > 0 && cabin.bodyAreaM2 > 0,
    'a cabin has air, body and mass',
  )
  const scale = shellScale(cabin, windMPerS, covers)
  const film = outerFilmWPerM2K(windMPerS)
  const cover = covers ? cabin.coverM2KPerW : 0
  const panes = cabin.panes.map((pane) => paneOf(pane, scale, film, cover))
  const body = cabin.bodyAreaM2 * cabin.bodyUWPerM2K * scale
  const floor = body * FLOOR_SHARE_01
  // Inner film under the bed: at least twice the loss behind it, so that the outer part stays positive.
  const bedFloorWPerK = Math.max(cabin.bodyAreaM2 * FLOOR_SHARE_01 * INNER_FILM_W_PER_M2K, 2 * floor)
  const airJPerK = cabin.airVolumeM3 * airJPerM3K
  const solidJPerK = cabin.heatCapacityKJPerK * 1000
  const interiorWPerK = cabin.bodyAreaM2 * INTERIOR_AREA_RATIO * INNER_FILM_W_PER_M2K
  return {
    panes,
    frontJPerK: airJPerK * FRONT_AIR_01,
    bedJPerK: airJPerK * (1 - FRONT_AIR_01),
    massJPerK: Math.max(solidJPerK * (1 - FLOOR_CAPACITY_01) - airJPerK, solidJPerK * 0.5),
    floorJPerK: solidJPerK * FLOOR_CAPACITY_01,
    frontBodyWPerK: (body - floor) * FRONT_SHARE_01,
    bedBodyWPerK: (body - floor) * (1 - FRONT_SHARE_01),
    frontMassWPerK: interiorWPerK * FRONT_SHARE_01,
    bedMassWPerK: interiorWPerK * (1 - FRONT_SHARE_01),
    bedFloorWPerK,
    floorOutWPerK: 1 / (1 / floor - 1 / bedFloorWPerK),
    mixingStillWPerK: STILL_MIXING_W_PER_K,
    mixingFanWPerK: STILL_MIXING_W_PER_K + (FAN_MIXING_M3_PER_H * airJPerM3K) / J_PER_WH,
    outerFilmWPerM2K: film,
    scale,
    shellWPerK: panes.reduce((sum, pane) => sum + 1 / (1 / pane.innerWPerK + 1 / pane.outerWPerK), 0) + body,
  }
}

function paneOf(pane: GlassPane, scale: number, filmWPerM2K: number, coverM2KPerW: number): Pane {
  return {
    id: pane.id,
    atFront: pane.id === 'windscreen' || pane.id === 'front-sides',
    areaM2: pane.areaM2,
    skyView01: pane.skyView01,
    capacityJPerK: pane.areaM2 * PANE_J_PER_M2K,
    innerWPerK: (scale * pane.areaM2) / (1 / INNER_FILM_W_PER_M2K + coverM2KPerW),
    outerWPerK: (scale * pane.areaM2) / (1 / filmWPerM2K + PANE_M2K_PER_W),
  }
}
