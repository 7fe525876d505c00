/** German sentences: cards. */
import type { cards as english } from '../en/cards.ts'

export const cards: Record<keyof typeof english, string> = {}
