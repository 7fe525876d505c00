/** German sentences: hosts. */
import type { hosts as english } from '../en/hosts.ts'

export const hosts: Record<keyof typeof english, string> = {}
