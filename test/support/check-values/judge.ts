/** Whether our value agrees with the published one, by the row's tolerance. */
import type { Row, Value } from './rows.ts'

export type Verdict = 'passed' | 'failed' | 'skipped'
export type Judgement = {
  readonly name: string
  readonly published: Value
  readonly ours: Value | undefined
  readonly difference: number | null
  readonly verdict: Verdict
}

type Allowed = { readonly absolute: number; readonly relative: number }

const tokens = (name: string): readonly string[] => name.split('_')

/** Whether a tolerance's name means this quantity: the same, all its words among the quantity's, or its beginning. */
function means(base: string, name: string): boolean {
  if (base === name) return true
  const words = tokens(name)
  return tokens(base).every((word) => words.includes(word))
}

/** Whether the name or one of its words begins with the base: `elev` for an apparent elevation. */
const begins = (base: string, name: string): boolean =>
  name.startsWith(base) || tokens(name).some((word) => word.startsWith(base))

/** `rel`, `w_rel`, `rel_regression`: the quantity meant ('' for all) and whether it is relative. */
function parts(key: string): { base: string; relative: boolean } {
  // Ours is a physics model, not the published regression itself.
  if (key === 'rel_for_a_physics_model') return { base: '', relative: true }
  if (key === 'abs') return { base: '', relative: false }
  if (key === 'rel') return { base: '', relative: true }
  if (key.endsWith('_rel')) return { base: key.slice(0, -4), relative: true }
  return { base: key, relative: false }
}

/** The tolerance of one quantity of a row; null: as printed. */
export function allowedFor(tolerance: Row['tolerance'], name: string): Allowed | null {
  if (tolerance === undefined || tolerance === null || tolerance === 0) return null
  if (typeof tolerance === 'number') return { absolute: tolerance, relative: 0 }
  const entries = Object.entries(tolerance).map(([key, value]) => ({ ...parts(key), value }))
  const exact = entries.filter((entry) => entry.base === name)
  const meant = exact.length > 0 ? exact : entries.filter((entry) => entry.base !== '' && means(entry.base, name))
  const started =
    meant.length > 0 ? meant : entries.filter((entry) => entry.base.length > 1 && begins(entry.base, name))
  const general = started.length > 0 ? started : entries.filter((entry) => entry.base === '')
  const chosen = general.length > 0 ? general : entries.length === 1 ? entries : []
  if (chosen.length === 0) return null
  const most = (relative: boolean): number =>
    chosen.filter((entry) => entry.relative === relative).reduce((largest, entry) => Math.max(largest, entry.value), 0)
  const allowed = { absolute: most(false), relative: most(true) }
  return allowed.absolute === 0 && allowed.relative === 0 ? null : allowed
}

/** Half of the last printed digit, as the file writes it or as its number does; 0 for a whole number, which has to match exactly. */
export function halfLastDigit(value: number, printed = String(value)): number {
  const [mantissa = '', exponent = '0'] = printed.split('e')
  const decimals = (mantissa.split('.')[1] ?? '').length
  if (decimals === 0 && exponent === '0') return 0
  return 0.5 * 10 ** (Number(exponent) - decimals)
}

const ROUND_OFF = 1e-9 // of a value: binary arithmetic, not physics

const instant = (value: Value | undefined): number | null => {
  if (typeof value !== 'string' || !/^\d{4}-\d{2}-\d{2}T/.test(value)) return null
  const milliseconds = Date.parse(value)
  return Number.isNaN(milliseconds) ? null : milliseconds / 1000
}

/** A published bound: the quantity's name says minimum or maximum and ours is the value it bounds. */
const boundOf = (name: string): 'least' | 'most' | null => {
  const words = tokens(name)
  if (words.includes('min')) return 'least'
  return words.includes('max') ? 'most' : null
}

/** A quantity published as a range: both ends are named, or a limit of current; ours has to lie within. */
function isBounded(row: Row, name: string): boolean {
  if (name === 'amps_max') return true
  const other = name.endsWith('_min')
    ? `${name.slice(0, -4)}_max`
    : name.endsWith('_max')
      ? `${name.slice(0, -4)}_min`
      : null
  return other !== null && row.expected[other] !== undefined
}

/** One quantity of a row judged. */
export function judge(row: Row, name: string, ours: Value | undefined): Judgement {
  const published = row.expected[name] ?? null
  const base = { name, published, ours }
  if (ours === undefined) return { ...base, difference: null, verdict: 'skipped' }
  const allowed = allowedFor(row.tolerance, name)
  const how = { allowed, bound: isBounded(row, name) ? boundOf(name) : null, printed: row.printed?.[name] }
  const result = compare(published, ours, how)
  return { ...base, difference: result.difference, verdict: result.agrees ? 'passed' : 'failed' }
}

type How = {
  readonly allowed: Allowed | null
  readonly bound: 'least' | 'most' | null
  readonly printed: string | undefined
}

/**
 * The difference allowed. A relative tolerance finer than the printed digit cannot tell a right value from its own rounding
 * (0.503 is published as 0.5): half that digit then governs.
 */
function limitOf(published: number, { allowed, printed }: How): number {
  const digit = halfLastDigit(published, printed)
  if (allowed === null) return digit
  const relative = allowed.relative === 0 ? 0 : Math.max(allowed.relative * Math.abs(published), digit)
  return Math.max(allowed.absolute, relative)
}

function compare(published: Value, ours: Value, how: How): { agrees: boolean; difference: number | null } {
  const [at, our] = [instant(published), instant(ours)]
  if (at !== null && our !== null) {
    const difference = our - at
    return { difference, agrees: Math.abs(difference) <= (how.allowed?.absolute ?? 0.5) }
  }
  if (typeof published === 'number' && typeof ours === 'number') {
    if (!Number.isFinite(ours)) return { agrees: false, difference: null }
    const difference = ours - published
    const roundOff = ROUND_OFF * Math.max(1, Math.abs(published))
    if (how.bound !== null)
      return { difference, agrees: (how.bound === 'least' ? difference : -difference) >= -roundOff }
    return { difference, agrees: Math.abs(difference) <= limitOf(published, how) + roundOff }
  }
  if (Array.isArray(published) && Array.isArray(ours)) {
    const each = published.map((value, index) => compare(value, ours[index] ?? null, { ...how, printed: undefined }))
    const worst = each.reduce((largest, { difference }) => Math.max(largest, Math.abs(difference ?? 0)), 0)
    return { agrees: published.length === ours.length && each.every((entry) => entry.agrees), difference: worst }
  }
  return { agrees: published === ours, difference: null }
}
