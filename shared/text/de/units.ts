/** German sentences: units. */
import type { units as english } from '../en/units.ts'

export const units: Record<keyof typeof english, string> = {}
