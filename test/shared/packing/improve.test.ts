/** Bettering a layout: never worse, as many rounds as asked, and out of the plain troubles that one thing in a wrong place makes. */
import { describe, expect, it } from 'vitest'
import type { PackBay, PackNight, PackPiece, Placement, Vec3 } from '../../../shared/packing/index.ts'
import { layoutOf, stateFrom } from '../../../shared/packing/layout.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import type { Scene } from '../../../shared/packing/scene.ts'
import { build, missingFrom } from '../../../shared/packing/search/build.ts'
import { improve } from '../../../shared/packing/search/improve.ts'
import { bayScore, costOf } from '../../../shared/packing/search/objective.ts'
import type { SceneState } from '../../../shared/packing/search/state.ts'
import { emptyState } from '../../../shared/packing/search/state.ts'
import { plainBay, plainInput, plainPiece, standing } from '../../support/generators/planted-load.ts'
import { scattered } from '../../support/generators/scattered.ts'
import { smallLoad } from '../../support/generators/small-load.ts'

const never = (): boolean => false
const NIGHT: PackNight = { id: 'n', states: {}, lowTempC: {}, highTempC: {}, outsideStorage: false, foodBayIds: null }
const SEEDS = Array.from({ length: 24 }, (_, at) => at + 1)

const bettered = (scene: Scene, state: SceneState, seed: number, rounds: number, shouldStop = never) => {
  const told: number[] = []
  const random = randomFrom(seed)
  const start = { state, cost: costOf(scene, state, null) }
  const last = improve(start, {
    scene,
    origin: null,
    random,
    rounds,
    shouldStop,
    onRound: (done) => told.push(done),
  })
  return { start, last, told }
}

describe('a bettered layout', () => {
  it('costs what it says and no more than the one it began with, which stays as it was', () => {
    let better = 0
    for (const seed of SEEDS) {
      const input = smallLoad(randomFrom(seed))
      const scene = sceneOf(packModelOf(input), seed % 2 === 0 ? (input.nights[0] ?? null) : null)
      const begun = scattered(scene, randomFrom(seed))
      const before = layoutOf(scene, begun)
      const { start, last, told } = bettered(scene, begun, seed, 8)
      expect([seed, last.cost]).toEqual([seed, costOf(scene, last.state, null)])
      expect(last.cost).toBeLessThanOrEqual(start.cost)
      expect([seed, layoutOf(scene, begun)]).toEqual([seed, before])
      expect(last.spent).toBe(8)
      expect(told).toEqual(Array.from({ length: 8 }, (_, at) => at + 1))
      if (last.cost < start.cost) better++
    }
    expect(better).toBeGreaterThan(SEEDS.length * 0.9)
  })

  it('is reached in the rounds until the host wants an end', () => {
    const scene = sceneOf(packModelOf(smallLoad(randomFrom(5))), null)
    const { state } = build(scene, emptyState(scene), null, randomFrom(1), never)
    let asked = 0
    const { last } = bettered(scene, state, 1, 50, () => asked++ >= 7)
    expect(last.spent).toBe(7)
    expect(bettered(scene, state, 1, 0).last.spent).toBe(0)
  })

  it('is the same again for the same seed', () => {
    const scene = sceneOf(packModelOf(smallLoad(randomFrom(9))), null)
    const once = layoutOf(scene, bettered(scene, scattered(scene, randomFrom(2)), 4, 20).last.state)
    expect(layoutOf(scene, bettered(scene, scattered(scene, randomFrom(2)), 4, 20).last.state)).toEqual(once)
  })
})

type Trouble = {
  readonly bays: readonly PackBay[]
  readonly pieces: readonly PackPiece[]
  readonly placements: readonly Placement[]
  readonly night?: boolean
}

/** The layout after some rounds from each of many seeds. */
const after = (trouble: Trouble, rounds: number) => {
  const night = trouble.night === true ? NIGHT : null
  const scene = sceneOf(
    packModelOf(plainInput(trouble.bays, trouble.pieces, { nights: night === null ? [] : [night] })),
    night,
  )
  return SEEDS.map((seed) => {
    const { last } = bettered(scene, stateFrom(scene, { placements: trouble.placements, away: [] }), seed, rounds)
    const bayOf = new Map(layoutOf(scene, last.state).placements.map(({ unitId, bayId }) => [unitId, bayId]))
    const hard = last.state.bays.reduce((sum, bay) => sum + bayScore(scene, bay).hard, 0)
    const reach = last.state.bays.reduce((sum, bay) => sum + bayScore(scene, bay).reach, 0)
    return { seed, bayOf, hard, reach, missing: missingFrom(scene, last.state) }
  })
}

const cube: Vec3 = [200, 200, 200]
const shut = { openings: [] } as const

describe('bettering', () => {
  it('makes room for what was left out by moving what can go elsewhere', () => {
    // The long one goes into the long bay only, where two cubes stand that fit two bays of their own as well.
    const bays = [
      plainBay('long', [0, 0, 0], [600, 200, 200], shut),
      plainBay('one', [1000, 0, 0], cube, shut),
      plainBay('two', [2000, 0, 0], cube, shut),
    ]
    const pieces = [plainPiece('ski', [600, 200, 200]), plainPiece('a', cube), plainPiece('b', cube)]
    const placements = [standing('a', 'long', [0, 0, 0], cube), standing('b', 'long', [300, 0, 0], cube)]
    for (const { seed, missing } of after({ bays, pieces, placements }, 12)) expect([seed, missing]).toEqual([seed, []])
  })

  it('draws gaps together for what was left out, and brings back all that it moved', () => {
    const cubes = Array.from({ length: 8 }, (_, k) => plainPiece(`cube-${k}`, cube))
    const bays = [plainBay('bay', [0, 0, 0], [1000, 400, 200], shut)]
    // Eight cubes stand 50 mm apart in a bay that holds ten: the ninth needs the gaps drawn together.
    const xs = [0, 250, 500, 750]
    const placements = cubes.map(({ id }, k) => standing(id, 'bay', [xs[k % 4] ?? 0, k < 4 ? 0 : 200, 0], cube))
    const told = after({ bays, pieces: [...cubes, plainPiece('late', cube)], placements }, 12)
    for (const { seed, missing } of told) expect([seed, missing]).toEqual([seed, []])
  })

  it('brings what is wanted in the night to the bed in exchange for what is not', () => {
    const bays = [
      plainBay('near', [0, 0, 0], cube, { ...shut, reachFromBed: true }),
      ...['far', 'left', 'right', 'under', 'over', 'behind'].map((id, k) =>
        plainBay(id, [1000 * (k + 1), 0, 0], cube, { ...shut, reachFromBed: false }),
      ),
    ]
    const pieces = [plainPiece('lamp', cube, { access: ['night'] }), plainPiece('chain', cube)]
    const placements = [standing('lamp', 'far', [0, 0, 0], cube), standing('chain', 'near', [0, 0, 0], cube)]
    for (const { seed, bayOf, hard } of after({ bays, pieces, placements, night: true }, 12))
      expect([seed, bayOf.get('lamp'), hard]).toEqual([seed, 'near', 0])
  })

  it('empties a bay of last resort as soon as there is room elsewhere', () => {
    const bays = [
      plainBay('good', [0, 0, 0], [200, 400, 200], shut),
      plainBay('worst', [1000, 0, 0], [200, 200, 200], { ...shut, lastResort: true }),
    ]
    const pieces = [plainPiece('a', cube), plainPiece('b', cube)]
    // One cube stands in the middle of the good bay, so that none goes beside it until it is moved.
    const placements = [standing('a', 'good', [0, 100, 0], cube), standing('b', 'worst', [0, 0, 0], cube)]
    for (const { seed, bayOf, hard } of after({ bays, pieces, placements }, 12))
      expect([seed, bayOf.get('b'), hard]).toEqual([seed, 'good', 0])
  })

  it('brings what is wanted often before what is wanted seldom', () => {
    const hatch = {
      id: 'hatch',
      face: 'x-',
      fromMm: [0, 0],
      toMm: [200, 200],
      door: 'back',
      opensFromInside: false,
    } as const
    const bays = [plainBay('tunnel', [0, 0, 0], [600, 200, 200], { openings: [hatch] })]
    const pieces = [
      plainPiece('bread', cube, { uses: { drive: 5, bed: 0 } }),
      plainPiece('chain', cube),
      plainPiece('jack', cube),
    ]
    const placements = [
      standing('chain', 'tunnel', [0, 0, 0], cube),
      standing('jack', 'tunnel', [200, 0, 0], cube),
      standing('bread', 'tunnel', [400, 0, 0], cube),
    ]
    // In front it costs nothing; the other two bar each other: 0.02 (1 + 0.04) + 0.02 (2 + 0.08) = 0.0624.
    for (const { seed, reach } of after({ bays, pieces, placements }, 24))
      expect([seed, reach]).toEqual([seed, expect.closeTo(0.0624, 6)])
  })
})
