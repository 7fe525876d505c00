/** The trip in hand, its history and its file. It changes only by named edits; everything else is derived from it. */
import { defineStore } from 'pinia'
import { computed, shallowRef } from 'vue'
import type { Trip } from '../../shared/document/index.ts'
import type { OpenFile } from '../../shared/host/index.ts'

export type Entry = { readonly trip: Trip; readonly name: string; readonly gesture: string | null }
export type DocumentState = {
  readonly trip: Trip | null
  readonly file: OpenFile | null
  readonly past: readonly Entry[]
  readonly future: readonly Entry[]
  readonly savedTrip: Trip | null
}

const EMPTY: DocumentState = { trip: null, file: null, past: [], future: [], savedTrip: null }
const MOST_STEPS = 500

export const useDocumentStore = defineStore('document', () => {
  const state = shallowRef<DocumentState>(EMPTY)
  const trip = computed(() => state.value.trip)
  const names = computed(() => {
    const now = trip.value
    if (now === null) return new Map<string, string>()
    const named = [...now.vehicle.bays, ...now.kit.pieces, ...now.kit.bins]
    return new Map(named.map(({ id, name }) => [id, name]))
  })
  return {
    state,
    trip,
    unsaved: computed(() => state.value.trip !== state.value.savedTrip),
    undoName: computed(() => state.value.past.at(-1)?.name ?? null),
    redoName: computed(() => state.value.future.at(-1)?.name ?? null),
    nameOf: (id: string): string => names.value.get(id) ?? id,
    open: (opened: Trip, file: OpenFile | null, unsaved: boolean) => {
      state.value = { trip: opened, file, past: [], future: [], savedTrip: unsaved ? null : opened }
    },
    close: () => {
      state.value = EMPTY
    },
    saved: (file: OpenFile, savedTrip: Trip) => {
      state.value = { ...state.value, file, savedTrip }
    },
    /** Makes a named change; changes of one gesture, such as one drag of a dial, are one step of the history. */
    change: (name: string, gesture: string | null, make: (trip: Trip) => Trip) => {
      const { trip: before, past } = state.value
      if (before === null) return
      const next = make(before)
      if (next === before) return
      const merges = gesture !== null && past.at(-1)?.gesture === gesture
      state.value = {
        ...state.value,
        trip: next,
        past: merges ? past : [...past.slice(1 - MOST_STEPS), { trip: before, name, gesture }],
        future: [],
      }
    },
    endGesture: () => {
      const last = state.value.past.at(-1)
      if (last === undefined || last.gesture === null) return
      state.value = { ...state.value, past: [...state.value.past.slice(0, -1), { ...last, gesture: null }] }
    },
    undo: () => {
      const { past, future, trip: now } = state.value
      const last = past.at(-1)
      if (last === undefined || now === null) return
      state.value = { ...state.value, trip: last.trip, past: past.slice(0, -1), future: [...future, { ...last, trip: now }] }
    },
    redo: () => {
      const { past, future, trip: now } = state.value
      const next = future.at(-1)
      if (next === undefined || now === null) return
      state.value = { ...state.value, trip: next.trip, future: future.slice(0, -1), past: [...past, { ...next, trip: now, gesture: null }] }
    },
  }
})

export type DocumentStore = ReturnType<typeof useDocumentStore>
