/** German sentences: steps. */
import type { steps as english } from '../en/steps.ts'

export const steps: Record<keyof typeof english, string> = {}
