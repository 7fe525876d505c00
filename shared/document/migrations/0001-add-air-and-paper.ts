/** Version 0 knew no `ventilation` of a night and no `preferences.paper`; its kit called the share kept free `slack01`. */
import { isList, isRecord } from '../parse/json-value.ts'
import type { JsonRecord, JsonValue } from '../parse/json-value.ts'
import type { Migration } from './types.ts'

/** Nobody opened a window before it could be planned: the gap is none. */
const CLOSED = { gapMm: 0, sides: 0 }

const withAir = (night: JsonValue): JsonValue =>
  isRecord(night) && !('ventilation' in night) ? { ...night, ventilation: CLOSED } : night

function withPaper(preferences: JsonValue | undefined): JsonValue | undefined {
  if (!isRecord(preferences) || 'paper' in preferences) return preferences
  return { ...preferences, paper: preferences['units'] === 'us' ? 'letter' : 'a4' }
}

function withFreeShare(kit: JsonValue | undefined): JsonValue | undefined {
  if (!isRecord(kit)) return kit
  const { slack01, ...rest } = kit
  return slack01 === undefined ? kit : { ...rest, freeShare01: slack01 }
}

const put = (content: JsonRecord, key: string, value: JsonValue | undefined): JsonRecord =>
  value === undefined ? content : { ...content, [key]: value }

export const addAirAndPaper: Migration = {
  to: 1,
  name: 'add-air-and-paper',
  migrate: (content) => {
    const nights = content['nights']
    const withNights = isList(nights) ? put(content, 'nights', nights.map(withAir)) : content
    const withPreferences = put(withNights, 'preferences', withPaper(content['preferences']))
    return put(withPreferences, 'kit', withFreeShare(content['kit']))
  },
}
