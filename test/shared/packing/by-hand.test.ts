/** What dragging asks, against the oracle's judgement of the same layout with the unit moved. */
import { describe, expect, it } from 'vitest'
import { handScene, packLoad, tryPose } from '../../../shared/packing/index.ts'
import type { Placement, Vec3 } from '../../../shared/packing/index.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { layoutFaults } from '../../support/oracle/layout.ts'
import { scenarioLoad } from '../../support/scenario-load.ts'

const ASKED = 400
const SEED = 20261125
const TURNS = [
  [0, 1, 2],
  [1, 0, 2],
  [0, 2, 1],
  [2, 0, 1],
  [1, 2, 0],
  [2, 1, 0],
] as const

const input = scenarioLoad('scenario-a')
const outcome = packLoad(input, { seed: 1, iterations: 60 })

describe.each([null, ...input.nights])('a unit tried by hand, %#', (night) => {
  const packing = outcome.nights.find(({ nightId }) => nightId === night?.id)
  const layout = night === null ? outcome.drive : packing?.bed
  if (layout === undefined) throw new Error('no layout')
  const unplaced = night === null ? outcome.driveUnplaced : (packing?.unplaced ?? [])
  const hand = handScene(input, layout, night?.id ?? null)
  const before = layoutFaults({ input, outcome, night, unplaced, layout })
  const faultsOf = (placement: Placement): readonly string[] => {
    const rest = layout.placements.filter(({ unitId }) => unitId !== placement.unitId)
    const tried = { ...layout, placements: [...rest, placement] }
    return layoutFaults({ input, outcome, night, unplaced, layout: tried }).filter((fault) => !before.includes(fault))
  }

  it('may stand where the oracle finds no fault, and nowhere else', () => {
    const random = randomFrom(SEED)
    const pick = (count: number): number => Math.floor(random() * count)
    let legal = 0
    let nearest = 0
    for (let asked = 0; asked < ASKED; asked++) {
      const unit = layout.placements[pick(layout.placements.length)]
      const bay = input.bays[pick(input.bays.length)]
      const stated = outcome.units.find(({ id }) => id === unit?.unitId)
      const edges = TURNS[pick(TURNS.length)]
      if (unit === undefined || bay === undefined || stated === undefined || edges === undefined) continue
      const sizeMm: Vec3 = [stated.sizeMm[edges[0]], stated.sizeMm[edges[1]], stated.sizeMm[edges[2]]]
      const corner = layout.placements[pick(layout.placements.length)]
      const atMm: Vec3 =
        random() < 0.5
          ? [pick(Math.max(1, bay.sizeMm[0] - sizeMm[0] + 1)), pick(Math.max(1, bay.sizeMm[1] - sizeMm[1] + 1)), 0]
          : (corner?.atMm ?? [0, 0, 0])
      const placement: Placement = { unitId: unit.unitId, bayId: bay.id, atMm, sizeMm, edges }
      const verdict = tryPose(hand, placement)
      const own = faultsOf(placement)
      const label = JSON.stringify({ seed: SEED, asked, placement, rule: verdict.rule, own })
      expect([label, verdict.legal]).toEqual([label, own.length === 0])
      if (verdict.legal) legal++
      if (verdict.legal || verdict.nearest === null) continue
      nearest++
      expect([label, faultsOf(verdict.nearest)]).toEqual([label, []])
    }
    expect(legal).toBeGreaterThan(0)
    expect(nearest).toBeGreaterThan(20)
  })

  it('is told off by name when it or its bay is unknown', () => {
    const tried = { unitId: 'no such thing', bayId: 'bay', atMm: [0, 0, 0], sizeMm: [1, 1, 1] } as const
    expect(tryPose(hand, tried)).toEqual({ legal: false, rule: 'does-not-fit', nearest: null })
    const [unit] = layout.placements
    const nowhere = { ...tried, unitId: unit?.unitId ?? '', bayId: 'no such bay' }
    expect(tryPose(hand, nowhere)).toEqual({ legal: false, rule: 'does-not-fit', nearest: null })
  })
})
