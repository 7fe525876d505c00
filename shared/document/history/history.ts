/** What was done to a trip and how to take it back: one named entry for each gesture, within a bound of memory. */
import { invariant } from '../../result/index.ts'
import type { Trip } from '../schema/document.ts'
import { applyPatches, diff, reverse } from './diff.ts'
import type { Patch } from './diff.ts'

/** Entries kept at most, and the size of their patches as text, characters. */
export const MOST_ENTRIES = 1000
export const MOST_CHARACTERS = 8_000_000

export type HistoryEntry = {
  /** Text key or words for the menu: "Undo …". */
  readonly name: string
  /** Entries of one gesture, such as one drag of a dial, are one. Null: never joined. */
  readonly gesture: string | null
  readonly patches: readonly Patch[]
  readonly characters: number
}

export type History = { readonly past: readonly HistoryEntry[]; readonly future: readonly HistoryEntry[] }

export type Step = { readonly history: History; readonly trip: Trip; readonly name: string }

export const createHistory = (): History => ({ past: [], future: [] })

/** Writes down the way from one trip to the next. Nothing is written where nothing changed. */
export function record(
  history: History,
  before: Trip,
  after: Trip,
  label: { readonly name: string; readonly gesture?: string | null },
): History {
  const gesture = label.gesture ?? null
  const last = history.past.at(-1)
  const joins = gesture !== null && last?.gesture === gesture
  const from = joins ? backward(before, last) : before
  const patches = diff(from, after)
  const kept = joins ? history.past.slice(0, -1) : history.past
  if (patches.length === 0) return joins ? { past: kept, future: [] } : history
  const entry: HistoryEntry = { name: label.name, gesture, patches, characters: sizeOf(patches) }
  return { past: bounded([...kept, entry]), future: [] }
}

/** The trip before the last entry; null where there is none. */
export function undo(history: History, trip: Trip): Step | null {
  const last = history.past.at(-1)
  if (last === undefined) return null
  return {
    history: { past: history.past.slice(0, -1), future: [...history.future, last] },
    trip: backward(trip, last),
    name: last.name,
  }
}

/** The trip after the entry that was taken back last; null where there is none. */
export function redo(history: History, trip: Trip): Step | null {
  const next = history.future.at(-1)
  if (next === undefined) return null
  // A gesture that was taken back is over: what follows is a new one.
  const done: HistoryEntry = { ...next, gesture: null }
  return {
    history: { past: [...history.past, done], future: history.future.slice(0, -1) },
    trip: applyPatches(trip, next.patches) as Trip,
    name: next.name,
  }
}

/** The next change starts a new entry, whatever its gesture. */
export function endGesture(history: History): History {
  const last = history.past.at(-1)
  if (last === undefined || last.gesture === null) return history
  return { ...history, past: [...history.past.slice(0, -1), { ...last, gesture: null }] }
}

const backward = (trip: Trip, entry: HistoryEntry): Trip => applyPatches(trip, reverse(entry.patches)) as Trip

function sizeOf(patches: readonly Patch[]): number {
  const text = JSON.stringify(patches)
  invariant(text !== undefined, 'patches are plain values')
  return text.length
}

/** Drops the oldest entries beyond the bounds; the newest always stays. */
function bounded(entries: readonly HistoryEntry[]): readonly HistoryEntry[] {
  let characters = 0
  let kept = 0
  for (const entry of entries.toReversed()) {
    characters += entry.characters
    if (kept > 0 && (characters > MOST_CHARACTERS || kept >= MOST_ENTRIES)) break
    kept += 1
  }
  return kept === entries.length ? entries : entries.slice(entries.length - kept)
}
