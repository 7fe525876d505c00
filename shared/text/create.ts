/** Makes the text of one language and one unit system. */
import type { DocumentPath, Problem } from '../result/index.ts'
import { besideField } from './at-field.ts'
import { ENGLISH } from './en/index.ts'
import { GERMAN } from './de/index.ts'
import { sayWeekdayClock, sayClock, sayClockText, sayDate, sayDuration, sayList, sayMoney } from './moments.ts'
import { fillSentence } from './fill.ts'
import { formatNumber, plainDigits } from './numbers.ts'
import { parseQuantity } from './parse-quantity.ts'
import { sayPath } from './paths.ts'
import * as say from './quantities.ts'
import type { Language, Text, TextKey, TextParams, UnitSystem } from './types.ts'

const has = (key: string): key is TextKey => Object.hasOwn(ENGLISH, key)

/** Sentences and quantities of one language in one unit system. */
export function createText(language: Language, units: UnitSystem): Text {
  const formats = { language, units }
  const catalogue: Readonly<Record<TextKey, string>> = language === 'de' ? GERMAN : ENGLISH
  const word = (key: string): string | null => (has(key) ? catalogue[key] : null)
  const t = (key: TextKey, params: TextParams = {}): string => fillSentence(catalogue[key], params, formats, word)
  const path = (segments: DocumentPath): string => sayPath(segments, word)
  const problem = (found: Problem): string => {
    const where = path(found.path)
    const key = `problem.${found.code}`
    if (has(key)) return t(key, { ...found.params, where })
    return t('problem.unknown', { code: found.code, where: where === '' ? '\u2013' : where })
  }
  const inWindow = (found: Problem, place: DocumentPath): string => {
    const key = `problem.${found.code}`
    if (!has(key)) return problem(found)
    const where = path(place)
    const said = besideField(catalogue[key], found, where.charAt(0).toUpperCase() + where.slice(1))
    return fillSentence(said.sentence, said.params, formats, word)
  }
  const fieldOf = (full: DocumentPath): DocumentPath => {
    const named = full.findLastIndex((segment) => typeof segment === 'string')
    return full.slice(Math.max(named, 0))
  }
  return {
    language,
    units,
    t,
    has,
    problem,
    problemAtField: (found) => inWindow(found, fieldOf(found.path)),
    problemInTrip: (found) => inWindow(found, found.path),
    path,
    length: (value) => say.sayLength(value, formats),
    size: (value) => say.saySize(value, formats),
    mass: (value) => say.sayMass(value, formats),
    volume: (value) => say.sayVolume(value, formats),
    temperature: (value) => say.sayTemperature(value, formats),
    temperatureDifference: (value) => say.sayTemperatureDifference(value, formats),
    power: (value) => say.sayPower(value, formats),
    energy: (value) => say.sayEnergy(value, formats),
    percent: (value) => say.sayPercent(value, formats),
    current: (value) => say.sayCurrent(value, formats),
    voltage: (value) => say.sayVoltage(value, formats),
    distance: (value) => say.sayDistance(value, formats),
    elevation: (value) => say.sayElevation(value, formats),
    speed: (value) => say.saySpeed(value, formats),
    windSpeed: (value) => say.sayWindSpeed(value, formats),
    duration: (value) => sayDuration(value, formats),
    money: (amount, currency) => sayMoney(amount, currency, formats),
    clock: (at, zone) => sayClock(at, zone, formats),
    weekdayClock: (at, zone) => sayWeekdayClock(at, zone, formats),
    clockText: (clock) => sayClockText(clock, formats),
    date: (isoDate) => sayDate(isoDate, formats),
    number: (value, digits) => formatNumber(value, language, digits ?? plainDigits(value), digits !== undefined),
    list: (items) => sayList(items, formats),
    exact: (measure, value) => say.sayExact(measure, value, formats),
    parse: (measure, typed) => parseQuantity(measure, typed, formats),
  }
}
