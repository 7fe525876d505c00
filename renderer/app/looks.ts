/** Theme and brightness outlive the window: they belong to the machine, not to the trip. */
import type { ViewState } from '../stores/view.ts'
import { THEMES } from '../styles/tokens.ts'

const KEY = 'kipstow-looks'
type Looks = Pick<ViewState, 'theme' | 'brightness01'>

export function readLooks(): Partial<Looks> {
  const kept = localStorage.getItem(KEY)
  if (kept === null) return globalThis.matchMedia('(prefers-color-scheme: dark)').matches ? { theme: 'dark' } : {}
  const [name, share] = kept.split(' ')
  const theme = THEMES.find((each) => each === name)
  const brightness01 = Number(share)
  return {
    ...(theme === undefined ? {} : { theme }),
    ...(brightness01 >= 0.1 && brightness01 <= 1 ? { brightness01 } : {}),
  }
}

export const keepLooks = ({ theme, brightness01 }: Looks): void => localStorage.setItem(KEY, `${theme} ${brightness01}`)
