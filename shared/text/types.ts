/** What a screen, a card or the command may ask of the text layer. */
import type { Problem, Result } from '../result/index.ts'
import type { Utc } from '../units/index.ts'
import type { ENGLISH } from './en/index.ts'

export type Language = 'en' | 'de'
export type UnitSystem = 'metric' | 'us'
export type TextKey = keyof typeof ENGLISH
export type TextParam = string | number | boolean | readonly string[]
export type TextParams = Readonly<Record<string, TextParam>>

/** A number as a person would say it, with its unit apart so that it can be set smaller. */
export type Quantity = { readonly number: string; readonly unit: string; readonly text: string }

/** The measures that a person types into a field. */
export type Measure =
  | 'length'
  | 'mass'
  | 'volume'
  | 'temperature'
  | 'temperatureDifference'
  | 'power'
  | 'energy'
  | 'percent'
  | 'current'
  | 'voltage'
  | 'distance'
  | 'speed'
  | 'windSpeed'
  | 'duration'

export type Text = {
  readonly language: Language
  readonly units: UnitSystem
  /**
   * A sentence with its `{name}` placeholders filled; "one | many" chooses by `count`.
   * A number whose name ends in a unit (`lengthMm`, `massG`, `tempC`, `marginK`, `powerW`, `energyWh`, `share01`, `currentA`,
   * `durationS`, `co2Ppm`, `distanceM` ...) is converted and rounded; `atUtc` beside `zone` becomes a clock, `atDayUtc` a clock with its date;
   * a code for which the catalogue has `<name>.<code>` becomes that word.
   */
  readonly t: (key: TextKey, params?: TextParams) => string
  readonly has: (key: string) => key is TextKey
  /** One sentence for a problem: what, where, and what to do. `{where}` is its path in words. */
  readonly problem: (problem: Problem) => string
  /** The same in the window, beside the field that caused it: no path of the file, numbers in the units that are typed. */
  readonly problemAtField: (problem: Problem) => string
  /** The same where it is not seen beside its field: its place in words goes before. */
  readonly problemInTrip: (problem: Problem) => string
  /** A path into the trip in words: "night 2 > hookup > breaker". */
  readonly path: (path: Problem['path']) => string
  readonly length: (lengthMm: number) => Quantity
  readonly size: (sizeMm: readonly [number, number, number]) => string
  readonly mass: (massG: number) => Quantity
  readonly volume: (volumeMm3: number) => Quantity
  readonly temperature: (tempC: number) => Quantity
  readonly temperatureDifference: (differenceK: number) => Quantity
  readonly power: (powerW: number) => Quantity
  readonly energy: (energyWh: number) => Quantity
  readonly percent: (fraction01: number) => Quantity
  readonly current: (currentA: number) => Quantity
  readonly voltage: (volts: number) => Quantity
  readonly distance: (distanceM: number) => Quantity
  /** Height above the sea. */
  readonly elevation: (elevationM: number) => Quantity
  readonly speed: (kmPerH: number) => Quantity
  readonly windSpeed: (mPerS: number) => Quantity
  readonly duration: (durationS: number) => string
  readonly money: (amount: number, currency: string) => string
  readonly clock: (at: Utc, zone: string) => string
  /** The clock with its day of the week: 'Fri 18:05'. */
  readonly weekdayClock: (at: Utc, zone: string) => string
  /** A wall clock 'HH:MM' of the trip in the reader's notation. */
  readonly clockText: (clock: string) => string
  readonly date: (isoDate: string) => string
  readonly number: (value: number, digits?: number) => string
  readonly list: (items: readonly string[]) => string
  /** The value unrounded, in a form that `parse` reads back to the same value: what a field shows while it is edited. */
  readonly exact: (measure: Measure, value: number) => Quantity
  /** What a person typed, as mm, g, mm3, °C, K, W, Wh, 0..1, A, V, m, km/h, m/s or s. A bare number takes the unit of `exact`. */
  readonly parse: (measure: Measure, typed: string) => Result<number>
}
