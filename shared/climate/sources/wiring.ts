/** Conductors, voltage drop, contacts, site demand and breaker sizes. */

export type Wire = {
  readonly awg: string
  readonly dcOhmPerKft: number
  readonly acOhmPerKft: number
  readonly ampacity60A: number
  readonly ampacity75A: number
}
type WireRow = readonly [awg: string, dcOhm: number, acOhm: number, at60A: number, at75A: number]

/**
 * Copper: direct-current resistance at 75 °C, solid to 8 AWG (NEC chapter 9 table 8); alternating-current resistance in PVC conduit (table 9,
 * not its effective impedance column); ampacity at 60 and 75 °C (table 310.16; the overcurrent rule of 240.4(D) for 14 to 10 AWG at 60 °C).
 */
const WIRES: readonly WireRow[] = [
  ['18', 7.77, 8, 7, 7],
  ['16', 4.89, 5, 10, 10],
  ['14', 3.07, 3.1, 15, 20],
  ['12', 1.93, 2, 20, 25],
  ['10', 1.21, 1.2, 30, 35],
  ['8', 0.764, 0.78, 40, 50],
  ['6', 0.491, 0.49, 55, 65],
  ['4', 0.308, 0.31, 70, 85],
  ['3', 0.245, 0.25, 85, 100],
  ['2', 0.194, 0.19, 95, 115],
  ['1', 0.154, 0.15, 110, 130],
  ['1/0', 0.122, 0.12, 125, 150],
  ['2/0', 0.0967, 0.1, 145, 175],
  ['3/0', 0.0766, 0.077, 165, 200],
  ['4/0', 0.0608, 0.062, 195, 230],
]

/** A copper wire by gauge; null where the table does not hold it. */
export function copperWire(awg: string): Wire | null {
  const found = WIRES.find(([gauge]) => gauge === awg)
  if (found === undefined) return null
  const [gauge, dcOhmPerKft, acOhmPerKft, ampacity60A, ampacity75A] = found
  return { awg: gauge, dcOhmPerKft, acOhmPerKft, ampacity60A, ampacity75A }
}

/** Resistance of flexible copper, class 5, at 20 °C, ohm/km by mm2 (IEC 60228 table 3). */
export const FLEXIBLE_OHM_PER_KM: Readonly<Record<string, number>> = {
  '1': 19.5,
  '1.5': 13.3,
  '2.5': 7.98,
  '4': 4.95,
  '6': 3.3,
  '10': 1.91,
}

/** Resistance of one conductor of flexible copper at 20 °C, ohm/km, by mm2: the table, and 19.95 over the area between its sizes (its mean to 3 %). */
export const flexibleOhmPerKm = (areaMm2: number): number => FLEXIBLE_OHM_PER_KM[String(areaMm2)] ?? 19.95 / areaMm2

/** Current that a flexible cord carries for hours lying unrolled in the open at 30 °C, A by mm2 of copper (BS 7671 table 4F3A, from memory). */
const CORD_A: readonly (readonly [areaMm2: number, currentA: number])[] = [
  [0.5, 3],
  [0.75, 6],
  [1, 10],
  [1.25, 13],
  [1.5, 16],
  [2.5, 25],
  [4, 32],
]

/** Rating of a flexible cord by its copper, mm2: that of the next thinner size listed; null thinner than the first and beyond the last, where the table says nothing. */
export const cordRatingA = (areaMm2: number): number | null => {
  const [thickestMm2] = CORD_A.at(-1) ?? [0]
  return areaMm2 > thickestMm2 ? null : (CORD_A.findLast(([sizeMm2]) => sizeMm2 <= areaMm2)?.[1] ?? null)
}

/** Two sound contacts of an adapter, there and back, ohm: 5 milliohm each (common practice). */
export const ADAPTER_OHM = 0.01

/** Volts lost along a lead and its heat, W: both conductors count; three phases count sqrt(3). Resistance in ohm of one conductor. */
export function leadDrop(
  oneWayOhm: number,
  currentA: number,
  nominalV: number,
  phases: 1 | 3 = 1,
): { readonly dropV: number; readonly drop01: number; readonly lossW: number } {
  const dropV = (phases === 3 ? Math.sqrt(3) : 2) * oneWayOhm * currentA
  return { dropV, drop01: dropV / nominalV, lossW: (phases === 3 ? 3 : 2) * oneWayOhm * currentA ** 2 }
}

/** Advised drop of a branch, fraction (NEC 210.19(A) informational note). */
export const ADVISED_BRANCH_DROP_01 = 0.03

/** Heat, W, and drop, V, in one weak contact; ohm and A. */
export const contactHeat = (
  contactOhm: number,
  currentA: number,
): { readonly heatW: number; readonly dropV: number } => ({
  heatW: contactOhm * currentA ** 2,
  dropV: contactOhm * currentA,
})

/** Demand factor by number of recreational vehicle sites (NEC table 551.73(A); middle rows from memory). */
const DEMAND: readonly (readonly [upToSites: number, factor01: number])[] = [
  [1, 1],
  [2, 0.9],
  [3, 0.8],
  [4, 0.75],
  [5, 0.65],
  [6, 0.6],
  [9, 0.55],
  [12, 0.5],
  [15, 0.48],
  [18, 0.47],
  [21, 0.45],
  [24, 0.43],
  [35, 0.42],
]
export const siteDemand01 = (sites: number): number => DEMAND.find(([upTo]) => sites <= upTo)?.[1] ?? 0.41

/** Volt-amperes counted for a site by its largest receptacle, A: 50 A sites were raised by the 2017 edition (NEC 551.73). */
export function siteVa(receptacleA: number, edition: number): number {
  if (receptacleA >= 50) return edition >= 2017 ? 12_000 : 9600
  return receptacleA >= 30 ? 3600 : 2400
}

/** Standard breaker sizes, A (NEC 240.6(A)). */
const BREAKERS_A = [15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200] as const

/** Smallest standard breaker for a continuous load, A: at least 125 % of it (NEC 625.41). */
export const breakerForA = (continuousA: number): number =>
  BREAKERS_A.find((size) => size >= 1.25 * continuousA - 1e-9) ?? 1.25 * continuousA

/** Whether charging equipment needs its own branch circuit: over 16 A or over 120 V (NEC 625.40). */
export const INDIVIDUAL_BRANCH_ABOVE = { currentA: 16, volts: 120 } as const

/** A pitch by HD 60364-7-708 and DIN VDE 0100-708: residual current device, one a socket, the usual lead, and where the socket stands. */
export const PITCH_RULES = {
  residualCurrentMA: 30,
  socketsPerDevice: 1,
  leadLengthM: 25,
  leadMm2: 2.5,
  leadType: 'H07RN-F',
  socketsPerPillar: 4,
  pillarWithinM: 20,
  socketHeightMinimumM: 0.5,
  socketHeightMaximumM: 1.5,
} as const

/** Shares of sites with each receptacle, % (NEC 551.71): 20 A at all, 30 A, 50 A at existing and at new sites. */
export const SITE_RECEPTACLES = {
  with20APercent: 100,
  with30APercent: 70,
  with50AExistingPercent: 20,
  with50ANewPercent: 40,
} as const
