/** Undo by gesture: names, joining, bounds. */
import { describe, expect, it } from 'vitest'
import {
  applyEdit,
  createHistory,
  endGesture,
  parseTrip,
  record,
  redo,
  undo,
} from '../../../../shared/document/index.ts'
import type { History, Trip } from '../../../../shared/document/index.ts'
import { MOST_CHARACTERS, MOST_ENTRIES } from '../../../../shared/document/history/history.ts'
import { bytesOf, sampleText } from '../sample.ts'

const read = parseTrip(bytesOf(sampleText()))
if (!read.ok) throw new Error('the sample does not open')
const sample: Trip = read.value

type Now = { readonly trip: Trip; readonly history: History }

function set(now: Now, title: string, gesture: string | null = null): Now {
  const next = applyEdit(now.trip, { kind: 'set-value', path: ['title'], value: title })
  if (!next.ok) throw new Error(next.problem.code)
  return { trip: next.value, history: record(now.history, now.trip, next.value, { name: `title ${title}`, gesture }) }
}

const start: Now = { trip: sample, history: createHistory() }

describe('the history', () => {
  it('has nothing to take back at first', () => {
    expect(undo(start.history, sample)).toBeNull()
    expect(redo(start.history, sample)).toBeNull()
  })

  it('names what it takes back and gives again', () => {
    const now = set(set(start, 'a'), 'b')
    const back = undo(now.history, now.trip)
    expect(back?.name).toBe('title b')
    expect(back?.trip.title).toBe('a')
    const forth = back === null ? null : redo(back.history, back.trip)
    expect(forth?.trip).toEqual(now.trip)
  })

  it('joins one gesture into one entry of two values', () => {
    const now = ['a', 'ab', 'abc'].reduce((before, title) => set(before, title, 'typing'), start)
    expect(now.history.past.length).toBe(1)
    expect(now.history.past[0]?.patches).toEqual([{ kind: 'put', path: ['title'], before: sample.title, after: 'abc' }])
    expect(undo(now.history, now.trip)?.trip).toEqual(sample)
  })

  it('is the same where there is no gesture to end', () => {
    const none = createHistory()
    expect(endGesture(none)).toBe(none)
    const single = set(start, 'a')
    expect(endGesture(single.history)).toBe(single.history)
  })

  it('starts a new entry after the gesture has ended, or was taken back', () => {
    const first = set(start, 'a', 'typing')
    const ended = set({ ...first, history: endGesture(first.history) }, 'b', 'typing')
    expect(ended.history.past.length).toBe(2)
    const back = undo(first.history, first.trip)
    const forth = back === null ? null : redo(back.history, back.trip)
    expect(forth === null ? 0 : set(forth, 'c', 'typing').history.past.length).toBe(2)
  })

  it('forgets a gesture that ends where it began', () => {
    const away = set(start, 'x', 'typing')
    expect(set(away, sample.title, 'typing').history.past).toEqual([])
  })

  it('writes nothing where nothing changed', () => {
    expect(record(start.history, sample, sample, { name: 'nothing' })).toBe(start.history)
  })

  it('drops what was taken back once something new is done', () => {
    const now = set(start, 'a')
    const back = undo(now.history, now.trip)
    expect(back === null ? null : set(back, 'b').history.future).toEqual([])
  })

  it('keeps a piece’s change to that piece', () => {
    const next = applyEdit(sample, { kind: 'set-value', path: ['kit', 'pieces', 3, 'massG'], value: 1500 })
    const history = next.ok ? record(start.history, sample, next.value, { name: 'mass' }) : start.history
    expect(history.past[0]?.patches).toEqual([
      { kind: 'put', path: ['kit', 'pieces', 3, 'massG'], before: 1300, after: 1500 },
    ])
  })

  it('keeps a removed piece as one run of its list', () => {
    const next = applyEdit(sample, { kind: 'remove-piece', pieceId: 'flask' })
    const history = next.ok ? record(start.history, sample, next.value, { name: 'remove' }) : start.history
    const [patch] = history.past[0]?.patches ?? []
    expect(patch).toMatchObject({ kind: 'splice', path: ['kit', 'pieces'], added: [] })
    expect(history.past[0]?.patches.length).toBe(1)
  })

  it('stays within its bounds, oldest first, and keeps the newest', () => {
    let now = start
    for (let turn = 0; turn < MOST_ENTRIES + 5; turn++) now = set(now, `t${String(turn)}`)
    expect(now.history.past.length).toBe(MOST_ENTRIES)
    expect(now.history.past[0]?.name).toBe('title t5')
    const long = 'x'.repeat(MOST_CHARACTERS + 1)
    const history = record(now.history, now.trip, { ...now.trip, note: long }, { name: 'long' })
    expect(history.past.map((entry) => entry.name)).toEqual(['long'])
  })
})
