/** German sentences: window. */
import type { window as english } from '../en/window.ts'

export const window: Record<keyof typeof english, string> = {}
