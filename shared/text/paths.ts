/** A path into the trip in a traveller's words: ['nights', 1, 'hookup', 'breakerA'] is "night 2 > hookup > breaker". */
import type { DocumentPath } from '../result/index.ts'

/** The unit that ends a field's name. */
export const UNIT_ENDING = /(?<=[a-z])(Mm|Mm3|G|C|K|W|Wh|01|A|V|S|Ppm|M|Ml|Min|Deg|Utc|Ids?|MPerS|KmPerH)$/

export function sayPath(path: DocumentPath, word: (key: string) => string | null): string {
  const words: string[] = []
  let before: DocumentPath[number] | null = null
  for (const segment of path) {
    const part = typeof segment === 'number' && before !== null ? word(`path.${before}.${segment}`) : null
    before = segment
    if (part !== null) words.splice(-1, 1, part)
    else if (typeof segment === 'string') words.push(word(`path.${segment}`) ?? humanise(segment))
    else words.push(`${words.pop() ?? ''} ${segment + 1}`.trim())
  }
  return words.join(' > ')
}

/** 'siteLimitA' is 'site limit': the unit goes, the humps become spaces. */
const humanise = (name: string): string =>
  name
    .replace(UNIT_ENDING, '')
    .replaceAll(/([a-z0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
