/** German sentences: command. */
import type { command as english } from '../en/command.ts'

export const command: Record<keyof typeof english, string> = {}
