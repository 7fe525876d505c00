/** Inside a bin: its pieces really placed, opening upwards, by the same search as a bay. */
import { boxSize } from './bay-state.ts'
import { volumeMm3 } from './geometry.ts'
import { randomFrom } from './random.ts'
import { packModelOf, sceneOf } from './scene.ts'
import { build, missingFrom } from './search/build.ts'
import { improve } from './search/improve.ts'
import { emptyState } from './search/state.ts'
import { stateOf } from './units.ts'
import type { InnerPacking, PackBay, PackBin, PackingInput, PackPiece, UnitCure, Unplaced } from './types.ts'

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

export type PackedBins = {
  readonly inner: readonly InnerPacking[]
  /** All pieces that travel as planned: the user's own assignments kept, loose small ones sorted into bins that suit them. */
  readonly pieces: readonly PackPiece[]
  /** What did not go in its bin. */
  readonly tooMany: readonly Unplaced[]
}

/** Packs every bin: first the user's own pieces, then loose small ones that suit it. */
export const packBins = (input: PackingInput, seed: number): PackedBins => {
  const inner: InnerPacking[] = []
  const tooMany: Unplaced[] = []
  let pieces = input.pieces
  for (const bin of input.bins) {
    const own = pieces.filter((piece) => piece.binId === bin.id)
    const first = packBin(input, bin, own, seed, ROUNDS)
    const held = own.filter((piece) => !first.left.includes(piece.id))
    for (const piece of own.filter(({ id }) => first.left.includes(id))) {
      const goesIn = (pieces: readonly PackPiece[]): boolean =>
        packBin(input, bin, pieces, seed, ROUNDS).left.length === 0
      const rule = goesIn([piece]) ? ('no-room' as const) : ('does-not-fit' as const)
      const why = [{ bayId: bin.id, rule, shortByMm: null }]
      const otherBin = (): string | null => binWithRoom(input, pieces, piece, seed)
      const cure = cureInBin({ bin, held, goesIn, otherBin }, piece)
      tooMany.push({ unitId: piece.id, layout: 'drive', nightId: null, why, cure })
    }
    const filled = topUp(input, bin, held, pieces, first.packing, seed)
    inner.push(filled.packing)
    pieces = pieces.map((piece) => (filled.added.has(piece.id) ? { ...piece, binId: bin.id } : piece))
  }
  const out = new Set(tooMany.map((each) => each.unitId))
  return { inner, pieces: pieces.filter((piece) => !out.has(piece.id)), tooMany }
}

const EDGES = [0, 1, 2] as const

type BinAsked = {
  readonly bin: PackBin
  readonly held: readonly PackPiece[]
  readonly goesIn: (pieces: readonly PackPiece[]) => boolean
  readonly otherBin: () => string | null
}

/** The smallest change found that takes a piece into a bin: turned, another bin, one other left out, or its own bin emptied. Each is packed to see. */
const cureInBin = ({ bin, held, goesIn, otherBin }: BinAsked, piece: PackPiece): UnitCure | null => {
  for (const edge of EDGES) {
    if (piece.uprightEdges.includes(edge)) continue
    if (goesIn([...held, { ...piece, uprightEdges: [...piece.uprightEdges, edge] }])) return { kind: 'turn', edge }
  }
  const otherId = otherBin()
  if (otherId !== null) return { kind: 'other-bin', binId: otherId }
  const others = held.toSorted((a, b) => volumeMm3(a.sizeMm) - volumeMm3(b.sizeMm))
  for (const other of others) {
    if (goesIn([...held.filter((each) => each !== other), piece])) return { kind: 'leave-behind', unitIds: [other.id] }
  }
  return goesIn([piece]) ? { kind: 'empty-bin', binId: bin.id } : null
}

/** The first other bin that closes with the piece beside its own, may hold it by what is in it, and can still be lifted. */
const binWithRoom = (
  input: PackingInput,
  pieces: readonly PackPiece[],
  piece: PackPiece,
  seed: number,
): string | null => {
  for (const bin of input.bins) {
    if (bin.id === piece.binId) continue
    const held = pieces.filter((each) => each.binId === bin.id)
    if (held.length > 0 && !sameDangers(held, piece)) continue
    const massG = bin.massG + piece.massG + held.reduce((sum, each) => sum + each.massG, 0)
    if (massG <= bin.liftLimitG && packBin(input, bin, [...held, piece], seed, ROUNDS).left.length === 0) return bin.id
  }
  return null
}

/** Adds loose small pieces that suit what is in the bin, the smallest last, while they go in and a person can lift it. */
const topUp = (
  input: PackingInput,
  bin: PackBin,
  held: readonly PackPiece[],
  pieces: readonly PackPiece[],
  packing: InnerPacking,
  seed: number,
): { readonly packing: InnerPacking; readonly added: ReadonlySet<string> } => {
  let content = held
  let best = packing
  const added = new Set<string>()
  const loose = pieces
    .filter((piece) => piece.binId === null && suitsBin(input, bin, held, piece))
    .toSorted((a, b) => volumeMm3(b.sizeMm) - volumeMm3(a.sizeMm))
  for (const piece of loose) {
    const massG = bin.massG + piece.massG + content.reduce((sum, each) => sum + each.massG, 0)
    if (massG > bin.liftLimitG || added.size >= MOST_ADDED) continue
    const tried = packBin(input, bin, [...content, piece], seed, 0)
    if (tried.left.length > 0) continue
    content = [...content, piece]
    best = tried.packing
    added.add(piece.id)
  }
  return { packing: best, added }
}

/** Pieces sorted into one bin at most: beyond that one digs. Common practice. */
const MOST_ADDED = 8
/** A piece larger than this share of the bin is no small piece. Common practice. */
const SMALL_SHARE = 0.2

/** Same moment of use, same larder, same dangers, nothing new for the bin to mind; at night it stays put like the rest. */
const suitsBin = (input: PackingInput, bin: PackBin, held: readonly PackPiece[], piece: PackPiece): boolean => {
  if (held.length === 0 || piece.locks.length > 0 || piece.access.includes('night')) return false
  if (volumeMm3(piece.sizeMm) > volumeMm3(bin.innerMm) * SMALL_SHARE) return false
  if (input.nights.some((night) => stateOf(night.states, piece.id) !== 'stored')) return false
  const classes = new Set(held.flatMap((each) => each.access))
  if (!piece.access.every((access) => classes.has(access))) return false
  const { traits } = piece
  if (!sameDangers(held, piece)) return false
  if (traits.liquidMl > 0 || traits.valuable || traits.lithiumWh > 0) return false
  if (traits.freezesBelowC !== null || traits.spoilsAboveC !== null || traits.needsRestraint) return false
  return true
}

/** Same larder, same dangers, and nothing that must be kept apart. */
const sameDangers = (held: readonly PackPiece[], piece: PackPiece): boolean => {
  const has = (test: (each: PackPiece) => boolean): boolean => held.some(test)
  const { traits } = piece
  if ((traits.food || traits.scented) !== has((each) => each.traits.food || each.traits.scented)) return false
  if (traits.fuel !== has((each) => each.traits.fuel)) return false
  if (traits.wetAfterUse !== has((each) => each.traits.wetAfterUse)) return false
  return !has((each) => each.apartFrom.includes(piece.id) || piece.apartFrom.includes(each.id))
}

/** The pieces packed into a bin, and those that do not go in. */
const packBin = (
  input: PackingInput,
  bin: PackBin,
  pieces: readonly PackPiece[],
  seed: number,
  rounds: number,
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
      : improve(first, { scene, origin: null, random, rounds, shouldStop: never, onRound: () => undefined })
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
