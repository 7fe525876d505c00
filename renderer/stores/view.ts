/** What the window shows: the moment, the night, what is chosen, how it looks. Nothing of it is part of the trip. */
import { defineStore } from 'pinia'
import { shallowRef } from 'vue'
import type { Utc } from '../../shared/units/index.ts'

export type Screen = 'workbench' | 'kit' | 'vehicle' | 'nights' | 'travellers'
export type Part = 'load' | 'night' | 'checklist'
export type ThemeName = 'light' | 'dark' | 'red'
export type Camera3d = 'corner' | 'plan' | 'side' | 'rear'

export type ViewState = {
  /** The first trip is still being opened. */
  readonly starting: boolean
  readonly screen: Screen
  readonly full: Part | null
  readonly nightIndex: number
  readonly atUtc: Utc | null
  readonly chosenUnitId: string | null
  readonly shade: 'access' | 'reach'
  readonly drawing: Camera3d
  readonly theme: ThemeName
  /** Share of full brightness in night-red. */
  readonly brightness01: number
  readonly findingsOpen: boolean
  readonly paletteOpen: boolean
  readonly shortcutsOpen: boolean
  readonly filesOpen: boolean
  readonly exportOpen: boolean
}

const FIRST: ViewState = {
  starting: true,
  screen: 'workbench',
  full: null,
  nightIndex: 0,
  atUtc: null,
  chosenUnitId: null,
  shade: 'access',
  drawing: 'corner',
  theme: 'light',
  brightness01: 1,
  findingsOpen: false,
  paletteOpen: false,
  shortcutsOpen: false,
  filesOpen: false,
  exportOpen: false,
}

export const useViewStore = defineStore('view', () => {
  const state = shallowRef<ViewState>(FIRST)
  return {
    state,
    set: (change: Partial<ViewState>) => {
      state.value = { ...state.value, ...change }
    },
  }
})

export type ViewStore = ReturnType<typeof useViewStore>
