/** The cost of a layout against the same sum made from the load and the placements alone, over random small loads and layouts. */
import { describe, expect, it } from 'vitest'
import { bayModelOf } from '../../../shared/packing/bay-model.ts'
import { boxAt } from '../../../shared/packing/geometry.ts'
import type { Box } from '../../../shared/packing/geometry.ts'
import type { PackBay, PackingInput, PackNight, Placement, Vec3 } from '../../../shared/packing/index.ts'
import { layoutOf } from '../../../shared/packing/layout.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { packModelOf, sceneOf } from '../../../shared/packing/scene.ts'
import type { Scene } from '../../../shared/packing/scene.ts'
import { build } from '../../../shared/packing/search/build.ts'
import { bayScore, costOf, sameSpot, tangledUnits } from '../../../shared/packing/search/objective.ts'
import type { Origin } from '../../../shared/packing/search/objective.ts'
import { emptyState } from '../../../shared/packing/search/state.ts'
import type { SceneState } from '../../../shared/packing/search/state.ts'
import { scattered } from '../../support/generators/scattered.ts'
import { between, smallLoad } from '../../support/generators/small-load.ts'
import { intersect, solidInVehicle } from '../../support/oracle/boxes.ts'
import type { Solid } from '../../support/oracle/boxes.ts'
import { layoutCost } from '../../support/oracle/cost.ts'
import type { CostCase } from '../../support/oracle/cost.ts'
import type { Part } from '../../support/oracle/reach.ts'
import { scenarioLoad } from '../../support/scenario-load.ts'

const CASES = 80

type Random = () => number

const solidOfBox = (box: Box): Solid => ({ lo: [box.x1, box.y1, box.z1], hi: [box.x2, box.y2, box.z2] })
const partsOf = (bay: PackBay): readonly Part[] =>
  bayModelOf(bay, 0).solids.map(({ box, face }) => ({ solid: solidOfBox(box), face }))

/** Where units are in the other layout: some where they are in this one, some elsewhere, some anywhere. */
const originsOf = (random: Random, scene: Scene, placements: readonly Placement[]): Origin =>
  scene.model.units.map(({ id }) => {
    const here = placements.find(({ unitId }) => unitId === id)
    const kind = random()
    if (kind < 0.15) return 'free'
    if (kind < 0.25 || here === undefined) return null
    if (kind < 0.7) return here
    const [x, y, z] = here.atMm
    return kind < 0.85 ? { ...here, atMm: [x, y + 10, z] } : { ...here, bayId: 'elsewhere' }
  })

type Drawn = {
  readonly scene: Scene
  readonly state: SceneState
  readonly origin: Origin | null
  readonly one: CostCase
}

const drawn = (input: PackingInput, night: PackNight | null, random: Random): Drawn => {
  const plain = sceneOf(packModelOf(input), night)
  const ids = plain.model.units.map(({ id }) => id)
  const avoid = random() < 0.5
  const boxes = ids.map((): readonly Box[] =>
    avoid && random() < 0.4 ? [boxAt([between(random, 0, 900), between(random, 0, 200), 0], [300, 300, 500])] : [],
  )
  const bars = ids.map(() => (random() < 0.3 ? [between(random, 0, ids.length - 1)] : []))
  const barred = random() < 0.5
  const scene: Scene = { ...plain, tangles: avoid ? boxes : [], barredByDay: barred ? bars : [] }
  const state = scattered(scene, random)
  const { placements } = layoutOf(scene, state)
  const origin = random() < 0.7 ? originsOf(random, scene, placements) : null
  const one: CostCase = {
    input,
    night,
    placements,
    origin: origin === null ? null : new Map(ids.flatMap((id, at) => (origin[at] ? [[id, origin[at]]] : []))),
    tangles: new Map(avoid ? ids.map((id, at) => [id, (boxes[at] ?? []).map(solidOfBox)]) : []),
    barredByDay: new Map(
      barred ? ids.map((id, at) => [id, (bars[at] ?? []).flatMap((each) => ids[each] ?? [])] as const) : [],
    ),
    partsOf,
  }
  return { scene, state, origin, one }
}

describe('the cost of a layout', () => {
  it(`is the sum of all that its rules charge, over ${CASES} loads by day and by night`, () => {
    let hard = 0
    let placed = 0
    for (let seed = 1; seed <= CASES; seed++) {
      const random = randomFrom(seed)
      const input = smallLoad(random)
      for (const night of [null, ...input.nights.slice(0, 1)]) {
        const { scene, state, origin, one } = drawn(input, night, random)
        const cost = costOf(scene, state, origin)
        const expected = layoutCost(one)
        expect([seed, night?.id, Math.abs(cost - expected) < 1e-6 * Math.max(1, expected)]).toEqual([
          seed,
          night?.id,
          true,
        ])
        expect(cost).toBeCloseTo(expected, 5)
        placed += one.placements.length
        if (state.bays.some((bay) => bay.placed.length > 0 && bayScore(scene, bay).hard > 0)) hard++
      }
    }
    expect(hard).toBeGreaterThan(CASES / 4)
    expect(placed).toBeGreaterThan(CASES * 5)
  })

  it('tells for each thing what stands before it, and its share of what is hard', () => {
    for (let seed = 1; seed <= CASES; seed += 4) {
      const random = randomFrom(seed)
      const input = smallLoad(random)
      const { scene, state } = drawn(input, input.nights[0] ?? null, random)
      for (const bay of state.bays) {
        const score = bayScore(scene, bay)
        expect(score.faults.reduce((sum, fault) => sum + fault, 0)).toBeCloseTo(score.hard, 9)
        expect(score.counts).toEqual(score.barredBy.map((units) => units.length))
        expect(score.counts).toHaveLength(bay.placed.length)
      }
    }
  })

  it('names the units that stand where they would be tangled, and no others', () => {
    let tangled = 0
    for (let seed = 1; seed <= CASES; seed += 4) {
      const random = randomFrom(seed)
      const { scene, state, one } = drawn(smallLoad(random), null, random)
      const named = tangledUnits(scene, state).map((unit) => scene.model.units[unit]?.id ?? '')
      const expected = one.placements.filter((placement) => {
        const bay = one.input.bays.find(({ id }) => id === placement.bayId)
        if (bay === undefined) return false
        const here = solidInVehicle(placement, bay)
        return (one.tangles.get(placement.unitId) ?? []).some((solid) => intersect(solid, here))
      })
      expect([seed, named.toSorted()]).toEqual([seed, expected.map(({ unitId }) => unitId).toSorted()])
      tangled += named.length
    }
    expect(tangled).toBeGreaterThan(0)
  })
})

describe.each(['scenario-a', 'scenario-b'] as const)('the cost of a layout of %s', (name) => {
  it('is the same sum, by day and on a night after that day', () => {
    const input = scenarioLoad(name)
    const model = packModelOf(input)
    const built = (night: PackNight | null, origin: Origin | null) => {
      const scene = sceneOf(model, night)
      const { state, cost } = build(scene, emptyState(scene), origin, randomFrom(1), () => true)
      return { cost, placements: layoutOf(scene, state).placements }
    }
    const none = { tangles: new Map(), barredByDay: new Map(), partsOf }
    const day = built(null, null)
    expect(day.cost).toBeCloseTo(
      layoutCost({ ...none, input, night: null, placements: day.placements, origin: null }),
      4,
    )
    const [night] = input.nights
    if (night === undefined) throw new Error('no night')
    const at = new Map(day.placements.map((placement) => [placement.unitId, placement]))
    const bed = built(
      night,
      model.units.map(({ id }) => at.get(id) ?? null),
    )
    expect(bed.cost).toBeCloseTo(layoutCost({ ...none, input, night, placements: bed.placements, origin: at }), 4)
  })
})

describe('two places', () => {
  const spot: Placement = { unitId: 'u', bayId: 'bay', atMm: [1, 2, 3], sizeMm: [4, 5, 6], edges: [0, 1, 2] }
  const item = { ...boxAt([1, 2, 3], [4, 5, 6]), unit: 0, edges: [0, 1, 2] as const, supporters: [] }

  it('are the same only where bay, corner and size agree', () => {
    expect(sameSpot('bay', item, spot)).toBe(true)
    expect(sameSpot('bay', item, null)).toBe(false)
    expect(sameSpot('other', item, spot)).toBe(false)
    for (const axis of [0, 1, 2]) {
      const change = (values: Vec3): Vec3 => [
        values[0] + (axis === 0 ? 1 : 0),
        values[1] + (axis === 1 ? 1 : 0),
        values[2] + (axis === 2 ? 1 : 0),
      ]
      expect(sameSpot('bay', item, { ...spot, atMm: change(spot.atMm) })).toBe(false)
      expect(sameSpot('bay', item, { ...spot, sizeMm: change(spot.sizeMm) })).toBe(false)
    }
  })
})
