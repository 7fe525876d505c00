/** Fills a sentence: plural form by `count`, then each `{name}`. */
import { showParam } from './parameters.ts'
import type { Formats } from './quantities.ts'
import type { TextParams } from './types.ts'

const PLACEHOLDER = /\{([A-Za-z][A-Za-z0-9]*)\}/g
const PLURAL = ' | '

/** `word` gives the catalogue's word for a key, or null. */
export function fillSentence(
  sentence: string,
  params: TextParams,
  formats: Formats,
  word: (key: string) => string | null,
): string {
  return chooseForm(sentence, params['count']).replaceAll(PLACEHOLDER, (_, name: string) =>
    showParam(name, params, formats, word),
  )
}

function chooseForm(sentence: string, count: TextParams[string] | undefined): string {
  if (typeof count !== 'number' || !sentence.includes(PLURAL)) return sentence
  const [one, many] = sentence.split(PLURAL)
  return (count === 1 ? one : many) ?? sentence
}
