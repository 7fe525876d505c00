/**
 * Container loading instances by the published procedure: Bischoff and Ratcliff 1995 (Omega 23(4)), extended by Davies and Bischoff 1999 (EJOR 114).
 * The same seeds serve every class; any instance number may be asked for.
 */
import type { BoxType, ContainerInput } from '../../../shared/packing/index.ts'

/** Box types in each class, BR0 to BR15. */
const TYPES = [1, 3, 5, 8, 10, 12, 15, 20, 30, 40, 50, 60, 70, 80, 90, 100] as const
const CONTAINER = [587, 233, 220] as const
const SHORTEST = [30, 25, 20] as const
const LONGEST = [120, 100, 80] as const
/** An edge may stand upright if it is less than this many times the shortest. */
const STABLE = 2
const MODULUS = 2 ** 31 - 1
const MULTIPLIER = 16807
const FIRST_SEED = 2_502_505
const SEED_STEP = 100
const BURN_IN = 10

export const CLASSES = TYPES.map((_, at) => `BR${at}`)

export function instance(className: string, number: number): ContainerInput {
  const count = TYPES[Number(className.slice(2))]
  if (count === undefined) throw new Error(`no class ${className}`)
  let x = FIRST_SEED + SEED_STEP * (number - 1)
  const draw = (): number => (x = (MULTIPLIER * x) % MODULUS)
  const pick = (width: number): number => Math.floor((draw() * width) / MODULUS)
  for (let at = 0; at < BURN_IN; at += 1) draw()
  const boxes = Array.from({ length: count }, () => {
    const edges = ([0, 1, 2] as const)
      .map((axis) => SHORTEST[axis] + pick(LONGEST[axis] - SHORTEST[axis] + 1))
      .toSorted((a, b) => b - a)
    const [a = 0, b = 0, c = 0] = edges
    return { sizeMm: [a, b, c] as const, upright: [a / c < STABLE, b / c < STABLE, true] as const, count: 1 }
  })
  const volume = CONTAINER[0] * CONTAINER[1] * CONTAINER[2]
  const counts = boxes.map(() => 1)
  let cargo = boxes.reduce((sum, { sizeMm: [a, b, c] }) => sum + a * b * c, 0)
  for (;;) {
    const k = pick(count)
    const box = boxes[k]
    if (box === undefined) throw new Error('a draw is out of range')
    const one = box.sizeMm[0] * box.sizeMm[1] * box.sizeMm[2]
    if (cargo + one >= volume) break
    cargo += one
    counts[k] = (counts[k] ?? 0) + 1
  }
  return { sizeMm: CONTAINER, boxes: boxes.map((box, at): BoxType => ({ ...box, count: counts[at] ?? 1 })) }
}
