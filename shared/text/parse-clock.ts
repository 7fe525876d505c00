/** A clock as a person types it: '17:40', '17.40', '1740', '5:40 pm', '7'. */
import { fail, ok, problem } from '../result/index.ts'
import type { Result } from '../result/index.ts'

const TYPED = /^(\d{1,2})(?:[:.h]?([0-5]\d))?\s*(am|pm|a\.m\.|p\.m\.|uhr)?$/

/** `HH:MM` of a typed clock; `clock-unreadable` otherwise. */
export function parseTypedClock(typed: string): Result<string> {
  const match = TYPED.exec(typed.trim().toLowerCase())
  const unreadable = fail(problem('clock-unreadable', [], { value: typed }))
  if (match === null) return unreadable
  const half = match[3] === undefined || match[3] === 'uhr' ? null : match[3][0]
  const said = Number(match[1])
  if (half !== null && (said < 1 || said > 12)) return unreadable
  const hour = half === null ? said : (said % 12) + (half === 'p' ? 12 : 0)
  if (hour > 23) return unreadable
  return ok(`${String(hour).padStart(2, '0')}:${match[2] ?? '00'}`)
}
