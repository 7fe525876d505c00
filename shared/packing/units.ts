/** Units: bins with their pieces, and loose pieces; and what each is like in one layout. */
import { posesOf } from './poses.ts'
import type { Pose } from './poses.ts'
import type { AccessClass, NightState, PackBin, PackingInput, PackLock, PackPiece, Vec3 } from './types.ts'

/** What does not change between layouts. */
export type Unit = {
  readonly index: number
  readonly id: string
  readonly bin: PackBin | null
  readonly pieces: readonly PackPiece[]
  readonly sizeMm: Vec3
  readonly soft: boolean
  readonly poses: readonly Pose[]
  readonly bearsG: number
  readonly volumeMm3: number
  readonly locks: readonly PackLock[]
}

/** What a unit is like while one layout stands: a bin is the union of the pieces that are in it then. */
export type UnitTraits = {
  readonly massG: number
  readonly pieceIds: readonly string[]
  readonly liquid: boolean
  readonly spoiltByLiquid: boolean
  readonly freezesBelowC: number | null
  readonly spoilsAboveC: number | null
  readonly larder: boolean
  readonly valuable: boolean
  readonly fuel: boolean
  readonly mayStandOutside: boolean
  /** Heavy enough, or marked, to hurt someone when it comes loose. */
  readonly mustBeHeld: boolean
  readonly access: ReadonlySet<AccessClass>
  /** Times a day it is wanted while the layout stands. */
  readonly uses: number
  readonly apartFrom: ReadonlySet<string>
  readonly belongsWith: ReadonlySet<string>
}

/** From this mass a loose thing is held by a restraint by day, g (common practice). */
export const HEAVY_G = 4000
/** From this volume a liquid is kept off what it would spoil, ml (common practice). */
const LIQUID_ML = 1000

const ALL_EDGES = [0, 1, 2] as const
const UP_ONLY = [2] as const

/** Bins stand on their floor; a loose piece stands on the edges it allows. */
export const unitsOf = (input: PackingInput): readonly Unit[] => {
  const ofBin = new Map<string, PackPiece[]>()
  const loose: PackPiece[] = []
  const known = new Set(input.bins.map((bin) => bin.id))
  for (const piece of input.pieces) {
    if (piece.binId === null || !known.has(piece.binId)) loose.push(piece)
    else ofBin.set(piece.binId, [...(ofBin.get(piece.binId) ?? []), piece])
  }
  const bins = input.bins.map((bin, index) => binUnit(bin, ofBin.get(bin.id) ?? [], index))
  return [...bins, ...loose.map((piece, index) => pieceUnit(piece, bins.length + index))]
}

const binUnit = (bin: PackBin, pieces: readonly PackPiece[], index: number): Unit => ({
  index,
  id: bin.id,
  bin,
  pieces,
  sizeMm: bin.sizeMm,
  soft: bin.form === 'soft',
  poses: posesOf(bin.sizeMm, UP_ONLY, bin.form === 'soft' && pieces.length === 0, bin.squeezeTo01),
  bearsG: bin.bearsG ?? Number.POSITIVE_INFINITY,
  volumeMm3: bin.sizeMm[0] * bin.sizeMm[1] * bin.sizeMm[2],
  locks: bin.locks,
})

const pieceUnit = (piece: PackPiece, index: number): Unit => ({
  index,
  id: piece.id,
  bin: null,
  pieces: [piece],
  sizeMm: piece.sizeMm,
  soft: piece.form === 'soft',
  poses: posesOf(
    piece.sizeMm,
    piece.uprightEdges.length > 0 ? piece.uprightEdges : ALL_EDGES,
    piece.form === 'soft',
    piece.squeezeTo01,
  ),
  bearsG: piece.bearsG ?? Number.POSITIVE_INFINITY,
  volumeMm3: piece.sizeMm[0] * piece.sizeMm[1] * piece.sizeMm[2],
  locks: piece.locks,
})

const lowest = (values: readonly (number | null)[]): number | null =>
  values.reduce<number | null>((least, value) => (value === null ? least : Math.min(least ?? value, value)), null)

const highest = (values: readonly (number | null)[]): number | null =>
  values.reduce<number | null>((most, value) => (value === null ? most : Math.max(most ?? value, value)), null)

/** Traits of the pieces that are in the unit then; `bedding` tells which pieces become the bed on some night. */
export const traitsOf = (
  unit: Unit,
  pieces: readonly PackPiece[],
  layout: 'drive' | 'bed',
  bedding: ReadonlySet<string>,
): UnitTraits => {
  const some = (test: (piece: PackPiece) => boolean): boolean => pieces.some(test)
  const massG = (unit.bin?.massG ?? 0) + pieces.reduce((sum, piece) => sum + piece.massG, 0)
  return {
    massG,
    pieceIds: pieces.map((piece) => piece.id),
    liquid: pieces.reduce((most, piece) => Math.max(most, piece.traits.liquidMl), 0) >= LIQUID_ML,
    spoiltByLiquid: some((piece) => piece.traits.valuable || piece.traits.lithiumWh > 0 || bedding.has(piece.id)),
    freezesBelowC: highest(pieces.map((piece) => piece.traits.freezesBelowC)),
    spoilsAboveC: lowest(pieces.map((piece) => piece.traits.spoilsAboveC)),
    larder: some((piece) => piece.traits.food || piece.traits.scented),
    valuable: some((piece) => piece.traits.valuable),
    fuel: some((piece) => piece.traits.fuel),
    mayStandOutside: pieces.length > 0 && pieces.every((piece) => piece.traits.mayStandOutside),
    mustBeHeld: massG > HEAVY_G || some((piece) => piece.traits.needsRestraint),
    access: new Set(pieces.flatMap((piece) => piece.access)),
    uses: pieces.reduce((sum, piece) => sum + piece.uses[layout], 0),
    apartFrom: new Set(pieces.flatMap((piece) => piece.apartFrom)),
    belongsWith: new Set(pieces.flatMap((piece) => piece.belongsWith)),
  }
}

/** Where a piece is on a night; stored where the night does not say. */
export const stateOf = (states: Readonly<Record<string, NightState>>, pieceId: string): NightState =>
  states[pieceId] ?? 'stored'
