/** What one of our own small files says. */

/** The value of a JSON text; null where it is none, which is all that `JSON.parse` throws for. */
export function jsonOrNull(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return null
  }
}
