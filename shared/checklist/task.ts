/** What the scheduler sees of a step: how long, between which instants, after which others. Whole seconds. */

export type Task = {
  readonly key: string
  /** Place of its phase in the trip: every task of a lower rank comes first. */
  readonly rank: number
  readonly durationS: number
  /** Null: may start at any time. */
  readonly releaseS: number | null
  /** Null: may end at any time. */
  readonly dueS: number | null
  readonly after: readonly string[]
}

/** Tasks in a readable order that respects ranks and predecessors, with who must come before whom. */
export type OrderedTasks = {
  readonly tasks: readonly Task[]
  /** `earlier[j]`: positions of all tasks of the same rank that must precede task j, direct or not. */
  readonly earlier: readonly (readonly number[])[]
}
