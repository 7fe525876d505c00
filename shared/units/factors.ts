/** Conversion factors. Exact by definition unless a source says otherwise. */

export const MM_PER_M = 1000
export const MM_PER_KM = 1_000_000
/** International inch, exact (1959 agreement). */
export const MM_PER_INCH = 25.4
/** International foot: 0.3048 m exactly. */
export const FEET_PER_M = 1 / 0.3048
/** International mile, exact. */
export const M_PER_MILE = 1609.344
export const G_PER_KG = 1000
/** International avoirdupois pound, exact. */
export const G_PER_POUND = 453.59237
export const S_PER_MINUTE = 60
export const S_PER_HOUR = 3600
export const S_PER_DAY = 86_400
export const J_PER_WH = 3600
export const WH_PER_KWH = 1000
export const PA_PER_HPA = 100
export const KELVIN_OFFSET = 273.15
export const MM3_PER_LITRE = 1_000_000
/** 1 clo = 0.155 m2K/W (ISO 9920:2007, definition). */
export const CLO_M2K_PER_W = 0.155
/** 1 US R unit (ft2 h F/Btu) = 0.1761 m2K/W (ASTM F3340 prints R in these units; factor from NIST SP 811). */
export const R_US_M2K_PER_W = 0.17611
/** 1 tog = 0.1 m2K/W (BS 4745). */
export const TOG_M2K_PER_W = 0.1
/** 1 met = 58.15 W/m2 (ISO 7730:2005). */
export const MET_W_PER_M2 = 58.15
/** Exact by the 3rd CGPM, 1901. */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665

export const toFahrenheit = (tempC: number): number => tempC * 1.8 + 32
export const fromFahrenheit = (tempF: number): number => (tempF - 32) / 1.8
