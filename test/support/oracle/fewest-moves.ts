/** The fewest moves between two small layouts, by looking at every state there is, layer by layer, on a grid of cells kept as bits. */
import type { PackBay } from '../../../shared/packing/index.ts'

type Triple = readonly [number, number, number]

export type GridPlace = { readonly bay: number; readonly at: Triple; readonly size: Triple }

export type MoveCase = {
  readonly bays: readonly PackBay[]
  readonly units: readonly { readonly size: Triple; readonly from: GridPlace; readonly to: GridPlace }[]
  /** Listed places where a unit may wait: alternately in each bay, one cell further in each time. */
  readonly waitingSpots: number
  readonly outside: boolean
}

const CELL_MM = 100

/** What a place takes up, what must be empty for a unit to pass, and what must be filled beneath it. */
type Masks = { readonly body: number; readonly clear: number; readonly under: number }

const OUTSIDE: Masks = { body: 0, clear: 0, under: 0 }

/** Fewest moves from all `from` to all `to`; null where no list of moves gets there. */
export function fewestMoves(one: MoveCase): number | null {
  const places = one.units.map((unit) => placesOf(one, unit))
  const start = one.units.map(() => 0)
  const goal = one.units.map((_, unit) => homeOf(places, unit))
  const radix = Math.max(...places.map((list) => list.length))
  const codeOf = (state: readonly number[]): number => state.reduce((code, at) => code * radix + at, 0)
  const seen = new Set([codeOf(start)])
  let layer: (readonly number[])[] = [start]
  for (let moves = 0; layer.length > 0; moves++) {
    const next: (readonly number[])[] = []
    for (const state of layer) {
      if (state.every((at, unit) => at === goal[unit])) return moves
      for (const after of movesFrom(state, places)) {
        const code = codeOf(after)
        if (seen.has(code)) continue
        seen.add(code)
        next.push(after)
      }
    }
    layer = next
  }
  return null
}

/** Where a unit stays its first place is its last. */
const homeOf = (places: readonly (readonly Masks[])[], unit: number): number =>
  places[unit]?.[0]?.body === places[unit]?.[1]?.body ? 0 : 1

function movesFrom(state: readonly number[], places: readonly (readonly Masks[])[]): (readonly number[])[] {
  const found: (readonly number[])[] = []
  state.forEach((at, unit) => {
    const own = places[unit] ?? []
    const here = own[at]
    if (here === undefined) return
    let others = 0
    state.forEach((spot, other) => {
      if (other !== unit) others |= places[other]?.[spot]?.body ?? 0
    })
    if ((others & here.clear) !== 0) return
    own.forEach((there, index) => {
      if (index === at || (index === 1 && homeOf(places, unit) === 0)) return
      if ((others & (there.body | there.clear)) !== 0 || (others & there.under) !== there.under) return
      found.push(state.map((spot, other) => (other === unit ? index : spot)))
    })
  })
  return found
}

function placesOf(one: MoveCase, unit: MoveCase['units'][number]): readonly Masks[] {
  const waits = Array.from({ length: one.waitingSpots }, (_, k): GridPlace => ({
    bay: k % 2,
    at: [CELL_MM * (k >> 1), 0, 0],
    size: unit.size,
  }))
  const inside = waits.filter(({ bay, at, size }) => {
    const [long = 0, wide = 0] = one.bays[bay]?.sizeMm ?? []
    return at[0] + size[0] <= long && at[1] + size[1] <= wide
  })
  return [...[unit.from, unit.to, ...inside].map((place) => masksOf(one, place)), ...(one.outside ? [OUTSIDE] : [])]
}

function masksOf(one: MoveCase, place: GridPlace): Masks {
  const bay = one.bays[place.bay]
  if (bay === undefined) return OUTSIDE
  const onTop = bay.openings[0]?.face === 'z+'
  let body = 0
  let clear = 0
  let under = 0
  for (let x = place.at[0]; x < place.at[0] + place.size[0]; x += CELL_MM) {
    const y = place.at[1]
    const z = place.at[2]
    body |= bit(one, place.bay, x, y, z)
    if (z === 0) clear |= bit(one, place.bay, x, y, CELL_MM)
    else under |= bit(one, place.bay, x, y, 0)
    if (!onTop) for (let before = 0; before < place.at[0]; before += CELL_MM) clear |= bit(one, place.bay, before, y, z)
  }
  return { body, clear, under }
}

/** Each cell of both bays has a bit of its own. */
function bit(one: MoveCase, bay: number, x: number, y: number, z: number): number {
  const [long = 0, wide = 0] = one.bays[0]?.sizeMm ?? []
  const first = bay === 0 ? 0 : (2 * long * wide) / CELL_MM ** 2
  const [, across = 0] = one.bays[bay]?.sizeMm ?? []
  return 1 << (first + ((x / CELL_MM) * (across / CELL_MM) + y / CELL_MM) * 2 + z / CELL_MM)
}
