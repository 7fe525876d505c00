/** A great load ends soon after the host wants an end, and says of every unit that it was left out. */
import { describe, expect, it } from 'vitest'
import { packLoad } from '../../../shared/packing/index.ts'
import type { NightState } from '../../../shared/packing/index.ts'
import { vanLoad } from '../../bench/packing/loads.ts'

const UNITS = 1200
const ASKED_BEFORE_THE_END = 40
const STATES = ['bed', 'in-use', 'outside'] as const

describe('a load of 1200 units', () => {
  const input = vanLoad(UNITS, 1)

  it('asks the host between one unit and the next, and ends without another unit once it is to end', () => {
    let asked = 0
    const outcome = packLoad(input, { seed: 1, iterations: 1000, shouldStop: () => ++asked > ASKED_BEFORE_THE_END })
    expect(outcome.cancelled).toBe(true)
    // Once answered, the question is not put again.
    expect(asked).toBe(ASKED_BEFORE_THE_END + 1)
    expect(outcome.drive.placements.length).toBeLessThanOrEqual(ASKED_BEFORE_THE_END)
    const named = [...outcome.drive.placements, ...outcome.drive.away, ...outcome.driveUnplaced].map(
      ({ unitId }) => unitId,
    )
    expect(named.toSorted()).toEqual(input.pieces.map(({ id }) => id).toSorted())
    expect(outcome.nights).toHaveLength(input.nights.length)
    expect(new Set(outcome.driveUnplaced.flatMap(({ why, cure }) => [...why, cure]))).toEqual(new Set([null]))
  })

  it('still says of each night where everything is: elsewhere, or left out', () => {
    const states: Readonly<Record<string, NightState>> = Object.fromEntries(
      input.pieces.slice(0, 3).map(({ id }, at) => [id, STATES[at] ?? 'stored']),
    )
    const nights = input.nights.map((night) => ({ ...night, states }))
    const outcome = packLoad({ ...input, nights }, { seed: 1, iterations: 1000, shouldStop: () => true })
    for (const { bed, unplaced } of outcome.nights) {
      expect(bed.placements).toEqual([])
      expect(bed.away).toEqual(input.pieces.slice(0, 3).map(({ id }, at) => ({ unitId: id, state: STATES[at] })))
      const named = [...bed.away, ...unplaced].map(({ unitId }) => unitId)
      expect(named.toSorted()).toEqual(input.pieces.map(({ id }) => id).toSorted())
    }
    expect(outcome.nights.length).toBeGreaterThan(0)
  })

  it('packs a load of usual size whole even where the host wants an end at once', () => {
    const outcome = packLoad(vanLoad(60, 1), { seed: 1, iterations: 100, shouldStop: () => true })
    expect(outcome.cancelled).toBe(true)
    expect(outcome.driveUnplaced).toEqual([])
  })
})
