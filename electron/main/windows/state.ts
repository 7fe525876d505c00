/** Where the last window stood and how large it was. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Rectangle, Screen } from 'electron'

export type WindowState = {
  /** Empty where nothing is known or no screen shows it any more. */
  readonly read: () => Partial<Rectangle>
  readonly keep: (bounds: Rectangle) => void
}

/** A window is found again when at least this much of its top is on a screen, px. */
const LEAST_SEEN = 100

export function createWindowState(folder: string, screen: Pick<Screen, 'getAllDisplays'>): WindowState {
  const path = join(folder, 'window-state.json')
  return {
    read: () => {
      const bounds = parse(path)
      return bounds !== null && isSeen(bounds, screen) ? bounds : {}
    },
    keep: ({ x, y, width, height }) => {
      mkdirSync(folder, { recursive: true })
      writeFileSync(path, JSON.stringify({ x, y, width, height }))
    },
  }
}

/** Null where there is none or it is no rectangle: a window in the usual place loses nobody anything. */
function parse(path: string): Rectangle | null {
  try {
    const value: unknown = JSON.parse(readFileSync(path, 'utf8'))
    return isRectangle(value) ? value : null
  } catch (cause) {
    if (cause instanceof Error) return null
    throw cause
  }
}

const isRectangle = (value: unknown): value is Rectangle =>
  typeof value === 'object' &&
  value !== null &&
  ['x', 'y', 'width', 'height'].every((key) => Number.isInteger(Reflect.get(value, key)))

const isSeen = ({ x, y, width }: Rectangle, screen: Pick<Screen, 'getAllDisplays'>): boolean =>
  screen.getAllDisplays().some(({ workArea }) => {
    const across = Math.min(x + width, workArea.x + workArea.width) - Math.max(x, workArea.x)
    return across >= LEAST_SEEN && y >= workArea.y && y <= workArea.y + workArea.height - LEAST_SEEN
  })
