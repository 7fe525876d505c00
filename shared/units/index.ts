/** Unit suffixes, exact conversion factors, and time: the only home of a conversion factor. */
export {
  G_PER_KG,
  MM_PER_INCH,
  MM_PER_M,
  MM_PER_KM,
  G_PER_POUND,
  M_PER_MILE,
  J_PER_WH,
  S_PER_HOUR,
  S_PER_MINUTE,
  S_PER_DAY,
  WH_PER_KWH,
  KELVIN_OFFSET,
  MM3_PER_LITRE,
  CLO_M2K_PER_W,
  R_US_M2K_PER_W,
  TOG_M2K_PER_W,
  STANDARD_GRAVITY_M_PER_S2,
  FEET_PER_M,
  MET_W_PER_M2,
  PA_PER_HPA,
  toFahrenheit,
  fromFahrenheit,
} from './factors.ts'
export { localToUtc, utcToLocal, utcOffsetS, formatLocalTime, parseClock, nextDate, formatIso } from './time.ts'
export type { Utc, LocalTime, LocalDate, Clock } from './time.ts'
