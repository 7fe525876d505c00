/** Open connector standards as data: volts, rated and continuous amperes, poles, with sources. */

export type ConnectorRating = {
  readonly id: string
  readonly volts: number
  readonly ratedA: number
  /** What may flow for hours, A: 80 % by NEC 210.20 in North America, the rating for IEC 60309. */
  readonly continuousA: number
  readonly phases: 1 | 3
  readonly neutral: boolean
  readonly earth: boolean
  readonly source: string
}

const nema = (id: string, volts: number, ratedA: number, neutral: boolean): ConnectorRating => ({
  id,
  volts,
  ratedA,
  continuousA: 0.8 * ratedA,
  phases: 1,
  neutral,
  earth: true,
  source: 'ANSI/NEMA WD 6; NEC 210.20(A)',
})
const iec = (id: string, volts: number, ratedA: number, phases: 1 | 3): ConnectorRating => ({
  id,
  volts,
  ratedA,
  continuousA: ratedA,
  phases,
  neutral: true,
  earth: true,
  source: 'IEC 60309-2',
})

/** Nominal volts, rated amperes and conductors by standard; each entry names its own. */
const CONNECTORS: readonly ConnectorRating[] = [
  nema('nema-5-15', 120, 15, true),
  nema('nema-5-20', 120, 20, true),
  nema('nema-6-20', 240, 20, false),
  nema('nema-6-50', 240, 50, false),
  // An old dryer outlet: two hot poles and a neutral, no earth.
  { ...nema('nema-10-30', 240, 30, true), earth: false },
  nema('nema-tt-30', 120, 30, true),
  nema('nema-14-30', 240, 30, true),
  nema('nema-14-50', 240, 50, true),
  iec('iec-60309-16-blue', 230, 16, 1),
  iec('iec-60309-32-blue', 230, 32, 1),
  iec('iec-60309-16-red', 400, 16, 3),
  iec('iec-60309-32-red', 400, 32, 3),
  { ...iec('cee-7-3-schuko', 230, 16, 1), continuousA: 10, source: 'CEE 7/3; 10 A for hours is common practice' },
  { ...iec('cee-7-5-french', 230, 16, 1), continuousA: 10, source: 'CEE 7/5; 10 A for hours is common practice' },
  { ...iec('bs-1363', 230, 13, 1), continuousA: 10, source: 'BS 1363; 10 A for hours is common practice' },
  { ...iec('as-nzs-3112', 230, 10, 1), continuousA: 10, source: 'AS/NZS 3112' },
]

/** Rating of a connector by its id; null for one that the tables do not hold. */
export const connectorRating = (id: string): ConnectorRating | null =>
  CONNECTORS.find((entry) => entry.id === id) ?? null

/** Whether a connector has no earth at all, whatever a tester is said to show. */
export const lacksEarth = (id: string): boolean => connectorRating(id)?.earth === false

/** Whether a connector has two hot poles, where 208 and 240 V are to be told apart: those of NEMA WD 6 at 240 V. */
export const hasTwoHotPoles = (id: string): boolean => connectorRating(id)?.volts === 240

/** Household outlets outside North America (CEE 7, BS 1363, AS/NZS 3112). */
const DOMESTIC: readonly string[] = ['cee-7-3-schuko', 'cee-7-5-french', 'bs-1363', 'as-nzs-3112']

/** Whether a connector is a household outlet outside North America, which runs hot at its rating for hours. */
export const isDomestic = (id: string): boolean => DOMESTIC.includes(id)

/** Whether a connector is a household outlet anywhere: its contacts are not made for hours at its rating, whatever a code lets flow. */
export const isHousehold = (id: string): boolean => isDomestic(id) || id === 'nema-5-15' || id === 'nema-5-20'

/** Whether North American voltage habits apply: by connector family, else by nominal volts. */
export const isNorthAmerican = (id: string, nominalV: number): boolean =>
  id.startsWith('nema-') || (connectorRating(id) === null && (nominalV <= 130 || nominalV === 208))
