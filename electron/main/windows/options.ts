/** What every window of ours is made with. Each protection is said, also where it is the default. */
import type { BrowserWindowConstructorOptions, Rectangle } from 'electron'

export type WindowLook = {
  readonly bounds: Partial<Rectangle>
  readonly preload: string
  readonly icon: string
  readonly tools: boolean
}

/** Smallest window in which the workbench can be used, CSS px. */
const LEAST_WIDTH = 760
const LEAST_HEIGHT = 520
const USUAL_WIDTH = 1280
const USUAL_HEIGHT = 800

export const windowOptions = ({ bounds, preload, icon, tools }: WindowLook): BrowserWindowConstructorOptions => ({
  width: USUAL_WIDTH,
  height: USUAL_HEIGHT,
  ...bounds,
  minWidth: LEAST_WIDTH,
  minHeight: LEAST_HEIGHT,
  show: false,
  title: 'Kipstow',
  icon,
  webPreferences: {
    preload,
    sandbox: true,
    contextIsolation: true,
    nodeIntegration: false,
    nodeIntegrationInWorker: false,
    nodeIntegrationInSubFrames: false,
    webviewTag: false,
    navigateOnDragDrop: false,
    spellcheck: false,
    safeDialogs: true,
    devTools: tools,
  },
})
