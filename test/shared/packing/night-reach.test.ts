/** Things wanted in the night, in loads cut from a layout where each of them lies open to the bed. */
import { describe, expect, it } from 'vitest'
import { packLoad } from '../../../shared/packing/index.ts'
import type { PackingInput, PackPiece, Vec3 } from '../../../shared/packing/index.ts'
import { randomFrom } from '../../../shared/packing/random.ts'
import { isDeep } from '../../support/generators/runs.ts'
import { plainBay, plainInput, plainPiece } from '../../support/generators/planted-load.ts'
import { packingFaults } from '../../support/oracle/packing.ts'

const LOADS = isDeep ? 500 : 40
const ROUNDS = 60
/** Share of the columns that is planted: the rest of the bay stays empty. */
const PLANTED_01 = 0.75

/** A bay cut into columns of boxes, one to three high; the topmost of some columns is wanted in the night. */
const planted = (seed: number): { readonly input: PackingInput; readonly wanted: readonly string[] } => {
  const random = randomFrom(seed)
  const between = (low: number, high: number): number => low + Math.floor(random() * (high - low + 1))
  const sizeMm: Vec3 = [between(600, 1200), between(500, 1000), between(300, 600)]
  const columnsX = between(2, 4)
  const columnsY = between(2, 4)
  const pieces: PackPiece[] = []
  const wanted: string[] = []
  for (let column = 0; column < columnsX * columnsY; column++) {
    if (random() > PLANTED_01) continue
    const levels = between(1, 3)
    for (let level = 0; level < levels; level++) {
      const id = `piece-${column}-${level}`
      const night = level === levels - 1 && random() < 0.25
      if (night) wanted.push(id)
      const box: Vec3 = [
        Math.floor(sizeMm[0] / columnsX),
        Math.floor(sizeMm[1] / columnsY),
        Math.floor((sizeMm[2] / levels) * (0.7 + 0.3 * random())),
      ]
      pieces.push(
        plainPiece(id, box, {
          massG: between(200, 3000),
          uprightEdges: [2],
          access: [night ? 'night' : 'seldom'],
          uses: { drive: 0, bed: night ? 1 : 0 },
        }),
      )
    }
  }
  const nights = [{ id: 'night', states: {}, lowTempC: {}, highTempC: {}, outsideStorage: false, foodBayIds: null }]
  return { input: plainInput([plainBay('bay', [0, 0, 0], sizeMm)], pieces, { nights }), wanted }
}

describe('what is wanted in the night', () => {
  it(`is had from the bed with nothing to move, in all of ${LOADS} loads where it was planted so`, () => {
    let asked = 0
    for (let seed = 1; seed <= LOADS; seed++) {
      const { input, wanted } = planted(seed)
      const outcome = packLoad(input, { seed: 1, iterations: ROUNDS })
      expect({ seed, faults: packingFaults(input, outcome) }).toEqual({ seed, faults: [] })
      const [night] = outcome.nights
      expect({ seed, left: night?.unplaced }).toEqual({ seed, left: [] })
      for (const unitId of wanted) {
        const reach = night?.reach.find((each) => each.unitId === unitId)
        const had = { seed, unitId, blockedBy: reach?.blockedBy, inside: reach?.fromSeatOrBed }
        expect(had).toEqual({ seed, unitId, blockedBy: [], inside: true })
        asked++
      }
    }
    expect(asked).toBeGreaterThan(LOADS)
  })
})
