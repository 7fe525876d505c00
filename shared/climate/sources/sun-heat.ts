/** Heat of the sun: on a person behind glass, and in a parked car. */

/** Projected area factors by azimuth (15 degree rows from 0) and altitude (15 degree columns from 0): ANSI/ASHRAE 55-2017 Appendix C. */
const SITTING: readonly (readonly number[])[] = [
  [0.29, 0.324, 0.305, 0.303, 0.262, 0.224, 0.177],
  [0.292, 0.328, 0.294, 0.288, 0.268, 0.227, 0.177],
  [0.288, 0.332, 0.298, 0.29, 0.264, 0.222, 0.177],
  [0.274, 0.326, 0.294, 0.289, 0.252, 0.214, 0.177],
  [0.254, 0.308, 0.28, 0.276, 0.241, 0.202, 0.177],
  [0.23, 0.282, 0.262, 0.26, 0.233, 0.193, 0.177],
  [0.216, 0.26, 0.248, 0.244, 0.22, 0.186, 0.177],
  [0.234, 0.258, 0.236, 0.227, 0.208, 0.18, 0.177],
  [0.262, 0.26, 0.224, 0.208, 0.196, 0.176, 0.177],
  [0.28, 0.26, 0.21, 0.192, 0.184, 0.17, 0.177],
  [0.298, 0.256, 0.194, 0.174, 0.168, 0.168, 0.177],
  [0.306, 0.25, 0.18, 0.156, 0.156, 0.166, 0.177],
  [0.3, 0.24, 0.168, 0.152, 0.152, 0.164, 0.177],
]
/** The same standing (ANSI/ASHRAE 55-2017 Appendix C). */
const STANDING: readonly (readonly number[])[] = [
  [0.35, 0.35, 0.314, 0.258, 0.206, 0.144, 0.082],
  [0.342, 0.342, 0.31, 0.252, 0.2, 0.14, 0.082],
  [0.33, 0.33, 0.3, 0.244, 0.19, 0.132, 0.082],
  [0.31, 0.31, 0.275, 0.228, 0.175, 0.124, 0.082],
  [0.283, 0.283, 0.251, 0.208, 0.16, 0.114, 0.082],
  [0.252, 0.252, 0.228, 0.188, 0.15, 0.108, 0.082],
  [0.23, 0.23, 0.214, 0.18, 0.148, 0.108, 0.082],
  [0.242, 0.242, 0.222, 0.18, 0.153, 0.112, 0.082],
  [0.274, 0.274, 0.245, 0.203, 0.165, 0.116, 0.082],
  [0.304, 0.304, 0.27, 0.22, 0.174, 0.121, 0.082],
  [0.328, 0.328, 0.29, 0.234, 0.183, 0.125, 0.082],
  [0.344, 0.344, 0.304, 0.244, 0.19, 0.128, 0.082],
  [0.347, 0.347, 0.308, 0.246, 0.191, 0.128, 0.082],
]

export type SunPosture = 'sitting' | 'standing' | 'supine'

const radians = (degrees: number): number => (degrees * Math.PI) / 180

/** A lying body is a standing one turned on its back: the sun's angles turn with it (ANSI/ASHRAE 55-2020 Appendix C). */
function lying(azimuthDeg: number, altitudeDeg: number): { azimuthDeg: number; altitudeDeg: number } {
  const horizontal = Math.cos(radians(altitudeDeg))
  const turned = Math.asin(Math.sin(radians(Math.abs(azimuthDeg - 90))) * horizontal)
  const around = Math.atan2(Math.sin(radians(azimuthDeg)) * horizontal, Math.sin(radians(altitudeDeg)))
  return { azimuthDeg: Math.abs(around) * (180 / Math.PI), altitudeDeg: turned * (180 / Math.PI) }
}

function projected(posture: SunPosture, azimuthDeg: number, altitudeDeg: number): number {
  const table = posture === 'sitting' ? SITTING : STANDING
  const rowPlace = Math.min(Math.max(azimuthDeg, 0), 180) / 15
  const columnPlace = Math.min(Math.max(altitudeDeg, 0), 90) / 15
  const row = Math.min(Math.floor(rowPlace), table.length - 2)
  const column = Math.min(Math.floor(columnPlace), 5)
  const at = (r: number, c: number): number => table[r]?.[c] ?? 0
  const [down, right] = [rowPlace - row, columnPlace - column]
  return (
    at(row, column) * (1 - down) * (1 - right) +
    at(row + 1, column) * down * (1 - right) +
    at(row, column + 1) * (1 - down) * right +
    at(row + 1, column + 1) * down * right
  )
}

export type SunOnPerson = {
  readonly altitudeDeg: number
  /** Between the sun and the person's front, 0 to 180 degrees. */
  readonly azimuthDeg: number
  readonly directWPerM2: number
  readonly transmittance01: number
  readonly skyView01: number
  readonly exposed01: number
  readonly absorptance01: number
  readonly posture: SunPosture
  readonly floorReflectance01?: number
}

/**
 * Effective radiant field, W/m2, and the rise of mean radiant temperature that it equals, K.
 * Source: ANSI/ASHRAE 55-2017 Appendix C; agrees with its validation table to 0.1.
 */
export function sunOnPerson(sun: SunOnPerson): { readonly fieldWPerM2: number; readonly radiantRiseK: number } {
  const share = sun.posture === 'sitting' ? 0.696 : 0.725
  const angles = sun.posture === 'supine' ? lying(sun.azimuthDeg, sun.altitudeDeg) : sun
  const diffuse = 0.2 * sun.directWPerM2
  const dome = share * sun.skyView01 * 0.5 * sun.transmittance01
  const beam =
    share *
    projected(sun.posture, angles.azimuthDeg, angles.altitudeDeg) *
    sun.transmittance01 *
    sun.exposed01 *
    sun.directWPerM2
  const fromFloor =
    dome * (sun.directWPerM2 * Math.sin(radians(sun.altitudeDeg)) + diffuse) * (sun.floorReflectance01 ?? 0.6)
  const fieldWPerM2 = ((dome * diffuse + beam + fromFloor) * sun.absorptance01) / 0.95
  return { fieldWPerM2, radiantRiseK: fieldWPerM2 / (6 * share) }
}

/** Rise of a closed parked car in clear sun: 40 °F in an hour, 80 % of it in half (McLaren, Null and Quinn 2005, Pediatrics 116:e109). */
const PARKED_STEADY_K = 42.7 / 1.8 // derived from the two published shares
const PARKED_TIME_MIN = 30 / Math.log(4) // derived: exp(-30 min / tau) = 1/4

/** Fall of the rise with warmer outside air, 1/K about 25 °C: derived from the study's days at 22 to 31 °C. */
const PARKED_FALL_PER_K = 0.027

/** Rise of the air in a closed parked car in clear sun, K, after minutes; first order, steady rise 23.7 K at 25 °C outside. */
export const parkedRiseK = (minutes: number, outsideC = 25): number =>
  PARKED_STEADY_K * (1 - PARKED_FALL_PER_K * (outsideC - 25)) * (1 - Math.exp(-minutes / PARKED_TIME_MIN))
