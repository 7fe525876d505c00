/** One difference between two plans of nearly the same trip, as data and as a sentence's parameters. */
import type { Step } from '../checklist/index.ts'
import type { Problem } from '../result/index.ts'

/** Its sentence is `whatIf.<code>` with `params`; `problem` and `steps` have sentences of their own. */
export type Difference = {
  readonly code:
    | 'holds-no-more'
    | 'holds-now'
    | 'shortfall-added'
    | 'shortfall-gone'
    | 'caution-added'
    | 'comfort'
    | 'depart'
    | 'leg-margin'
    | 'moves'
    | 'bed-other-place'
    | 'drive-other-place'
    | 'bedding-wanted'
    | 'steps-added'
    | 'steps-gone'
  readonly nightId: string | null
  readonly params: Readonly<Record<string, string | number | boolean | readonly string[]>>
  readonly problem?: Problem
  readonly steps?: readonly Step[]
}
