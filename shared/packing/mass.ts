/** Masses by moments: axles, roof, bays, and what should be said about heavy things. */
import type { SceneState } from './search/state.ts'
import type { Scene } from './scene.ts'
import { STANDARD_GRAVITY_M_PER_S2, G_PER_KG } from '../units/index.ts'
import type { MassReport, PackCaution, PackFault } from './types.ts'

/** In a crash at 50 km/h a loose thing weighs 20 to 50 times its weight (published range, as the packing brief states it). */
const CRASH_TIMES = [20, 50] as const
/** A thing of this mass is worth a word where nothing holds it, g (common practice). */
const WORTH_SAYING_G = 2000
/** From this mass a high place is worth a word, g (common practice). */
const HEAVY_HIGH_G = 10_000
const N_PER_KN = 1000

/** Loads of a drive layout: total, axles where the vehicle's data give them, roof, bays, centre. */
export const massReport = (scene: Scene, state: SceneState): MassReport => {
  const { vehicle } = scene.model.input
  const bayG: Record<string, number> = {}
  let loadG = 0
  let roofG = 0
  const moment: [number, number, number] = [0, 0, 0]
  for (const bay of state.bays) {
    const { id, kind, originMm, belongsTo } = bay.model.bay
    bayG[id] = bay.massG
    if (belongsTo === 'site') continue
    loadG += bay.massG
    if (kind === 'roof-box') roofG += bay.massG
    for (const item of bay.placed) {
      const massG = scene.traits[item.unit]?.massG ?? 0
      moment[0] += massG * (originMm[0] + (item.x1 + item.x2) / 2)
      moment[1] += massG * (originMm[1] + (item.y1 + item.y2) / 2)
      moment[2] += massG * (originMm[2] + (item.z1 + item.z2) / 2)
    }
  }
  const { frontAxle, rearAxle, rearAxleXMm, wheelbaseMm } = vehicle
  const frontShareG =
    rearAxleXMm === null || wheelbaseMm === null ? null : (moment[0] - loadG * rearAxleXMm) / wheelbaseMm
  const whole = (value: number): number => Math.round(value)
  return {
    loadG,
    payloadG: vehicle.payloadG,
    frontAxleG: frontAxle === null || frontShareG === null ? null : whole(frontAxle.readyG + frontShareG),
    rearAxleG: rearAxle === null || frontShareG === null ? null : whole(rearAxle.readyG + loadG - frontShareG),
    roofG,
    bayG,
    centreMm: loadG === 0 ? [0, 0, 0] : [whole(moment[0] / loadG), whole(moment[1] / loadG), whole(moment[2] / loadG)],
  }
}

/** Limits that the load as a whole passes. */
export const massFaults = (scene: Scene, report: MassReport): readonly PackFault[] => {
  const { vehicle } = scene.model.input
  const faults: PackFault[] = []
  const check = (rule: PackFault['rule'], amount: number | null, limit: number | null): void => {
    if (amount !== null && limit !== null && amount > limit) {
      faults.push({ rule, amount, limit, bayId: null, unitId: null, nightId: null })
    }
  }
  check('payload', report.loadG, report.payloadG)
  check('front-axle', report.frontAxleG, vehicle.frontAxle?.limitG ?? null)
  check('rear-axle', report.rearAxleG, vehicle.rearAxle?.limitG ?? null)
  check('roof-load', report.roofG, vehicle.roofLimitG)
  return faults
}

/** What is legal by day but wants saying. */
export const cautionsOf = (scene: Scene, state: SceneState): readonly PackCaution[] => {
  const cautions: PackCaution[] = []
  const { seatBackHeightMm } = scene.model.input.vehicle
  for (const bay of state.bays) {
    const { id, sleepingSpace, restraint, originMm, kind } = bay.model.bay
    for (const item of bay.placed) {
      const traits = scene.traits[item.unit]
      const unitId = scene.model.units[item.unit]?.id ?? ''
      if (traits === null || traits === undefined) continue
      const say = (code: PackCaution['code'], force: boolean): void => {
        cautions.push({ code, unitId, bayId: id, forceKn: force ? crashForceKn(traits.massG) : null })
      }
      if (traits.fuel && sleepingSpace) say('fuel-in-cabin', false)
      if (kind === 'outside' || traits.massG < WORTH_SAYING_G) continue
      if (restraint === 'none') say('unrestrained', true)
      const held = restraint === 'barrier' || restraint === 'net' || restraint === 'lid'
      if (!held && originMm[2] + item.z2 > seatBackHeightMm) say('above-seat-back', true)
      const middleMm = originMm[2] + (item.z1 + item.z2) / 2
      if (traits.massG >= HEAVY_HIGH_G && middleMm > seatBackHeightMm) say('heavy-high', true)
    }
  }
  return cautions
}

const crashForceKn = (massG: number): readonly [number, number] => {
  const weightKn = ((massG / G_PER_KG) * STANDARD_GRAVITY_M_PER_S2) / N_PER_KN
  const rounded = (times: number): number => Math.round(weightKn * times * 10) / 10
  return [rounded(CRASH_TIMES[0]), rounded(CRASH_TIMES[1])]
}
