/** Whether the load is asked the same question: then the earlier layouts still answer it. */
import type { PackingInput, PackNight } from '../packing/index.ts'
import { same } from './same.ts'

/**
 * Two packing inputs that no layout can tell apart. The night's temperatures count only by what they forbid:
 * a bay a degree colder that still freezes nothing asks for no new load.
 */
export function sameLoad(before: PackingInput, after: PackingInput): boolean {
  if (before === after) return true
  const { nights: earlier, ...load } = before
  const { nights: later, ...changed } = after
  if (earlier.length !== later.length || !same(load, changed)) return false
  const limits = limitsOf(after)
  return earlier.every((night, at) => {
    const other = later[at]
    return other !== undefined && sameNight(night, other, limits)
  })
}

type Limits = { readonly freezeC: readonly number[]; readonly spoilC: readonly number[] }

const limitsOf = ({ pieces }: PackingInput): Limits => ({
  freezeC: pieces.flatMap(({ traits }) => traits.freezesBelowC ?? []),
  spoilC: pieces.flatMap(({ traits }) => traits.spoilsAboveC ?? []),
})

function sameNight(before: PackNight, after: PackNight, limits: Limits): boolean {
  const { lowTempC: lowBefore, highTempC: highBefore, ...rulesBefore } = before
  const { lowTempC: lowAfter, highTempC: highAfter, ...rulesAfter } = after
  return (
    same(rulesBefore, rulesAfter) &&
    sameSide(lowBefore, lowAfter, (tempC) => limits.freezeC.filter((limitC) => tempC < limitC).length) &&
    sameSide(highBefore, highAfter, (tempC) => limits.spoilC.filter((limitC) => tempC > limitC).length)
  )
}

/** Each bay on the same side of every limit: as many limits are passed before as after. */
function sameSide(
  before: Readonly<Record<string, number>>,
  after: Readonly<Record<string, number>>,
  passed: (tempC: number) => number,
): boolean {
  const bayIds = Object.keys(before)
  return (
    bayIds.length === Object.keys(after).length &&
    bayIds.every((bayId) => {
      const [was, is] = [before[bayId], after[bayId]]
      return was !== undefined && is !== undefined && passed(was) === passed(is)
    })
  )
}
