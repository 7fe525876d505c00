/** Weather and sun rows. */
import { formatIso } from '../../../../shared/units/index.ts'
import type { LocalDate, Utc } from '../../../../shared/units/index.ts'
import { sunDay, sunPosition } from '../../../../shared/climate/sun.ts'
import { EPW, parseEpw } from '../../../../shared/climate/sources/epw.ts'
import { PARTON_LOGAN_DENVER, designDayC, partonLoganC } from '../../../../shared/climate/sources/hourly-temperature.ts'
import type { PartonLogan } from '../../../../shared/climate/sources/hourly-temperature.ts'
import { epwFactsText } from '../epw-facts.ts'
import { nightRmseK } from '../seattle-normals.ts'
import { MissingInput, RefusedInput, firstNumber, has, number, text } from '../rows.ts'
import type { Handler, Inputs, Ours } from '../rows.ts'

function hourly(inputs: Inputs): Ours {
  const course = {
    maximumC: number(inputs, 'Tmax'),
    minimumC: number(inputs, 'Tmin'),
    sunriseH: number(inputs, 'sunrise'),
    sunsetH: number(inputs, 'sunset'),
    // Public codes name the lag of the minimum c or beta, the decay b or gamma.
    coefficients: {
      lagOfMaximumH: firstNumber(inputs, 'a', 'alpha'),
      decay: firstNumber(inputs, 'b', 'gamma'),
      lagOfMinimumH: firstNumber(inputs, 'c', 'beta'),
    },
  }
  if (course.sunriseH >= course.sunsetH) throw new RefusedInput(`sunrise is ${course.sunriseH}, not before sunset`)
  if (course.minimumC > course.maximumC) throw new RefusedInput(`Tmin is ${course.minimumC}, above Tmax`)
  return { T_C: partonLoganC(course, number(inputs, 'hour')) }
}

/** A line of a public file through our reader; only its facts are kept, each in its column. */
function epwRow(key: string): Ours {
  const facts = epwFactsText(key.replaceAll(' ', ''))
  if (facts === null) return {}
  const file = parseEpw(facts)
  const hour = file.ok ? file.value.hours[0] : undefined
  if (hour === undefined) return {}
  return {
    dry_bulb_C: hour.tempC,
    dew_C: hour.dewPointC,
    rh_pct: hour.humidity01 === null ? undefined : Math.round(hour.humidity01 * 100),
    p_Pa: hour.pressurePa,
    horiz_ir_Whm2: hour.infraredWhPerM2,
    wind_dir: hour.windFromDeg,
    wind_ms: hour.windMPerS,
  }
}

const epwColumns: Ours = {
  header_lines: EPW.headerLines,
  rows: EPW.rows,
  columns: EPW.columns,
  year: EPW.year,
  month: EPW.month,
  day: EPW.day,
  hour: EPW.hour,
  dry_bulb: EPW.dryBulb,
  dew: EPW.dewPoint,
  rh: EPW.humidity,
  pressure: EPW.pressure,
  horiz_ir: EPW.infrared,
  ghi: EPW.globalHorizontal,
  dni: EPW.directNormal,
  dhi: EPW.diffuseHorizontal,
  wind_dir: EPW.windFrom,
  wind_speed: EPW.windSpeed,
  total_sky: EPW.totalSky,
  opaque_sky: EPW.opaqueSky,
  hour_base: EPW.hourBase,
}

export const weather: Handler = (inputs) => {
  if (has(inputs, 'hour_ending')) {
    return {
      T_C:
        designDayC(number(inputs, 'hour_ending'), number(inputs, 'Tmax'), number(inputs, 'daily_range_K')) ?? undefined,
    }
  }
  if (has(inputs, 'Tmax', 'hour')) return hourly(inputs)
  if (has(inputs, 'epw_row')) return epwRow(text(inputs, 'epw_row'))
  if (text(inputs, 'format') === 'EPW') return epwColumns
  return /seattle-weather-hourly-normals/.test(text(inputs, 'dataset'))
    ? { rmse_night_K: nightRmseK(false, coefficientsIn(text(inputs, 'method'))) }
    : {}
}

/** The coefficients that a method's words name, `a=1.86,b=2.2,c=-0.17`; Denver's where they name none. */
function coefficientsIn(words: string): PartonLogan {
  const named = (letter: string, otherwise: number): number =>
    Number(new RegExp(`\\b${letter}\\s*=\\s*(-?[\\d.]+)`).exec(words)?.[1] ?? otherwise)
  return {
    lagOfMaximumH: named('a', PARTON_LOGAN_DENVER.lagOfMaximumH),
    decay: named('b', PARTON_LOGAN_DENVER.decay),
    lagOfMinimumH: named('c', PARTON_LOGAN_DENVER.lagOfMinimumH),
  }
}

const isoOf = (at: Utc | null): string | null => (at === null ? null : formatIso(at))

/** Seconds UTC of an instant as rows write it; without an offset it is UTC. */
function instantOf(words: string): number {
  const atUtc = Date.parse(/(?:Z|[+-]\d{2}:?\d{2})$/i.test(words) ? words : `${words.replace(' ', 'T')}Z`) / 1000
  if (!/^\d{4}-\d{2}-\d{2}/.test(words) || Number.isNaN(atUtc)) throw new RefusedInput(`utc is ${words}, no instant`)
  return atUtc
}

function dateOf(inputs: Inputs): LocalDate {
  if (!has(inputs, 'local_date')) throw new MissingInput('no local_date')
  const words = text(inputs, 'local_date')
  const atUtc = Date.parse(`${words}T00:00:00Z`)
  // A day that the month does not have is read as one of the next month.
  if (Number.isNaN(atUtc) || new Date(atUtc).toISOString().slice(0, 10) !== words)
    throw new RefusedInput(`local_date is ${words}, no date`)
  return words as LocalDate
}

export const sun: Handler = (inputs) => {
  const place = { latitudeDeg: number(inputs, 'lat'), longitudeDeg: number(inputs, 'lon') }
  if (has(inputs, 'utc')) {
    const position = sunPosition({ ...place, atUtc: instantOf(text(inputs, 'utc')) })
    return {
      elevation_deg: position.elevationDeg,
      azimuth_deg: position.azimuthDeg,
      apparent_elevation_deg: position.apparentElevationDeg,
    }
  }
  const day = sunDay({ ...place, date: dateOf(inputs) })
  return {
    sunrise_utc: isoOf(day.sunriseUtc),
    sunset_utc: isoOf(day.sunsetUtc),
    transit_utc: isoOf(day.transitUtc),
    polar: day.polar,
  }
}
