/** German sentences: night. */
import type { night as english } from '../en/night.ts'

export const night: Record<keyof typeof english, string> = {}
