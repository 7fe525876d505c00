/** Conditions as the built-in rules write them: each makes a piece of JsonLogic. A fact that is null fulfils none of the comparisons. */
import type { ChecklistFacts } from '../facts.ts'
import { SKIPPED_FACT } from '../facts.ts'
import type { Condition } from '../types.ts'

type PathIn<Area extends keyof ChecklistFacts> = `${Area}.${Extract<keyof ChecklistFacts[Area], string>}`

/** A dotted path that exists in `ChecklistFacts`, or one inside the element that `forEach` walks over. */
export type FactPath =
  { readonly [Area in keyof ChecklistFacts]: PathIn<Area> }[keyof ChecklistFacts] | `item.${string}`

const read = (path: FactPath): Condition => ({ var: path })

export const ALWAYS: Condition = true

export const is = (path: FactPath): Condition => ({ '===': [read(path), true] })
export const isNot = (path: FactPath): Condition => ({ '===': [read(path), false] })
export const equals = (path: FactPath, value: string | number): Condition => ({ '===': [read(path), value] })
export const notEquals = (path: FactPath, value: string | number): Condition => ({ '!==': [read(path), value] })
export const known = (path: FactPath): Condition => ({ '!==': [read(path), null] })
export const missing = (path: FactPath): Condition => ({ '===': [read(path), null] })
/** A list with at least one member. */
export const filled = (path: FactPath): Condition => ({ '!!': [read(path)] })

/** The step of another rule was skipped tonight: the engine itself adds this fact. */
export const skipped = (ruleId: string): Condition => ({ in: [ruleId, { var: SKIPPED_FACT }] })

export const every = (...parts: readonly Condition[]): Condition => ({ and: parts })
export const some = (...parts: readonly Condition[]): Condition => ({ or: parts })
export const not = (part: Condition): Condition => ({ '!': [part] })

type Comparison = '<' | '<=' | '>' | '>='

/** JsonLogic takes null for 0 in comparisons; what is not known must not pass for a number. */
const compare = (path: FactPath, by: Comparison, value: number): Condition =>
  every(known(path), { [by]: [read(path), value] })

export const below = (path: FactPath, value: number): Condition => compare(path, '<', value)
export const atMost = (path: FactPath, value: number): Condition => compare(path, '<=', value)
export const above = (path: FactPath, value: number): Condition => compare(path, '>', value)
export const atLeast = (path: FactPath, value: number): Condition => compare(path, '>=', value)

export const isLess = (path: FactPath, than: FactPath): Condition =>
  every(known(path), known(than), { '<': [read(path), read(than)] })

/** A post one may plug into: one without earth is left alone, whatever it gives. */
export const PLUGGED_IN = every(is('hookup.present'), notEquals('hookup.earth', 'no'))

/** Plugged in, and something draws: a driving battery takes nothing where charging is forbidden or the post is below its least current. */
export const DRAWS_CURRENT = every(
  PLUGGED_IN,
  some(
    notEquals('vehicle.drive', 'electric'),
    every(notEquals('site.chargeAllowed', 'no'), isNot('hookup.belowMinimum')),
  ),
)
