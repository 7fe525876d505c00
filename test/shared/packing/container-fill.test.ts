/** A container filled block by block: its free rectangles, the space filled next and the block chosen, against their definitions. */
import { describe, expect, it } from 'vitest'
import { bestBlock, bestBlocks, nextSpace } from '../../../shared/packing/container/choose.ts'
import type { Search } from '../../../shared/packing/container/choose.ts'
import { FillState, MOST_PLACED } from '../../../shared/packing/container/state.ts'
import { blockTable } from '../../../shared/packing/container/table.ts'
import type { BlockTable } from '../../../shared/packing/container/table.ts'
import type { BoxType, ContainerInput, Vec3 } from '../../../shared/packing/index.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { levelRectangles, longestSum, touching01 } from '../../support/oracle/fill.ts'
import type { Stood } from '../../support/oracle/fill.ts'
import { standing } from '../../support/oracle/blocks.ts'

const CASES = 36
const STEPS = 14
/** Faces this near each other, as a share of the container's edge, count as touching. */
const NEAR_01 = 0.04

/** In a container of 25 mm things up to exactly one millimetre apart touch, and no box is so thin. */
const caseOf = (seed: number): ContainerInput => {
  const random = randomFrom(seed)
  const between = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1))
  const large = seed % 2 === 0
  // In every third case all heights are alike, so that tops lie level beside each other.
  const flat = seed % 3 === 1 && !large
  const edge = (): number => (large ? between(4, 9) : between(1, 4))
  const boxes = Array.from({ length: between(2, 4) }, (): BoxType => ({
    sizeMm: [edge(), edge(), flat ? 2 : edge()],
    upright: [!flat && random() < 0.6, !flat && random() < 0.6, true],
    count: flat ? 6 : between(2, 4),
  }))
  return { sizeMm: large ? [25, 25, 25] : [8, 7, 6], boxes }
}

const tableOf = (input: ContainerInput): BlockTable =>
  blockTable(input, { most: 40, leastFill01: 0.75, shouldStop: () => false })

const searchOf = (input: ContainerInput, table: BlockTable): Search => {
  const [length, width, height] = input.sizeMm
  return {
    table,
    size: input.sizeMm,
    alive: new Int32Array(table.count),
    parentAlive: new Int32Array(table.count),
    near: { x: NEAR_01 * length, y: NEAR_01 * width, z: NEAR_01 * height },
    scratch: new FillState(table, length, width, height),
    corner: { x: 0, y: 0, mirrorX: false, mirrorY: false },
    around: new Int32Array(MOST_PLACED),
    room: { x: 0, y: 0, z: 0, height: 0, volume: 0, neighbours: 0 },
  }
}

type Space = { readonly at: number; readonly low: Vec3; readonly high: readonly [number, number] }

const spaceAt = (state: FillState, at: number): Space => ({
  at,
  low: [state.sx1[at] ?? -1, state.sy1[at] ?? -1, state.sz[at] ?? -1],
  high: [state.sx2[at] ?? -1, state.sy2[at] ?? -1],
})
const spacesIn = (state: FillState): readonly Space[] =>
  Array.from({ length: state.spaces }, (_, at) => spaceAt(state, at))

const sizeOf = (table: BlockTable, block: number): Vec3 => [
  table.lengths[block] ?? 0,
  table.widths[block] ?? 0,
  table.heights[block] ?? 0,
]

/** Blocks that the boxes left allow, counted anew. */
const affordable = (input: ContainerInput, table: BlockTable, used: readonly number[]): readonly number[] =>
  table.blocks.flatMap(({ uses }, block) =>
    input.boxes.every(({ count }, type) => {
      const at = uses.findIndex((each, place) => place % 2 === 0 && each === type)
      return (used[type] ?? 0) + (at < 0 ? 0 : (uses[at + 1] ?? 0)) <= count
    })
      ? [block]
      : [],
  )

/** One step of a random filling: what stands so far, and the state that should agree. */
type Step = {
  readonly label: string
  readonly input: ContainerInput
  readonly table: BlockTable
  readonly state: FillState
  readonly stood: readonly Stood[]
  readonly used: readonly number[]
  /** By axis, then length: the longest sum of edges that the length holds. */
  readonly longest: readonly (readonly number[])[]
}

const longestOf = (input: ContainerInput): readonly (readonly number[])[] =>
  ([0, 1, 2] as const).map((axis) => {
    const edges = input.boxes.flatMap((box) =>
      [...new Set(standing(box).map((way) => way[axis]))].map((size) => ({ size, count: box.count })),
    )
    return Array.from({ length: input.sizeMm[axis] + 1 }, (_, length) => longestSum(length, edges))
  })

/** Fills a container at random corners of random spaces, and hands each step on. */
const filling = (seed: number, look: (step: Step) => void): number => {
  const random = randomFrom(seed)
  const pick = (count: number): number => Math.floor(random() * count)
  const input = caseOf(seed)
  const table = tableOf(input)
  const state = new FillState(table, ...input.sizeMm)
  const longest = longestOf(input)
  const stood: Stood[] = []
  const used = input.boxes.map(() => 0)
  for (let step = 0; step < STEPS; step++) {
    look({ label: `seed ${seed}, step ${step}`, input, table, state, stood, used, longest })
    const space = spaceAt(state, pick(state.spaces))
    const room: Vec3 = [space.high[0] - space.low[0], space.high[1] - space.low[1], input.sizeMm[2] - space.low[2]]
    const fits = affordable(input, table, used).filter((block) =>
      sizeOf(table, block).every((edge, axis) => edge <= (room[axis] ?? 0)),
    )
    const block = fits[pick(fits.length)]
    if (block === undefined) return step
    const [length, width, height] = sizeOf(table, block)
    const [mirrorX, mirrorY] = [random() < 0.5, random() < 0.5]
    const x = mirrorX ? space.high[0] - length : space.low[0]
    const y = mirrorY ? space.high[1] - width : space.low[1]
    const z = space.low[2]
    state.place(block, x, y, z, mirrorX, mirrorY)
    const { topX = 0, topY = 0, uses = [] } = table.blocks[block] ?? {}
    const [topLowX, topLowY] = [mirrorX ? x + length - topX : x, mirrorY ? y + width - topY : y]
    stood.push({
      low: [x, y, z],
      high: [x + length, y + width, z + height],
      topLow: [topLowX, topLowY],
      topHigh: [topLowX + topX, topLowY + topY],
    })
    uses.forEach((type, at) => {
      if (at % 2 === 0) used[type] = (used[type] ?? 0) + (uses[at + 1] ?? 0)
    })
  }
  return STEPS
}

describe('a container partly filled', () => {
  it(`keeps every free rectangle that cannot grow, in ${CASES} fillings`, () => {
    let steps = 0
    let raised = 0
    for (let seed = 1; seed <= CASES; seed += 2)
      steps += filling(seed, ({ label, input, table, state, stood }) => {
        const told = spacesIn(state).map(({ low, high }) => [...low.slice(0, 2), ...high, low[2]].join(' '))
        const expected = levelRectangles(input.sizeMm, stood, table.lowestBox).map(({ x1, y1, x2, y2, z }) => {
          if (z > 0) raised++
          return [x1, y1, x2, y2, z].join(' ')
        })
        expect([label, told.toSorted()]).toEqual([label, expected.toSorted()])
      })
    expect(steps).toBeGreaterThan(CASES)
    expect(raised).toBeGreaterThan(CASES)
  })

  it('counts the boxes left, the volume filled and which blocks they still make', () => {
    for (let seed = 1; seed <= CASES; seed += 3)
      filling(seed, ({ label, input, table, state, stood, used }) => {
        expect([label, [...state.left]]).toEqual([
          label,
          input.boxes.map(({ count }, type) => count - (used[type] ?? 0)),
        ])
        const volume = input.boxes.reduce((sum, { sizeMm: [a, b, c] }, type) => sum + (used[type] ?? 0) * a * b * c, 0)
        expect([label, state.volume]).toEqual([label, volume])
        const still = table.blocks.flatMap((_, block) => (state.affords(block) ? [block] : []))
        expect([label, still]).toEqual([label, affordable(input, table, used)])
        expect([label, state.placed]).toEqual([label, stood.length])
        for (const [at, { low, high }] of stood.entries()) {
          const held = [state.px1[at], state.py1[at], state.pz1[at], state.px2[at], state.py2[at], state.pz2[at]]
          expect([label, held]).toEqual([label, [...low, ...high]])
        }
      })
  })

  it('is copied whole, and the copy goes its own way', () => {
    filling(5, ({ input, table, state }) => {
      const copy = new FillState(table, ...input.sizeMm)
      copy.copyFrom(state)
      const told = (of: FillState): unknown => [
        spacesIn(of),
        [...of.left],
        of.volume,
        Array.from({ length: of.placed }, (_, at) => [
          of.placedBlock[at],
          of.px1[at],
          of.py1[at],
          of.pz1[at],
          of.px2[at],
          of.py2[at],
          of.pz2[at],
        ]),
      ]
      const before = told(state)
      expect(told(copy)).toEqual(before)
      if (copy.spaces > 0) copy.dropSpace(0)
      copy.left.fill(0)
      expect(told(state)).toEqual(before)
    })
  })
})

/** Distance of a space's nearest bottom corner from the nearest bottom corner of the container, along the edges. */
const cornerDistance = ([length, width]: Vec3, { low, high }: Space): number =>
  Math.min(low[0], length - high[0]) + Math.min(low[1], width - high[1]) + low[2]
const areaOf = ({ low, high }: Space): number => (high[0] - low[0]) * (high[1] - low[1])

describe('the space filled next', () => {
  it('is the one nearest a corner of the container, the larger of two, and is filled from that corner', () => {
    for (let seed = 1; seed <= CASES; seed++)
      filling(seed, ({ label, input, table, state }) => {
        const search = searchOf(input, table)
        const at = nextSpace(search, state)
        const spaces = spacesIn(state)
        if (spaces.length === 0) return expect([label, at]).toEqual([label, -1])
        const chosen = spaceAt(state, at)
        const nearest = Math.min(...spaces.map((space) => cornerDistance(input.sizeMm, space)))
        expect([label, cornerDistance(input.sizeMm, chosen)]).toEqual([label, nearest])
        const equals = spaces.filter((space) => cornerDistance(input.sizeMm, space) === nearest)
        expect([label, areaOf(chosen)]).toEqual([label, Math.max(...equals.map(areaOf))])
        const [length, width] = input.sizeMm
        const mirrorX = length - chosen.high[0] < chosen.low[0]
        const mirrorY = width - chosen.high[1] < chosen.low[1]
        const x = mirrorX ? chosen.high[0] : chosen.low[0]
        const y = mirrorY ? chosen.high[1] : chosen.low[1]
        expect([label, search.corner]).toEqual([label, { x, y, mirrorX, mirrorY }])
        return undefined
      })
  })
})

/** Worth of a block in a space: volume, times the share of the room that stays of use, times the share of its surface that touches, squared. */
const worthOf = ({ input, table, stood, longest }: Step, search: Search, space: Space, block: number): number => {
  const size = sizeOf(table, block)
  const room: Vec3 = [space.high[0] - space.low[0], space.high[1] - space.low[1], input.sizeMm[2] - space.low[2]]
  if (size.some((edge, axis) => edge > (room[axis] ?? 0))) return 0
  const useful = ([0, 1, 2] as const).reduce<number>((product, axis) => {
    const beside = longest[axis]?.[room[axis] - size[axis]] ?? 0
    return (product * (size[axis] + beside)) / room[axis]
  }, 1)
  const { x, y, mirrorX, mirrorY } = search.corner
  const low: Vec3 = [mirrorX ? x - size[0] : x, mirrorY ? y - size[1] : y, space.low[2]]
  const near: Vec3 = [search.near.x, search.near.y, search.near.z]
  const touch = touching01(input.sizeMm, near, stood, low, size)
  return (table.volumes[block] ?? 0) * useful * touch * touch
}

describe('the block chosen for a space', () => {
  it('is worth most of those that fit, and several are in order of worth', () => {
    let choices = 0
    for (let seed = 1; seed <= CASES; seed++)
      filling(seed, (step) => {
        const { label, input, table, state, used } = step
        const search = searchOf(input, table)
        const at = nextSpace(search, state)
        if (at < 0) return
        const space = spaceAt(state, at)
        const still = affordable(input, table, used)
        search.alive.set(still)
        search.parentAlive.set(still)
        const worths = still.map((block) => worthOf(step, search, space, block)).filter((worth) => worth > 0)
        const best = worths.toSorted((a, b) => b - a)
        const one = bestBlock(search, state, at, still.length)
        if (best.length === 0) expect([label, one]).toEqual([label, -1])
        else expect(worthOf(step, search, space, one)).toBeCloseTo(best[0] ?? 0, 6)
        for (const most of [1, 3, 100]) {
          const several = bestBlocks(search, state, at, { count: still.length, most })
          const told = several.map((block) => worthOf(step, search, space, block))
          expect([label, new Set(several).size]).toEqual([label, Math.min(most, best.length)])
          told.forEach((worth, place) => expect(worth).toBeCloseTo(best[place] ?? 0, 6))
        }
        if (best.length > 3) choices++
      })
    expect(choices).toBeGreaterThan(CASES)
  })
})
