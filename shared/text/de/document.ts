/** German sentences: document. */
import type { document as english } from '../en/document.ts'

export const document: Record<keyof typeof english, string> = {}
