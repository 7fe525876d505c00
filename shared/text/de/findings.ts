/** German sentences: findings. */
import type { findings as english } from '../en/findings.ts'

export const findings: Record<keyof typeof english, string> = {}
