/** A form as data: which place of the trip each field shows, and how it is typed. */
import type { DocumentPath } from '../../shared/result/index.ts'
import type { Measure, TextKey } from '../../shared/text/index.ts'
import type { Choice } from './ChoiceField.vue'

type Common = {
  readonly path: DocumentPath
  readonly label: TextKey
  readonly note?: TextKey
  readonly optional?: boolean
  /** Takes the room of two. */
  readonly wide?: boolean
}

export type FieldSpec =
  | (Common & { readonly kind: 'measure'; readonly measure: Measure })
  | (Common & { readonly kind: 'number' })
  | (Common & { readonly kind: 'text' })
  | (Common & { readonly kind: 'clock' })
  | (Common & { readonly kind: 'switch' })
  | (Common & { readonly kind: 'choice'; readonly choices: readonly Choice[] })

export type FieldValue = string | number | boolean

/** What a form reads from and writes to. Writing `undefined` takes an optional value away; false means that it was refused. */
export type FieldSource = {
  readonly read: (path: DocumentPath) => unknown
  readonly write: (path: DocumentPath, value: FieldValue | undefined) => string | null
}
