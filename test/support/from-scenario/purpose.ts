/** What a piece is for and what bedding it is, told from its words. */
import type { Piece } from '../../../shared/document/index.ts'
import { MM_PER_M, R_US_M2K_PER_W, fromFahrenheit } from '../../../shared/units/index.ts'

type Purpose = Piece['purpose']
type Bedding = NonNullable<Piece['bedding']>

/** In order: the first that matches names the purpose. */
const PURPOSES: readonly (readonly [RegExp, Purpose])[] = [
  [/adapter|adaptor/, 'adapter'],
  [/charging unit|evse|charging cable/, 'charging-unit'],
  [/hook.?up (cable|lead)|extension (cord|lead|cable)|mains lead|cable reel|site lead|\blead\b|hookup/, 'lead'],
  [/tester|multimeter/, 'supply-tester'],
  [/window cover|window panel|blind|screen cover|insulating cover/, 'window-covers'],
  [/carbon monoxide|co alarm|\balarm\b/, 'co-alarm'],
  [/fan heater|convector|heater/, 'fan-heater'],
  [/fire blanket|extinguisher/, 'fire-blanket'],
  [/first.?aid/, 'first-aid'],
  [/medicine|medication|inhaler|insulin/, 'medicine'],
  [/warning triangle|hi.?vis/, 'warning-triangle'],
  [/chain/, 'snow-chains'],
  [/shovel/, 'shovel'],
  [/traction/, 'traction-mats'],
  [/ramp|levelling|leveling/, 'levelling'],
  [/chock/, 'chocks'],
  [/scraper|de-icer/, 'scraper'],
  [/screen ?wash|washer fluid/, 'screen-wash'],
  [/toilet/, 'toilet'],
  [/stove|propane|gas cartridge|gas canister|burner/, 'stove'],
  [/cool ?box|cooler|fridge/, 'cool-box'],
  [/water (can|jug|bottle|container|tank)|flask|bottles?,/, 'water'],
  [/trash|rubbish|bin bag|waste/, 'rubbish'],
  [/food|snack|groceries|pantry/, 'food'],
  [/torch|lamp|lantern|\blight\b/, 'light'],
  [/document|wallet|permit|\bpass\b|papers/, 'documents'],
  [/sleep(ing)? clothes|bedtime.*clothes|pyjama|sleepwear/, 'sleepwear'],
  [/boots|shoes|slippers|clogs/, 'footwear'],
  [/clothes|duffel|jacket|shell|wet kit/, 'clothes'],
  [/power ?bank|phone|charger pouch|battery charger/, 'phone-power'],
  [/tool|inflator|jump/, 'tools'],
  [/cargo net|partition net/, 'cargo-net'],
  [/\bdog\b|\bcat\b|\bpet\b/, 'pet'],
  [
    /scope|tripod|camera|lens|recorder|climb|rope|telescope|binocular|fishing|\bski|board|instrument|stand$/,
    'target-kit',
  ],
]

export function purposeOf(name: string, fuel: boolean): Purpose {
  const text = name.toLowerCase()
  if (fuel && /propane|gas|cylinder/.test(text)) return 'stove'
  return PURPOSES.find(([pattern]) => pattern.test(text))?.[1] ?? 'other'
}

const BEDDING: readonly (readonly [RegExp, Bedding['kind']])[] = [
  [/sleeping bag/, 'bag'],
  [/quilt|duvet/, 'quilt'],
  [/blanket/, 'blanket'],
  [/mattress/, 'mattress'],
  [/pillow/, 'pillow'],
  [/hot.?water bottle|hot bottle/, 'hot-bottle'],
  [/\bmat\b|sleeping pad|foam pad|\bpad\b/, 'mat'],
]

/** Insulation where the scenario rates none, clo: common practice for a three-season quilt and a wool blanket. */
const QUILT_CLO = 4
const BLANKET_CLO = 1.5
/** Conductivity of open-cell foam under a sleeper, W/mK: common practice. */
const FOAM_W_PER_M_K = 0.045
/** Thickness that is left under a sleeper's weight: common practice. */
const FOAM_LEFT01 = 0.6

const COMFORT = /comfort[^0-9−–-]*([−–-]?\d+(?:[.,]\d+)?)\s*(?:°|deg)?\s*([CF])/i

/** Comfort rating out of words such as `comfort -9 C` or `comfort 28 F`, °C. */
export function comfortOf(name: string): number | undefined {
  const match = COMFORT.exec(name)
  if (match === null) return undefined
  const value = Number((match[1] ?? '').replace(/[−–]/, '-').replace(',', '.'))
  return match[2]?.toUpperCase() === 'F' ? Math.round(fromFahrenheit(value) * 10) / 10 : value
}

/** Mat insulation out of `R 5.5`, m2K/W. */
const ratedMatOf = (name: string): number | undefined => {
  const match = /\bR[- ]?(?:value )?(\d+(?:\.\d+)?)/.exec(name)
  return match === null ? undefined : Number((Number(match[1]) * R_US_M2K_PER_W).toFixed(3))
}

/** The bedding a piece is; absent where it is none. `laidThicknessMm` serves a mattress without a rating. */
export function beddingOf(name: string, becomesBed: boolean, laidThicknessMm: number): Bedding | undefined {
  const text = name.toLowerCase()
  const kind = BEDDING.find(([pattern]) => pattern.test(text))?.[1]
  if (kind === undefined || (!becomesBed && kind === 'mat')) return undefined
  const comfortC = comfortOf(name)
  const under = kind === 'mattress' || kind === 'mat'
  const thickness = Number((((laidThicknessMm / MM_PER_M) * FOAM_LEFT01) / FOAM_W_PER_M_K).toFixed(2))
  const clo = kind === 'quilt' ? QUILT_CLO : kind === 'blanket' ? BLANKET_CLO : undefined
  return {
    kind,
    ...(comfortC === undefined ? {} : { comfortC }),
    ...(comfortC === undefined && clo !== undefined ? { clo } : {}),
    ...(under ? { matM2KPerW: ratedMatOf(name) ?? Math.min(thickness, 5) } : {}),
  }
}
