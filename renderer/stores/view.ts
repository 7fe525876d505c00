/** What the window shows: the moment, the night, what is chosen, how it looks. Nothing of it is part of the trip. */
import { defineStore } from 'pinia'
import { shallowRef } from 'vue'
import type { Utc } from '../../shared/units/index.ts'

export type Screen = 'workbench' | 'kit' | 'vehicle' | 'nights' | 'travellers'
export type Part = 'load' | 'night' | 'checklist'
export type ThemeName = 'light' | 'dark' | 'red'
/** One dialog at a time lies over the sheet. */
export type DialogName =
  | 'findings'
  | 'what-if'
  | 'palette'
  | 'shortcuts'
  | 'files'
  | 'export'
  | 'versions'
  | 'preferences'
  | 'about'
  | 'diagnostics'
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
  /** A new trip is led from screen to screen until its plan is looked at. */
  readonly firstSteps: boolean
  readonly dialog: DialogName | null
  /** A weather file dropped on the window, until the night in hand has taken it. */
  readonly weatherFile: File | null
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
  firstSteps: false,
  dialog: null,
  weatherFile: null,
}

export const useViewStore = defineStore('view', () => {
  const state = shallowRef<ViewState>(FIRST)
  const set = (change: Partial<ViewState>): void => {
    state.value = { ...state.value, ...change }
  }
  return {
    state,
    set,
    /** Opens a dialog, or closes it where it is the one that is open. */
    setDialog: (name: DialogName, open: boolean): void => {
      if (open) set({ dialog: name })
      else if (state.value.dialog === name) set({ dialog: null })
    },
  }
})

export type ViewStore = ReturnType<typeof useViewStore>
