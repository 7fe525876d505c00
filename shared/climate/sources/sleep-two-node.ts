/** Two-node body asleep under a quilt (Yan, Xiong, Kim and de Dear 2022). Its core temperature is prescribed: it can never warn of hypothermia. */
import { CLO_M2K_PER_W } from '../../units/index.ts'
import { saturationTorr, standardTemperatureOf } from './two-node.ts'

export type SleepPoint = {
  readonly airC: number
  readonly radiantC: number
  readonly speedMPerS: number
  readonly humidity01: number
  readonly clo: number
  readonly quiltCm: number
  readonly heightCm?: number
  readonly massKg?: number
}

export type SleepState = {
  readonly setC: number
  readonly coreC: number
  readonly skinC: number
  readonly wettedness: number
  readonly sensation: number
  readonly skinBloodFlow: number
  readonly shiveringW: number
}

/**
 * Argument of the metabolic polynomial. The published code counts hours, which ends the night at 1.03 met;
 * minutes give the known 0.81, 0.77 and 0.79 met after 1, 4 and 8 h, so the product counts minutes.
 */
export type SleepClock = 'published-hours' | 'minutes'

/** Metabolic rate asleep, met, from the polynomial's argument (Yan et al. 2022). */
const polynomialMet = (x: number): number =>
  -5.75e-13 * x ** 5 +
  7.85521e-10 * x ** 4 -
  3.9173563e-7 * x ** 3 +
  8.7620232151e-5 * x ** 2 -
  8.801558913211e-3 * x +
  1.09952538864493

/** Metabolic rate after a time asleep, met; time in minutes, 0 to 480. */
export const sleepMet = (minutesAsleep: number, clock: SleepClock = 'minutes'): number =>
  polynomialMet(clock === 'minutes' ? minutesAsleep : minutesAsleep / 60)

const MET_W = 58.2 // W/m2 per met in the published model
const SKIN_NEUTRAL_C = 33.7 // Yan et al. 2022; the two-node model's neutral skin
const BODY_NEUTRAL_C = 36.49 // mean body temperature at rest, Yan et al. 2022

type Carry = { skinC: number; evaporativeW: number; skinShare: number; flow: number; shiveringW: number }

/**
 * The sleeper at each of the asked minutes from falling asleep, in constant surroundings.
 * Temperatures in °C, air speed in m/s, humidity 0 to 1, bedding in clo, quilt in cm, minutes ascending from 0.
 * Source: Yan et al. 2022, one-minute steps; reproduces the published points to 0.005 K.
 */
export function sleepCourse(
  point: SleepPoint,
  minutes: readonly number[],
  clock: SleepClock = 'minutes',
): readonly SleepState[] {
  const last = Math.max(...minutes)
  const wanted = new Map<number, SleepState>()
  let carry: Carry = { skinC: SKIN_NEUTRAL_C, evaporativeW: 0.094, skinShare: 0.1, flow: 6.3, shiveringW: 0 }
  for (let minute = 0; minute <= last; minute += 1) {
    // The published model's clock starts one minute before the first step.
    const since = minute - 1
    const step = aMinute(point, carry, {
      met: polynomialMet(clock === 'minutes' ? since : since / 60),
      coreC: 0.022234 * (since / 60) ** 2 - 0.27677 * (since / 60) + 37.02,
    })
    carry = step.carry
    if (minutes.includes(minute)) wanted.set(minute, step.state)
  }
  return minutes.flatMap((minute) => wanted.get(minute) ?? [])
}

/** Film, operative temperature and radiation at the quilt, by fixed point. */
function quilted(
  point: SleepPoint,
  skinC: number,
): { airR: number; operativeC: number; radiation: number; convection: number; areaFactor: number } {
  const areaFactor = 0.0308 * point.quiltCm + 0.7695
  const clothing = CLO_M2K_PER_W * point.clo
  const convection = 4.4854 * Math.abs(skinC - point.airC) ** 0.274 * Math.max(point.speedMPerS, 0.1) ** 0.1242
  let radiation = 3.235
  let airR = 1 / (areaFactor * (radiation + convection))
  let operativeC = (radiation * point.radiantC + convection * point.airC) / (radiation + convection)
  let surfaceC = operativeC + (skinC - operativeC) / ((radiation + convection) * (airR + clothing))
  for (let i = 0; i < 100; i += 1) {
    radiation = 4 * 5.6697e-8 * ((surfaceC + point.radiantC) / 2 + 273.15) ** 3 * 0.72
    airR = 1 / (areaFactor * (radiation + convection))
    operativeC = (radiation * point.radiantC + convection * point.airC) / (radiation + convection)
    const next = (airR * skinC + clothing * operativeC) / (airR + clothing)
    const done = Math.abs(next - surfaceC) <= 0.01
    surfaceC = next
    if (done) break
  }
  return { airR, operativeC, radiation, convection, areaFactor }
}

function aMinute(
  point: SleepPoint,
  carry: Carry,
  given: { met: number; coreC: number },
): { carry: Carry; state: SleepState } {
  const massKg = point.massKg ?? 70
  const areaM2 = Math.sqrt(((point.heightCm ?? 171) * massKg) / 3600)
  const metabolicW = given.met * MET_W
  const clothing = CLO_M2K_PER_W * point.clo
  const vapourTorr = point.humidity01 * saturationTorr(point.airC)
  const film = quilted(point, carry.skinC)
  const dryW = (carry.skinC - film.operativeC) / (film.airR + clothing)
  const inward = (given.coreC - carry.skinC) * (5.28 + 1.163 * carry.flow)
  const breathW = 0.0023 * metabolicW * (44 - vapourTorr) + 0.0014 * metabolicW * (34 - point.airC)
  const skinC = carry.skinC + ((inward - dryW - carry.evaporativeW) * areaM2) / (0.97 * carry.skinShare * massKg) / 60
  const coreC = given.coreC + ((metabolicW - inward - breathW) * areaM2) / (0.97 * (1 - carry.skinShare) * massKg) / 60
  const bodyC = carry.skinShare * skinC + (1 - carry.skinShare) * coreC
  const skinCold = Math.max(SKIN_NEUTRAL_C - skinC, 0)
  const flow = Math.min(90, Math.max(0.5, (6.3 + 120 * Math.max(coreC - given.coreC, 0)) / (1 + 0.5 * skinCold)))
  const sweat = Math.min(
    500,
    170 * Math.max(bodyC - BODY_NEUTRAL_C, 0) * Math.exp(Math.max(skinC - SKIN_NEUTRAL_C, 0) / 10.7),
  )
  const wettestSkin =
    point.clo > 0 ? 0.59 * Math.max(point.speedMPerS, 0.1) ** -0.08 : 0.38 * Math.max(point.speedMPerS, 0.1) ** -0.29
  const vapourR = 1 / (2.2 * film.areaFactor * film.convection) + clothing / (2.2 * (point.clo > 0 ? 0.45 : 1))
  const maximumW = (saturationTorr(skinC) - vapourTorr) / vapourR
  const { evaporativeW, wettedness } = sleepEvaporation(0.68 * sweat, maximumW, wettestSkin)
  const shiveringW = 19.4 * skinCold * Math.max(given.coreC - coreC, 0)
  const convection = Math.max(3, given.met >= 0.85 ? 5.66 * (given.met - 0.85) ** 0.39 : 0)
  const setC = standardTemperatureOf({
    body: { skinC, coreC, wettedness, evaporativeW, dryW },
    radiation: film.radiation,
    convection,
    met: given.met,
    atmospheres: 1,
  })
  const sensation = sensationOf(bodyC, metabolicW + shiveringW, wettestSkin)
  return {
    carry: { skinC, evaporativeW, skinShare: 0.0417737 + 0.7451833 / (flow + 0.585417), flow, shiveringW },
    state: { setC, coreC, skinC, wettedness, sensation, skinBloodFlow: flow, shiveringW },
  }
}

function sleepEvaporation(
  sweatW: number,
  maximumW: number,
  wettestSkin: number,
): { evaporativeW: number; wettedness: number } {
  const wettedness = 0.06 + (0.94 * sweatW) / maximumW
  if (wettedness <= wettestSkin) return { evaporativeW: wettedness * maximumW, wettedness }
  const share = wettestSkin / 0.94
  return { evaporativeW: share * maximumW + 0.06 * (1 - share) * maximumW, wettedness: wettestSkin }
}

/** Thermal sensation, -5 to 5, from mean body temperature, °C, and metabolic rate, W/m2 (Gagge 1986). */
function sensationOf(bodyC: number, metabolicW: number, wettestSkin: number): number {
  const low = (0.194 / 58.15) * metabolicW + 36.301
  const high = (0.347 / 58.15) * metabolicW + 36.669
  if (bodyC < low) return 0.4685 * (bodyC - low)
  if (bodyC < high) return (wettestSkin * 4.7 * (bodyC - low)) / (high - low)
  return wettestSkin * 4.7 + 0.4685 * (bodyC - high)
}
