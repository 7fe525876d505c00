/** Sentences of a test's own, filled as the catalogue's are. */
import { fillSentence } from '../../shared/text/fill.ts'
import type { TextParams } from '../../shared/text/index.ts'

export const createTextWith =
  <K extends string>(sentences: Readonly<Record<K, string>>) =>
  (key: K, params: TextParams): string =>
    fillSentence(sentences[key], params, { language: 'en', units: 'metric' }, (word) =>
      word === 'word.yes' ? 'yes' : word === 'word.no' ? 'no' : null,
    )
