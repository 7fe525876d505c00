/** A load stirred by legal moves drawn at random: the moves back are known, so whoever finds none or needs more has missed something. */
import { enters, leaves, sameSpot } from '../../../shared/packing/changeover/moves.ts'
import type { ChangeoverTask, Spot } from '../../../shared/packing/changeover/moves.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { away, cellBay, spot, taskOf } from './small-change.ts'

/** Places looked at by a thing that must wait, as many as the program itself offers. */
const WAITS = 4

type Size = readonly [number, number, number]

/** The change, and how many legal moves made it. */
export type Stirred = { readonly task: ChangeoverTask; readonly moves: number }

const BAYS = [
  cellBay('tunnel', [4, 2, 2], ['x-']),
  cellBay('pit', [3, 2, 2], ['z+'], { originCells: [20, 0, 0] }),
  cellBay('shelf', [3, 2, 1], ['x-', 'x+'], { originCells: [40, 0, 0] }),
]

/** Every place of whole cells that a box of this size has in the bays, the floor first. */
const placesFor = ([long, wide, high]: Size): readonly Spot[] =>
  BAYS.flatMap(({ sizeMm }, bay) => {
    const [x, y, z] = sizeMm.map((mm) => mm / 100)
    return Array.from({ length: (x ?? 0) * (y ?? 0) * (z ?? 0) }, (_, cell): Spot => {
      const floor = (x ?? 1) * (y ?? 1)
      const at = [cell % (x ?? 1), Math.floor((cell % floor) / (x ?? 1)), Math.floor(cell / floor)] as const
      return spot(bay, at, [long, wide, high])
    })
  })

/** `units` boxes set down at random, then `moves` of them moved at random. */
export const stirred = (seed: number, units: number, moves: number): Stirred => {
  const random = randomFrom(seed)
  const pick = <T>(from: readonly T[]): T | undefined => from[Math.floor(random() * from.length)]
  const sizes = Array.from({ length: units }, (): Size => [1 + Math.floor(random() * 2), 1, 1])
  const task = taskOf(
    BAYS,
    sizes.map(() => [away('outside'), away('outside')]),
  )
  const spots: Spot[] = sizes.map(() => away('outside'))
  const placeAtRandom = (mover: number): boolean => {
    if (leaves(task, spots, mover) < 0) return false
    const here = spots[mover]
    const free = placesFor(sizes[mover] ?? [1, 1, 1]).filter(
      (place) => here !== undefined && !sameSpot(place, here) && enters(task, spots, mover, place) >= 0,
    )
    const place = pick(free)
    if (place === undefined) return false
    spots[mover] = place
    return true
  }
  sizes.forEach((_, mover) => placeAtRandom(mover))
  const sources = spots.slice()
  let made = 0
  for (let tried = 0; made < moves && tried < 50 * moves; tried++) {
    if (placeAtRandom(Math.floor(random() * units))) made++
  }
  const stirredTask: ChangeoverTask = {
    ...task,
    movers: task.movers.map((mover, index) => ({
      ...mover,
      source: sources[index] ?? mover.source,
      target: spots[index] ?? mover.target,
    })),
    waitsFor: (mover, now) =>
      placesFor(sizes[mover] ?? [1, 1, 1])
        .filter((place) => enters(task, now, mover, place) >= 0)
        .slice(0, WAITS),
  }
  return { task: stirredTask, moves: made }
}
