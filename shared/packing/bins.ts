/** Inside a bin: its pieces really placed, opening upwards, by the same search as a bay. */
import { boxSize } from './bay-state.ts'
import { randomFrom } from './random.ts'
import { packModelOf, sceneOf } from './scene.ts'
import { build, missingFrom } from './search/build.ts'
import { improve } from './search/improve.ts'
import { emptyState } from './search/state.ts'
import type { InnerPacking, PackBay, PackBin, PackingInput, PackPiece } from './types.ts'

/** Rounds spent on one bin that does not close at once. */
const ROUNDS = 60

/** A bin as a bay of its own with the top open. */
const insideOf = (bin: PackBin): PackBay => ({
  id: bin.id,
  kind: 'cargo',
  originMm: [0, 0, 0],
  sizeMm: bin.innerMm,
  obstacles: [],
  slopes: [],
  openings: [
    { id: 'top', face: 'z+', fromMm: [0, 0], toMm: [bin.innerMm[0], bin.innerMm[1]], door: '', opensFromInside: true },
  ],
  usable: { drive: true, bed: true },
  belongsTo: 'vehicle',
  loadLimitG: Number.MAX_SAFE_INTEGER,
  unitLimitG: null,
  softOnly: false,
  lastResort: false,
  lockable: true,
  heatedAtNight: true,
  sleepingSpace: false,
  closedByBed: false,
  restraint: 'lid',
  reachFromBed: true,
  reachFromDriverSeat: true,
})

/** The pieces packed into a bin, and those that do not go in. */
export const packBin = (
  input: PackingInput,
  bin: PackBin,
  pieces: readonly PackPiece[],
  seed: number,
): { readonly packing: InnerPacking; readonly left: readonly string[] } => {
  const inner: PackingInput = {
    ...input,
    bays: [insideOf(bin)],
    bins: [],
    pieces: pieces.map((piece) => ({ ...piece, binId: null, locks: [] })),
    nights: [],
    freeShare01: 0,
  }
  const model = packModelOf(inner)
  const scene = sceneOf(model, null)
  const random = randomFrom(seed)
  const never = (): boolean => false
  const first = build(scene, emptyState(scene), null, random, never)
  const last =
    missingFrom(scene, first.state).length === 0
      ? first
      : improve(first, { scene, origin: null, random, rounds: ROUNDS, shouldStop: never, onRound: () => undefined })
  const placements = (last.state.bays[0]?.placed ?? []).map((item) => ({
    unitId: model.units[item.unit]?.id ?? '',
    bayId: bin.id,
    atMm: [item.x1, item.y1, item.z1] as const,
    sizeMm: boxSize(item),
    edges: item.edges,
  }))
  const left = missingFrom(scene, last.state).map((unit) => model.units[unit]?.id ?? '')
  return { packing: { binId: bin.id, placements }, left }
}
