/** The trip in hand, its history and its file. It changes only by named edits; everything else is derived from it. */
import { defineStore } from 'pinia'
import { computed, shallowRef } from 'vue'
import { applyEdit, createHistory, endGesture, record, redo, undo } from '../../shared/document/index.ts'
import type { Edit, History, Trip } from '../../shared/document/index.ts'
import type { OpenFile } from '../../shared/host/index.ts'
import type { DocumentPath, Problem } from '../../shared/result/index.ts'

export type DocumentState = {
  readonly trip: Trip | null
  readonly file: OpenFile | null
  readonly history: History
  readonly savedTrip: Trip | null
  /** Opened from a recovery copy: what it holds is nowhere else. */
  readonly rescued: boolean
}

const EMPTY: DocumentState = { trip: null, file: null, history: createHistory(), savedTrip: null, rescued: false }

export const useDocumentStore = defineStore('document', () => {
  const state = shallowRef<DocumentState>(EMPTY)
  const trip = computed(() => state.value.trip)
  // An edit of a night leaves vehicle and kit the same objects: then nothing that reads names or the bed is drawn anew.
  const vehicle = computed(() => trip.value?.vehicle ?? null)
  const kit = computed(() => trip.value?.kit ?? null)
  const names = computed(() => {
    const named = [...(vehicle.value?.bays ?? []), ...(kit.value?.pieces ?? []), ...(kit.value?.bins ?? [])]
    return new Map(named.map(({ id, name }) => [id, name]))
  })
  const step = (take: typeof undo): void => {
    const { history, trip: now } = state.value
    const taken = now === null ? null : take(history, now)
    if (taken !== null) state.value = { ...state.value, trip: taken.trip, history: taken.history }
  }
  return {
    state,
    trip,
    vehicle,
    kit,
    unsaved: computed(() => state.value.trip !== state.value.savedTrip),
    /** Whether edits would be lost with this trip; a sample or a new trip untouched loses nothing. */
    wouldLose: computed(
      () => state.value.trip !== state.value.savedTrip && (state.value.history.past.length > 0 || state.value.rescued),
    ),
    undoName: computed(() => state.value.history.past.at(-1)?.name ?? null),
    redoName: computed(() => state.value.history.future.at(-1)?.name ?? null),
    nameOf: (id: string): string => names.value.get(id) ?? id,
    open: (opened: Trip, file: OpenFile | null, unsaved: boolean, rescued = false) => {
      state.value = { trip: opened, file, history: createHistory(), savedTrip: unsaved ? null : opened, rescued }
    },
    close: () => {
      state.value = EMPTY
    },
    saved: (file: OpenFile, savedTrip: Trip) => {
      state.value = { ...state.value, file, savedTrip }
    },
    /** The value at a place of the trip; undefined where there is none. */
    valueAt: (path: DocumentPath): unknown =>
      path.reduce<unknown>(
        (value, key) => (typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined),
        state.value.trip,
      ),
    /** Makes a named edit; edits of one gesture, such as one drag of a dial, are one entry. Gives the reason where it is refused. */
    edit: (name: string, edit: Edit, gesture: string | null = null): Problem | null => {
      const { trip: before, history } = state.value
      if (before === null) return null
      const next = applyEdit(before, edit)
      if (!next.ok) return next.problem
      if (next.value !== before) {
        state.value = {
          ...state.value,
          trip: next.value,
          history: record(history, before, next.value, { name, gesture }),
        }
      }
      return null
    },
    /** Another content for the same file, as one named edit. */
    replace: (name: string, trip: Trip) => {
      const { trip: before, history } = state.value
      if (before === null) return
      state.value = { ...state.value, trip, history: record(history, before, trip, { name, gesture: null }) }
    },
    endGesture: () => {
      state.value = { ...state.value, history: endGesture(state.value.history) }
    },
    undo: () => step(undo),
    redo: () => step(redo),
  }
})

export type DocumentStore = ReturnType<typeof useDocumentStore>
