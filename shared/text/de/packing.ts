/** German sentences: packing. */
import type { packing as english } from '../en/packing.ts'

export const packing: Record<keyof typeof english, string> = {}
