/** Temperature by the hour from a day's high and the next low. */

/** Coefficients of Parton and Logan 1981, Agricultural Meteorology 23:205; Denver, 150 cm: a (maximum after noon) and c (minimum after sunrise) in h, b without unit. Public codes swap the names b and c. */
export type PartonLogan = { readonly lagOfMaximumH: number; readonly decay: number; readonly lagOfMinimumH: number }
export const PARTON_LOGAN_DENVER: PartonLogan = { lagOfMaximumH: 1.86, decay: 2.2, lagOfMinimumH: -0.17 }

export type DayCourse = {
  readonly maximumC: number
  readonly minimumC: number
  /** Hours of the local day; sunset of the same day, sunrise of that or the next. */
  readonly sunriseH: number
  readonly sunsetH: number
  readonly coefficients: PartonLogan
}

/** Sine of the day, °C, at an hour between sunrise and sunset. */
export function daySineC(course: DayCourse, hour: number): number {
  const { lagOfMaximumH, lagOfMinimumH } = course.coefficients
  const lengthH = course.sunsetH - course.sunriseH
  const sinceH = hour - course.sunriseH - lagOfMinimumH
  // The half period ends so that the maximum falls the lag after solar noon.
  const halfPeriodH = lengthH + 2 * (lagOfMaximumH - lagOfMinimumH)
  return course.minimumC + (course.maximumC - course.minimumC) * Math.sin((Math.PI * sinceH) / halfPeriodH)
}

/**
 * Exponential fall of the night, °C, hours after sunset. As published: 11 % of the drop is left at sunrise.
 * `closed` takes that rest out, so that the minimum is met without a jump.
 */
export function nightDecayC(course: DayCourse, sinceSunsetH: number, closed = false): number {
  const { decay, lagOfMinimumH } = course.coefficients
  const nightH = 24 - (course.sunsetH - course.sunriseH) + lagOfMinimumH
  const sunsetC = daySineC(course, course.sunsetH)
  const left = Math.exp((-decay * sinceSunsetH) / nightH)
  const rest = closed ? Math.exp(-decay) : 0
  return course.minimumC + ((sunsetC - course.minimumC) * (left - rest)) / (1 - rest)
}

/** Published course at any hour of the local day, °C: sine by day, fall by night (Parton and Logan 1981, equations 1 and 2). */
export function partonLoganC(course: DayCourse, hour: number): number {
  if (hour > course.sunsetH) return nightDecayC(course, hour - course.sunsetH)
  if (hour < course.sunriseH + course.coefficients.lagOfMinimumH) return nightDecayC(course, hour + 24 - course.sunsetH)
  return daySineC(course, hour)
}

/** Share of the daily range below the maximum, by hour ending 1 to 24 (ASHRAE Fundamentals 2009, chapter 14, table 6; from memory). */
const DAILY_RANGE_01 = [
  0.88, 0.92, 0.95, 0.98, 1, 0.98, 0.91, 0.74, 0.55, 0.38, 0.23, 0.13, 0.05, 0, 0, 0.06, 0.14, 0.24, 0.39, 0.5, 0.59,
  0.68, 0.75, 0.82,
] as const

/** Temperature of a design day, °C, at an hour ending 1 to 24, from its maximum, °C, and range, K; null for another hour. */
export function designDayC(hourEnding: number, maximumC: number, rangeK: number): number | null {
  const share = DAILY_RANGE_01[hourEnding - 1]
  return share === undefined ? null : maximumC - share * rangeK
}
