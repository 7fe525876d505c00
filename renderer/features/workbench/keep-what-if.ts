/** A what-if as an edit of the trip; null where it is no plan but a rehearsal. */
import type { Edit } from '../../../shared/document/index.ts'
import { assertNever } from '../../../shared/result/index.ts'
import type { WhatIfAnswer } from '../../stores/plan.ts'

type Value = NonNullable<Extract<Edit, { readonly kind: 'set-value' }>['value']>

/** As the file would hold it: what is undefined is not there. */
const plain = (value: unknown): Value => JSON.parse(JSON.stringify(value))

export function keepWhatIf({ kind, trip }: Pick<WhatIfAnswer, 'kind' | 'trip'>): Edit | null {
  switch (kind) {
    case 'colder':
    case 'weaker-supply':
    case 'no-outside-storage':
      return { kind: 'set-value', path: ['nights'], value: plain(trip.nights) }
    case 'one-more-person':
      return { kind: 'set-value', path: ['travellers'], value: plain(trip.travellers) }
    case 'fault-at-three':
      return null
    default:
      return assertNever(kind)
  }
}
