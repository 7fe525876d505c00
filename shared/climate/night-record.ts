/** One row of the night: temperatures felt at the bed and the feet, dew point, film on the glass, mean powers. */
import { G_PER_KG } from '../units/index.ts'
import { vapourPa } from './moisture-saturation.ts'
import { BED, FIRST_PANE, FLOOR, FRONT, MASS, at } from './network-step.ts'
import { FLOOR_SHARE_01, FRONT_SHARE_01, INNER_FILM_W_PER_M2K } from './network.ts'
import type { Run } from './night-state.ts'

/** Feet lie on the floor's side of the bed: half floor, the rest air and surfaces (estimate). */
const FEET_FLOOR_01 = 0.5
const FEET_AIR_01 = 0.3

export function record(run: Run, step: number, toUtc: number, stepS: number): void {
  const { columns, temps, prepared, moisture, sums } = run
  const bedC = at(temps, BED)
  const outsideC = at(prepared.outsideC, prepared.boundKnot[step + 1] ?? 0)
  columns.atUtc[step] = toUtc
  columns.outsideC[step] = outsideC
  columns.frontAirC[step] = at(temps, FRONT)
  columns.bedAirC[step] = bedC
  columns.massC[step] = at(temps, MASS)
  columns.floorC[step] = at(temps, FLOOR)
  recordRadiant(run, step, outsideC)
  recordFilm(run, step)
  run.panes.forEach((pane, index) => {
    pane.surfaceC[step] = at(temps, FIRST_PANE + index)
    pane.filmKg[step] = at(moisture.filmKg, index)
  })
  columns.vapourPa[step] = vapourPa(moisture.ratio, prepared.pressurePa)
  columns.co2Ppm[step] = moisture.co2Ppm
  columns.heatW[step] = sums.heatJ / stepS
  columns.heatingElectricW[step] = sums.electricJ / stepS
  columns.bedHeatW[step] = sums.bedJ / stepS
  columns.supplyW[step] = sums.supplyJ / stepS
  columns.chargeW[step] = sums.chargeJ / stepS
  columns.wiringLossW[step] = sums.wiringJ / stepS
  columns.charge01[step] = run.power.charge01
  columns.leisure01[step] = run.power.leisure01
}

/** Water and frost on the glass, and what lies on the lining, g. */
function recordFilm(run: Run, step: number): void {
  const { temps, moisture, columns } = run
  const lining = moisture.filmKg.length - 1
  let waterKg = 0
  let frostKg = 0
  for (let pane = 0; pane < lining; pane += 1) {
    if (at(temps, FIRST_PANE + pane) < 0) frostKg += at(moisture.filmKg, pane)
    else waterKg += at(moisture.filmKg, pane)
  }
  columns.condensateG[step] = waterKg * G_PER_KG
  columns.frostG[step] = frostKg * G_PER_KG
  columns.liningG[step] = at(moisture.filmKg, lining) * G_PER_KG
}

/** Operative temperature at the bed and at the feet: air, walls, seats, and the glass or cover one lies beside. */
function recordRadiant(run: Run, step: number, outsideC: number): void {
  const { columns, temps, network, prepared } = run
  const bedC = at(temps, BED)
  const wallM2 = prepared.input.cabin.bodyAreaM2 * (1 - FLOOR_SHARE_01) * (1 - FRONT_SHARE_01)
  const wallC = bedC - (network.bedBodyWPerK / network.scale / wallM2 / INNER_FILM_W_PER_M2K) * (bedC - outsideC)
  let weight = 2 * wallM2
  let radiant = wallM2 * wallC + wallM2 * at(temps, MASS)
  let glassSum = 0
  let glassM2 = 0
  for (let index = 0; index < network.panes.length; index += 1) {
    const pane = network.panes[index]
    if (pane === undefined) break
    const paneC = at(temps, FIRST_PANE + index)
    glassSum += pane.areaM2 * paneC
    glassM2 += pane.areaM2
    if (pane.atFront || pane.areaM2 <= 0) continue
    const facingC = bedC - (pane.innerWPerK / network.scale / pane.areaM2 / INNER_FILM_W_PER_M2K) * (bedC - paneC)
    radiant += pane.areaM2 * facingC
    weight += pane.areaM2
  }
  const radiantC = radiant / weight
  columns.glassC[step] = glassM2 > 0 ? glassSum / glassM2 : wallC
  columns.operativeC[step] = (bedC + radiantC) / 2
  columns.feetC[step] =
    FEET_FLOOR_01 * at(temps, FLOOR) + FEET_AIR_01 * bedC + (1 - FEET_FLOOR_01 - FEET_AIR_01) * radiantC
}
