/** What an own rule may ask about a night, and how each is asked: yes or no, or a number with its unit. */
import type { Measure } from '../../../shared/text/index.ts'

export const RULE_FACTS = {
  'weather.lowC': 'temperature',
  'weather.highC': 'temperature',
  'weather.windMPerS': 'windSpeed',
  'weather.rainMm': 'length',
  'weather.snowMm': 'length',
  'energy.depart01': 'percent',
  'hookup.present': 'yes-no',
  'hookup.domesticSocket': 'yes-no',
  'heating.set': 'yes-no',
  'air.covers': 'yes-no',
  'clock.arriveInDark': 'yes-no',
  'pitch.soft': 'yes-no',
  'site.foodLockerRequired': 'yes-no',
  'leg.present': 'yes-no',
  'target.present': 'yes-no',
  'trip.firstNight': 'yes-no',
  'trip.lastNight': 'yes-no',
  'trip.pets': 'yes-no',
} as const satisfies Readonly<Record<string, Measure | 'yes-no'>>

export type RuleFact = keyof typeof RULE_FACTS

export const FACT_NAMES = Object.keys(RULE_FACTS) as readonly RuleFact[]

export const isRuleFact = (path: string): path is RuleFact => Object.hasOwn(RULE_FACTS, path)
