/** What a screen, a card or the command may ask of the text layer. */
import type { Problem } from '../result/index.ts'
import type { Utc } from '../units/index.ts'
import type { ENGLISH } from './en/index.ts'

export type Language = 'en' | 'de'
export type UnitSystem = 'metric' | 'us'
export type TextKey = keyof typeof ENGLISH
export type TextParams = Readonly<Record<string, string | number>>

/** A number as a person would say it, with its unit apart so that it can be set smaller. */
export type Quantity = { readonly number: string; readonly unit: string; readonly text: string }

export type Text = {
  readonly language: Language
  readonly units: UnitSystem
  readonly t: (key: TextKey, params?: TextParams) => string
  readonly has: (key: string) => key is TextKey
  /** One sentence for a problem: what, where, and what to do. */
  readonly problem: (problem: Problem) => string
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
  readonly speed: (kmPerH: number) => Quantity
  readonly windSpeed: (mPerS: number) => Quantity
  readonly duration: (durationS: number) => string
  readonly money: (amount: number, currency: string) => string
  readonly clock: (at: Utc, zone: string) => string
  readonly date: (isoDate: string) => string
  readonly number: (value: number, digits?: number) => string
}
