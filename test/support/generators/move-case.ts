/** Small changes drawn at random, on a grid: for the search, and for the search of every state there is. */
import { bayModelOf } from '../../../shared/packing/bay-model.ts'
import type { ChangeoverTask, Mover, Spot } from '../../../shared/packing/changeover/moves.ts'
import { boxAt } from '../../../shared/packing/geometry.ts'
import type { PackBay } from '../../../shared/packing/index.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import type { GridPlace, MoveCase } from '../oracle/fewest-moves.ts'
import { CELL_MM, cellBay } from './small-change.ts'

/** A bay of `long` by `wide` cells, two high, open at its low x end or on top. */
const bayOf = (id: string, long: number, wide: number, face: 'x-' | 'z+'): PackBay =>
  cellBay(id, [long, wide, 2], [face], { originCells: id === 'a' ? [0, 0, 0] : [50, 0, 0] })

type Triple = readonly [number, number, number]

/** Units of one to two cells, standing on the floor or on one another, at random in two layouts, and up to two listed waiting places. */
export const drawnCase = (seed: number): MoveCase => {
  const random = randomFrom(seed)
  const pick = (count: number): number => Math.floor(random() * count)
  const bays = [
    bayOf('a', 2 + pick(3), 1 + pick(2), 'x-'),
    bayOf('b', 2 + pick(2), 1 + pick(2), random() < 0.5 ? 'z+' : 'x-'),
  ]
  for (let count = 2 + pick(7); ; count--) {
    const sizes = Array.from({ length: count }, (): Triple => [CELL_MM * (1 + pick(2)), CELL_MM, CELL_MM])
    const from = layoutOf(bays, sizes, pick)
    const to = layoutOf(bays, sizes, pick)
    if (from === null || to === null) continue
    const units = sizes.flatMap((size, index) => {
      const here = from[index]
      const there = to[index]
      return here === undefined || there === undefined ? [] : [{ size, from: here, to: there }]
    })
    return { bays, units, waitingSpots: pick(3), outside: random() < 0.3 }
  }
}

/** Places for all the units, each on the floor or wholly held; null where some found none. */
const layoutOf = (
  bays: readonly PackBay[],
  sizes: readonly Triple[],
  pick: (count: number) => number,
): readonly GridPlace[] | null => {
  const taken: GridPlace[] = []
  const filled = (bay: number, x: number, y: number, z: number): boolean =>
    taken.some(
      ({ bay: other, at, size }) => other === bay && at[0] <= x && x < at[0] + size[0] && at[1] === y && at[2] === z,
    )
  for (const size of sizes) {
    const cells = Array.from({ length: size[0] / CELL_MM }, (_, k) => k * CELL_MM)
    for (let tried = 0, placed = false; !placed; tried++) {
      if (tried > 60) return null
      const bay = pick(bays.length)
      const [long, wide] = bays[bay]?.sizeMm ?? [0, 0]
      const x = CELL_MM * pick((long - size[0]) / CELL_MM + 1)
      const y = CELL_MM * pick(wide / CELL_MM)
      const z = [0, CELL_MM].find((height) => cells.every((dx) => !filled(bay, x + dx, y, height)))
      if (z === undefined || (z > 0 && !cells.every((dx) => filled(bay, x + dx, y, 0)))) continue
      taken.push({ bay, at: [x, y, z], size })
      placed = true
    }
  }
  return taken
}

/** The same case as the search takes it: waiting places are corners of the free floor listed beforehand, or outside. */
export const drawnTask = (one: MoveCase): ChangeoverTask => {
  const spotOf = (place: MoveCase['units'][number]['from']): Spot => ({
    kind: 'bay',
    bay: place.bay,
    box: boxAt(place.at, place.size),
  })
  const movers = one.units.map(({ from, to }): Mover => ({
    source: spotOf(from),
    target: spotOf(to),
    late: false,
    massG: 100,
    bearsG: 1000,
  }))
  return {
    bays: one.bays.map(bayModelOf),
    movers,
    shareAir: one.bays.map(() => one.bays.map(() => false)),
    waitsFor: (mover) => [
      ...(one.outside ? [{ kind: 'away', name: 'waiting outside' } as const] : []),
      ...Array.from({ length: one.waitingSpots }, (_, k) => ({
        kind: 'bay' as const,
        bay: k % 2,
        box: boxAt([CELL_MM * (k >> 1), 0, 0], one.units[mover]?.size ?? [CELL_MM, CELL_MM, CELL_MM]),
      })),
    ],
    nodeLimit: 100_000,
    thorough: true,
    shouldStop: () => false,
    hostStops: () => false,
  }
}
