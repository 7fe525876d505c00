/** The trip's own form and its travellers', as data. */
import { CHOICES, freshId } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { choicesFrom, fieldsPart, measure } from '../../ui/field-spec.ts'
import type { FormPart } from '../../ui/field-spec.ts'

const MOST_TRAVELLERS = 8

export const tripParts = (): readonly FormPart[] => [
  fieldsPart([
    { kind: 'text', path: ['title'], label: 'path.title', wide: true },
    { kind: 'text', path: ['note'], label: 'path.note', optional: true, wide: true },
  ]),
]

export const travellerRows = (text: Text): FormPart => ({
  kind: 'rows',
  path: ['travellers'],
  one: 'what.traveller',
  least: 1,
  most: MOST_TRAVELLERS,
  initial: (rows) => ({
    id: freshId('traveller', rows),
    label: text.t('window.new.traveller'),
    heightMm: 1720,
    massG: 72_000,
    drives: false,
    sleeps: 'average',
    sleepwearClo: 0.6,
  }),
  partsOf: (row) => {
    const at = (name: string): DocumentPath => ['travellers', row, name]
    return [
      fieldsPart([
        { kind: 'text', path: at('label'), label: 'path.name' },
        measure('length', at('heightMm'), 'path.heightMm'),
        measure('mass', at('massG'), 'path.massG'),
        {
          kind: 'choice',
          path: at('sleeps'),
          label: 'path.sleeps',
          choices: choicesFrom(CHOICES.sleeps, (word) => text.t(`window.sleeps.${word}`)),
        },
        { kind: 'number', path: at('sleepwearClo'), label: 'path.sleepwearClo', note: 'window.note.sleepwear' },
        { kind: 'switch', path: at('drives'), label: 'path.drives' },
      ]),
    ]
  },
})
