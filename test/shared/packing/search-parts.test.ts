/** The parts of the search: places handed out in order, layouts that share bays, first layouts, what may stay, and the count of rounds. */
import { describe, expect, it } from 'vitest'
import { boxAt } from '../../../shared/packing/geometry.ts'
import type {
  PackBin,
  PackBudget,
  PackingInput,
  PackNight,
  PackPiece,
  Placement,
  Vec3,
} from '../../../shared/packing/index.ts'
import { layoutOf, stateFrom } from '../../../shared/packing/layout.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import type { Scene } from '../../../shared/packing/scene.ts'
import { build, missingFrom, sortedBy } from '../../../shared/packing/search/build.ts'
import { insert } from '../../../shared/packing/search/insert.ts'
import { costOf } from '../../../shared/packing/search/objective.ts'
import { keepLegal, Run, solve } from '../../../shared/packing/search/solve.ts'
import { SpotList } from '../../../shared/packing/search/spot-list.ts'
import { branch, clashes, emptyState, ownBay, takeOut } from '../../../shared/packing/search/state.ts'
import { plainBay, plainBin, plainInput, plainPiece } from '../../support/generators/planted-load.ts'
import { smallLoad } from '../../support/generators/small-load.ts'

const never = (): boolean => false
const NIGHT: PackNight = { id: 'n', states: {}, lowTempC: {}, highTempC: {}, outsideStorage: false, foodBayIds: null }
const cube: Vec3 = [100, 100, 100]
const at = (unitId: string, bayId: string, atMm: Vec3, sizeMm: Vec3 = cube): Placement => ({
  unitId,
  bayId,
  atMm,
  sizeMm,
  edges: [0, 1, 2],
})
const dayOf = (input: PackingInput): Scene => sceneOf(packModelOf(input), null)
const idsAt = (scene: Scene, units: readonly number[]): readonly string[] =>
  units.map((unit) => scene.model.units[unit]?.id ?? '')

describe('a list of places', () => {
  it('hands them out cheapest first, the earlier of two equals first, each as it was put in', () => {
    const list = new SpotList()
    // More than the list holds at first, so that it grows twice; then fewer, so that nothing of the first filling is left.
    for (const count of [600, 3, 0, 40]) {
      const random = randomFrom(count)
      list.clear()
      const costs = Array.from({ length: count }, () => Math.floor(random() * 50))
      costs.forEach((cost, k) =>
        list.push(cost, { bay: k % 7, pose: k % 5, x: k, y: 2 * k, z: 3 * k }, [k + 1, k + 2, k + 3]),
      )
      list.heapify()
      const expected = costs.map((_, k) => k).toSorted((a, b) => (costs[a] ?? 0) - (costs[b] ?? 0) || a - b)
      const told = expected.map(() => list.pop())
      expect(told).toEqual(expected)
      expect(list.pop()).toBe(-1)
      for (const k of told) {
        expect(list.costAt(k)).toBe(costs[k])
        expect(list.spotAt(k)).toEqual({
          bay: k % 7,
          pose: k % 5,
          box: boxAt([k, 2 * k, 3 * k], [k + 1, k + 2, k + 3]),
        })
      }
    }
  })
})

describe('a layout while it is searched', () => {
  const bays = [plainBay('left', [0, 0, 0], [300, 300, 300]), plainBay('right', [0, 250, 0], [300, 300, 300])]
  const scene = dayOf(
    plainInput(
      bays,
      ['low', 'mid', 'top', 'far'].map((id) => plainPiece(id, cube)),
    ),
  )
  const tower = () =>
    stateFrom(scene, {
      placements: [
        at('low', 'left', [0, 0, 0]),
        at('mid', 'left', [0, 0, 100]),
        at('top', 'left', [50, 0, 200], [50, 100, 100]),
        at('far', 'right', [0, 200, 0]),
      ],
      away: [],
    })

  it('loses what stood on a thing that is taken out, and nothing else', () => {
    const whole = tower()
    const state = branch(whole)
    const owned = new Set<number>()
    const out = takeOut(scene, state, new Set([1]), owned)
    expect(idsAt(scene, out).toSorted()).toEqual(['mid', 'top'])
    expect([...state.where]).toEqual([0, -1, -1, 1])
    expect([...owned]).toEqual([0])
    expect(layoutOf(scene, state).placements.map(({ unitId }) => unitId)).toEqual(['low', 'far'])
    expect(state.bays[0]?.massG).toBe(1000)
    expect(state.bays[0]?.usedMm3).toBe(1_000_000)
    expect(state.bays[1]).toBe(whole.bays[1])
    expect(layoutOf(scene, whole).placements).toHaveLength(4)
  })

  it('gives nothing for what was not in', () => {
    const state = tower()
    expect(takeOut(scene, state, new Set(), new Set())).toEqual([])
    const empty = emptyState(scene)
    expect(takeOut(scene, empty, new Set([2]), new Set())).toEqual([2])
    expect([...empty.where]).toEqual([-1, -1, -1, -1])
  })

  it('changes a shared bay in a copy, and the copy only once', () => {
    const whole = tower()
    const state = branch(whole)
    const owned = new Set<number>()
    const copy = ownBay(state, 0, owned)
    expect(copy).not.toBe(whole.bays[0])
    expect(copy?.placed).toEqual(whole.bays[0]?.placed)
    expect(copy?.placed).not.toBe(whole.bays[0]?.placed)
    expect(ownBay(state, 0, owned)).toBe(copy)
    expect(ownBay(state, 9, owned)).toBeNull()
    state.where[0] = -1
    expect(whole.where[0]).toBe(0)
  })

  it('knows where two bays take up the same air', () => {
    // Both bays hold the air from 250 to 300 mm across; right begins at 250.
    const state = stateFrom(scene, { placements: [at('low', 'left', [0, 200, 0])], away: [] })
    const clash = (y: number, x = 0): boolean => clashes(scene, state, 1, boxAt([x, y, 0], cube))
    expect(clash(0)).toBe(true)
    expect(clash(49)).toBe(true)
    expect(clash(50)).toBe(false)
    expect(clash(0, 100)).toBe(false)
    expect(clashes(scene, state, 0, boxAt([0, 200, 0], cube))).toBe(false)
  })
})

const crate: PackBin = plainBin('crate', [100, 100, 100], [90, 90, 90])

describe('the order of putting in', () => {
  it('begins with what has a place of its own, from the floor up, then what has a bay of its own', () => {
    const lock = (atMm: Vec3 | null): Partial<PackPiece> => ({
      locks: [{ layout: 'drive', bayId: 'bay', atMm, sizeMm: null }],
    })
    const pieces = [
      plainPiece('loose', [100, 100, 100]),
      plainPiece('big', [200, 200, 200]),
      plainPiece('bay only', cube, lock(null)),
      plainPiece('upper', cube, lock([0, 0, 100])),
      plainPiece('lower', cube, lock([0, 0, 0])),
      plainPiece('topmost', cube, lock([0, 0, 200])),
      plainPiece('same as loose', [100, 100, 100]),
    ]
    const scene = dayOf(plainInput([plainBay('bay', [0, 0, 0], [900, 900, 900])], pieces))
    const bulk = (_: Scene, unit: number): number => scene.model.units[unit]?.volumeMm3 ?? 0
    const all = pieces.map((_, unit) => unit)
    const order = ['lower', 'upper', 'topmost', 'bay only', 'big', 'loose', 'same as loose']
    expect(idsAt(scene, sortedBy(scene, all, [bulk]))).toEqual(order)
    expect(idsAt(scene, sortedBy(scene, all.toReversed(), [bulk]))).toEqual(order)
    const later = (_: Scene, unit: number): number => unit
    expect(idsAt(scene, sortedBy(scene, [0, 1, 6], [() => 1, later]))).toEqual(['same as loose', 'big', 'loose'])
  })
})

describe('a first layout', () => {
  /** Keys of the orders tried, the larger first; what has one bay to go to comes first in each. */
  const ordersOf = (scene: Scene): readonly (readonly ((scene: Scene, unit: number) => number)[])[] => {
    const traits = (unit: number) => scene.traits[unit]
    const size = (unit: number): Vec3 => scene.model.units[unit]?.sizeMm ?? [0, 0, 0]
    const first = scene.layout === 'bed' ? 'night' : 'en-route'
    const urgent = (_: Scene, unit: number): number => (traits(unit)?.access.has(first) === true ? 1 : 0)
    const bulk = (_: Scene, unit: number): number => size(unit)[0] * size(unit)[1] * size(unit)[2]
    const choices = (unit: number): number =>
      (scene.admissions[unit] ?? []).filter(({ rule, tier }) => rule === null && tier < 2).length
    const few = (_: Scene, unit: number): number => -choices(unit)
    const long = (_: Scene, unit: number): number => Math.max(...size(unit))
    const lone = (_: Scene, unit: number): number => (choices(unit) <= 1 ? 1 : 0)
    return [[urgent, bulk], [few, bulk], [bulk], [urgent, few, long], [long, bulk]].map((keys) => [lone, ...keys])
  }
  const byOrder = (scene: Scene, keys: readonly ((scene: Scene, unit: number) => number)[]): number => {
    const state = emptyState(scene)
    for (const unit of sortedBy(scene, missingFrom(scene, state), keys))
      insert(scene, state, unit, new Set([0, 1, 2, 3, 4]), {
        random: randomFrom(1),
        noise01: 0,
        origin: null,
        list: new SpotList(),
      })
    return costOf(scene, state, null)
  }

  it('is the best of the orders tried', () => {
    const won = new Set<number>()
    for (let seed = 1; seed <= 30; seed++) {
      const input = smallLoad(randomFrom(seed))
      const scene = sceneOf(packModelOf(input), seed % 2 === 0 ? (input.nights[0] ?? null) : null)
      const costs = ordersOf(scene).map((keys) => byOrder(scene, keys))
      const start = emptyState(scene)
      const { state, cost } = build(scene, start, null, randomFrom(1), never)
      expect([seed, cost]).toEqual([seed, Math.min(...costs)])
      expect([seed, cost]).toEqual([seed, costOf(scene, state, null)])
      expect(start.bays.every((bay) => bay.placed.length === 0)).toBe(true)
      won.add(costs.indexOf(cost))
      const ended = build(scene, start, null, randomFrom(1), () => true)
      expect([seed, ended.cost]).toEqual([seed, costs[0]])
    }
    expect(won.size).toBeGreaterThan(2)
  })

  it('leaves what is in its start where it is', () => {
    const scene = dayOf(
      plainInput([plainBay('bay', [0, 0, 0], [500, 500, 500])], [plainPiece('a', cube), plainPiece('b', cube)]),
    )
    const start = stateFrom(scene, { placements: [at('a', 'bay', [130, 170, 0])], away: [] })
    const { state } = build(scene, start, null, randomFrom(1), never)
    expect(layoutOf(scene, state).placements[0]).toEqual(at('a', 'bay', [130, 170, 0]))
    expect(missingFrom(scene, state)).toEqual([])
    expect(missingFrom(scene, start)).toEqual([1])
  })
})

describe('what may stay of an earlier layout', () => {
  const bay = plainBay('bay', [0, 0, 0], [500, 500, 500])
  const strict = plainBay('strict', [600, 0, 0], [500, 500, 500], { unitLimitG: 500 })
  const shared = plainBay('shared', [450, 0, 0], [100, 500, 500])
  const fixed = { locks: [{ layout: 'drive', bayId: 'bay', atMm: [300, 300, 0], sizeMm: null }] } as const
  const tied = { locks: [{ layout: 'drive', bayId: 'bay', atMm: null, sizeMm: null }] } as const
  const pieces = [
    plainPiece('a', cube),
    plainPiece('b', cube),
    plainPiece('fixed', cube, fixed),
    plainPiece('tied', cube, tied),
    plainPiece('gone', cube),
    plainPiece('c', cube),
  ]
  const night: PackNight = { ...NIGHT, states: { gone: 'bed' } }
  const model = packModelOf(plainInput([bay, strict, shared], pieces, { nights: [night] }))
  const kept = (placements: readonly Placement[], on: PackNight | null = null): readonly string[] => {
    const scene = sceneOf(model, on)
    const state = keepLegal(scene, placements, never)
    const held = layoutOf(scene, state).placements
    expect(held.every((each) => placements.some((one) => JSON.stringify(one) === JSON.stringify(each)))).toBe(true)
    expect([...state.where].filter((where) => where >= 0)).toHaveLength(held.length)
    return held.map(({ unitId }) => unitId)
  }

  it('is what stands legally, whatever the order it is told in', () => {
    const stack = [at('a', 'bay', [0, 0, 100]), at('b', 'bay', [0, 0, 0]), at('tied', 'bay', [200, 0, 0])]
    expect(kept(stack)).toEqual(['a', 'b', 'tied'])
    expect(kept(stack.toReversed())).toEqual(['a', 'b', 'tied'])
  })

  it('is not what hangs, overlaps, sticks out, is too heavy, is unknown or away, or shares the air of another', () => {
    expect(kept([at('a', 'bay', [0, 0, 100])])).toEqual([])
    expect(kept([at('a', 'bay', [0, 0, 0]), at('b', 'bay', [50, 0, 0])])).toEqual(['a'])
    expect(kept([at('a', 'bay', [401, 0, 0])])).toEqual([])
    expect(kept([at('a', 'strict', [0, 0, 0])])).toEqual([])
    expect(kept([at('nobody', 'bay', [0, 0, 0]), at('a', 'nowhere', [0, 0, 0])])).toEqual([])
    expect(kept([at('gone', 'bay', [0, 0, 0])], night)).toEqual([])
    expect(kept([at('gone', 'bay', [0, 0, 0])])).toEqual(['gone'])
    expect(kept([at('a', 'bay', [400, 0, 0]), at('b', 'shared', [0, 0, 0])])).toEqual(['a'])
  })

  it('is not what the user has fixed to a place, which is put there anew', () => {
    expect(kept([at('fixed', 'bay', [0, 0, 0])])).toEqual([])
    expect(kept([at('tied', 'strict', [0, 0, 0])])).toEqual([])
  })
})

describe('a run', () => {
  it('stays ended once the host has ended it, and ends what runs aside', () => {
    let ended = false
    const run = new Run({ seed: 3, iterations: 50, shouldStop: () => ended })
    const aside = run.aside()
    expect([run.shouldStop(), run.cancelled, aside.shouldStop()]).toEqual([false, false, false])
    expect([aside.budget.seed, aside.budget.iterations, aside.spent]).toEqual([3, 50, 0])
    ended = true
    expect(aside.shouldStop()).toBe(true)
    ended = false
    expect([run.shouldStop(), run.cancelled]).toEqual([true, true])
    expect(new Run({ seed: 1, iterations: 1 }).shouldStop()).toBe(false)
  })

  const input = plainInput(
    [plainBay('bay', [0, 0, 0], [400, 400, 400])],
    [plainPiece('a', cube), plainPiece('b', cube)],
    {
      bins: [crate],
    },
  )
  const heard = (change: Partial<PackBudget>, rounds: number, before = 0) => {
    const told: (readonly [number, string])[] = []
    const run = new Run({
      seed: 1,
      iterations: 100,
      onProgress: (done01, note) => told.push([done01, note]),
      ...change,
    })
    run.spent = before
    const scene = dayOf(input)
    const solved = solve(scene, emptyState(scene), null, rounds, run, 'drive')
    return { told, spent: run.spent, missing: missingFrom(scene, solved.state), cost: solved.cost, scene, solved }
  }

  it('counts its rounds and tells every sixteen of them what share is done', () => {
    const first = heard({}, 40)
    expect(first.told).toEqual([
      [0.16, 'drive'],
      [0.32, 'drive'],
    ])
    expect(first.spent).toBe(40)
    expect(first.missing).toEqual([])
    expect(first.cost).toBe(costOf(first.scene, first.solved.state, null))
    const later = heard({}, 40, 80)
    expect(later.told.map(([done01]) => done01)).toEqual([0.96, 1])
    expect(later.spent).toBe(120)
    expect(heard({}, 0).told).toEqual([])
  })

  it('goes on past its rounds, uncounted, while something has no place, unless it has no rounds at all', () => {
    // The long one goes into the long bay only, where two cubes stand that fit the two other bays as well.
    const shut = { openings: [] } as const
    const bays = [
      plainBay('long', [0, 0, 0], [300, 100, 100], shut),
      plainBay('one', [1000, 0, 0], cube, shut),
      plainBay('two', [2000, 0, 0], cube, shut),
    ]
    const pieces = [plainPiece('ski', [300, 100, 100]), plainPiece('a', cube), plainPiece('b', cube)]
    const scene = dayOf(plainInput(bays, pieces))
    const placements = [at('a', 'long', [0, 0, 0]), at('b', 'long', [150, 0, 0])]
    const leftAfter = (seed: number, rounds: number): readonly number[] => {
      const run = new Run({ seed, iterations: 100 })
      const { state } = solve(scene, stateFrom(scene, { placements, away: [] }), null, rounds, run, 'drive')
      expect(run.spent).toBe(rounds)
      return missingFrom(scene, state)
    }
    for (let seed = 1; seed <= 20; seed++) {
      expect([seed, leftAfter(seed, 1)]).toEqual([seed, []])
      expect([seed, leftAfter(seed, 0)]).toEqual([seed, [0]])
    }
  })

  it('spends no round once it is ended', () => {
    expect(heard({ shouldStop: () => true }, 40).spent).toBe(0)
  })
})
