/** A form as data: which place of the trip each field shows, how it is typed, and which groups and lists of fields may come and go. */
import type { DocumentPath } from '../../shared/result/index.ts'
import type { Measure, TextKey } from '../../shared/text/index.ts'
import type { Choice } from './ChoiceField.vue'

type Common = {
  readonly path: DocumentPath
  readonly label: TextKey
  readonly note?: TextKey
  /** May be left empty. */
  readonly optional?: boolean
  /** Takes the room of two. */
  readonly wide?: boolean
}

/** Any value that a trip holds. */
export type FormValue = string | number | boolean | null | readonly FormValue[] | { readonly [key: string]: FormValue }

export type FieldSpec =
  | (Common & {
      readonly kind: 'measure'
      readonly measure: Measure
      /** Empty means null, not absent. */ readonly nullable?: boolean
    })
  | (Common & { readonly kind: 'number' })
  /** A sum kept in hundredths. */
  | (Common & { readonly kind: 'money' })
  | (Common & { readonly kind: 'text' })
  | (Common & { readonly kind: 'clock' })
  | (Common & { readonly kind: 'switch' })
  | (Common & {
      readonly kind: 'choice'
      readonly choices: readonly Choice[]
      /** Where a choice brings more than its own word: the place that is written and what stands there then. */
      readonly writes?: { readonly path: DocumentPath; readonly valueOf: (choice: string) => FormValue }
    })
  /** Some of a few words. */
  | (Common & { readonly kind: 'set'; readonly choices: readonly Choice[]; readonly least?: number })
  /** A list of texts, one a line. */
  | (Common & { readonly kind: 'lines' })

/** One part of a form, from top to bottom. */
export type FormPart =
  | { readonly kind: 'fields'; readonly fields: readonly FieldSpec[] }
  /** Fields that stand together and may be absent together. */
  | {
      readonly kind: 'group'
      readonly path: DocumentPath
      readonly title: TextKey
      readonly initial: FormValue
      readonly parts: readonly FormPart[]
    }
  /** A list in which each row is a form of its own. */
  | {
      readonly kind: 'rows'
      readonly path: DocumentPath
      /** Absent where the section around it says the same. */
      readonly title?: TextKey
      readonly hint?: TextKey
      /** What one row is called. */
      readonly one: TextKey
      /** The next row, given those that are there. */
      readonly initial: (rows: readonly unknown[]) => FormValue
      readonly partsOf: (row: number) => readonly FormPart[]
      readonly least?: number
      readonly most: number
      /** Only these rows of the list belong to the form. */
      readonly only?: (row: unknown) => boolean
    }

/** What a form reads from and writes to. Writing `undefined` takes an optional value away; a sentence means that it was refused. */
export type FieldSource = {
  readonly read: (path: DocumentPath) => unknown
  readonly write: (path: DocumentPath, value: FormValue | undefined) => string | null
}

export const fieldsPart = (fields: readonly FieldSpec[]): FormPart => ({ kind: 'fields', fields })

/** Builders that keep the lists of fields readable. */
export const measure = (
  measureName: Measure,
  path: DocumentPath,
  label: TextKey,
  more: { readonly optional?: boolean; readonly note?: TextKey; readonly nullable?: boolean } = {},
): FieldSpec => ({ kind: 'measure', measure: measureName, path, label, ...more })

export const length = (path: DocumentPath, label: TextKey, optional = false): FieldSpec =>
  measure('length', path, label, { optional })

/** Choices from words that all have a sentence under one key. */
export const choicesFrom = <Word extends string>(
  words: readonly Word[],
  say: (word: Word) => string,
): readonly Choice[] => words.map((value) => ({ value, label: say(value) }))

/** Length, width and height of a box. */
export const sizeFields = (path: DocumentPath): readonly FieldSpec[] => [
  length([...path, 0], 'window.size.length'),
  length([...path, 1], 'window.size.width'),
  length([...path, 2], 'window.size.height'),
]
