/** A load that is known to fit: a legal layout is drawn first and the pieces are cut from it, so a packer that fails to place one has failed. */
import * as fc from 'fast-check'
import type {
  PackBay,
  PackBin,
  PackingInput,
  PackNight,
  PackPiece,
  PackTraits,
  Placement,
  Vec3,
} from '../../../shared/packing/index.ts'

const PLAIN_TRAITS: PackTraits = {
  liquidMl: 0,
  freezesBelowC: null,
  spoilsAboveC: null,
  food: false,
  scented: false,
  valuable: false,
  fragile: false,
  needsRestraint: false,
  wetAfterUse: false,
  fuel: false,
  lithiumWh: 0,
  mayStandOutside: false,
}

export const WEIGHTS = { reach: 1, dusk: 1, lowAndCentral: 0.3, baysKeptFree: 0.1 } as const

/** A plain bay, open at the back and above. */
export function plainBay(id: string, originMm: Vec3, sizeMm: Vec3, change: Partial<PackBay> = {}): PackBay {
  const [length, width, height] = sizeMm
  return {
    id,
    kind: 'cargo',
    originMm,
    sizeMm,
    obstacles: [],
    slopes: [],
    openings: [
      { id: `${id}-back`, face: 'x-', fromMm: [0, 0], toMm: [width, height], door: 'tailgate', opensFromInside: true },
      { id: `${id}-top`, face: 'z+', fromMm: [0, 0], toMm: [length, width], door: 'top', opensFromInside: true },
    ],
    usable: { drive: true, bed: true },
    belongsTo: 'vehicle',
    loadLimitG: 1_000_000,
    unitLimitG: null,
    softOnly: false,
    lastResort: false,
    lockable: true,
    heatedAtNight: true,
    sleepingSpace: true,
    closedByBed: false,
    restraint: 'barrier',
    reachFromBed: true,
    reachFromDriverSeat: false,
    ...change,
  }
}

export function plainPiece(id: string, sizeMm: Vec3, change: Partial<PackPiece> = {}): PackPiece {
  return {
    id,
    sizeMm,
    massG: 1000,
    form: 'rigid',
    squeezeTo01: 1,
    uprightEdges: [0, 1, 2],
    bearsG: null,
    access: ['seldom'],
    uses: { drive: 0, bed: 0 },
    traits: PLAIN_TRAITS,
    belongsWith: [],
    apartFrom: [],
    binId: null,
    locks: [],
    ...change,
  }
}

/** A rigid bin with a lid, of 500 g. */
export const plainBin = (id: string, sizeMm: Vec3, innerMm: Vec3, change: Partial<PackBin> = {}): PackBin => ({
  id,
  sizeMm,
  innerMm,
  massG: 500,
  form: 'rigid',
  squeezeTo01: 1,
  bearsG: null,
  liftLimitG: 20_000,
  lid: true,
  locks: [],
  ...change,
})

/** A night with no weather to mind and nothing outside. */
export const plainNight = (id: string, change: Partial<PackNight> = {}): PackNight => ({
  id,
  states: {},
  lowTempC: {},
  highTempC: {},
  outsideStorage: false,
  foodBayIds: null,
  ...change,
})

/** A unit as it stands on its own bottom. */
export const standing = (unitId: string, bayId: string, atMm: Vec3, sizeMm: Vec3): Placement => ({
  unitId,
  bayId,
  atMm,
  sizeMm,
  edges: [0, 1, 2],
})

export const plainInput = (
  bays: readonly PackBay[],
  pieces: readonly PackPiece[],
  change: Partial<PackingInput> = {},
): PackingInput => ({
  vehicle: {
    payloadG: 2_000_000,
    frontAxle: null,
    rearAxle: null,
    rearAxleXMm: null,
    wheelbaseMm: null,
    roofLimitG: null,
    seatBackHeightMm: 5000,
    driverSide: 'left',
  },
  bays,
  bins: [],
  pieces,
  nights: [],
  freeShare01: 0,
  weights: WEIGHTS,
  ...change,
})

/** Columns of a bay's floor, each filled from the floor with boxes of the column's own footprint: supported and inside by construction. */
function cutBay(
  bay: PackBay,
  cuts: { xs: readonly number[]; ys: readonly number[]; heights: readonly number[]; keep: readonly boolean[] },
): Vec3[] {
  const edges = (size: number, shares: readonly number[]): number[] => [
    0,
    ...shares.map((share) => Math.round(size * share)).toSorted((a, b) => a - b),
    size,
  ]
  const xs = edges(bay.sizeMm[0], cuts.xs)
  const ys = edges(bay.sizeMm[1], cuts.ys)
  const boxes: Vec3[] = []
  let at = 0
  for (let i = 0; i + 1 < xs.length; i += 1) {
    for (let j = 0; j + 1 < ys.length; j += 1) {
      const length = (xs[i + 1] ?? 0) - (xs[i] ?? 0)
      const width = (ys[j + 1] ?? 0) - (ys[j] ?? 0)
      let z = 0
      while (length >= 40 && width >= 40) {
        const height = Math.max(60, Math.round((bay.sizeMm[2] / 3) * (cuts.heights[at % cuts.heights.length] ?? 1)))
        const kept = cuts.keep[at % cuts.keep.length] ?? true
        at += 1
        if (z + height > bay.sizeMm[2]) break
        z += height
        if (!kept) break
        boxes.push([length, width, height])
      }
    }
  }
  return boxes
}

/** Share of a planted bay that is filled at most: what a person packing by hand reaches, common practice. */
const FILLED_AT_MOST_01 = 0.75

/** Takes boxes away, largest last in the list first, until the rest fills no more than it should: what stays still fits as planted. */
function loosened(boxes: readonly Vec3[], bay: PackBay): readonly Vec3[] {
  const volume = ([length, width, height]: Vec3): number => length * width * height
  const most = volume(bay.sizeMm) * FILLED_AT_MOST_01
  let filled = 0
  return boxes.filter((box) => {
    if (filled + volume(box) > most) return false
    filled += volume(box)
    return true
  })
}

const share = fc.double({ min: 0.15, max: 0.85, noNaN: true })

/** One to three bays, each planted; about half to three quarters of their volume is cut into pieces. */
export const plantedLoad: fc.Arbitrary<PackingInput> = fc
  .record({
    sizes: fc.array(
      fc.tuple(
        fc.integer({ min: 300, max: 1100 }),
        fc.integer({ min: 300, max: 1000 }),
        fc.integer({ min: 250, max: 700 }),
      ),
      { minLength: 1, maxLength: 3 },
    ),
    xs: fc.array(share, { minLength: 0, maxLength: 4 }),
    ys: fc.array(share, { minLength: 0, maxLength: 3 }),
    heights: fc.array(fc.double({ min: 0.5, max: 1, noNaN: true }), { minLength: 1, maxLength: 5 }),
    keep: fc.array(fc.boolean(), { minLength: 3, maxLength: 7 }),
  })
  .map(({ sizes, xs, ys, heights, keep }) => {
    const bays = sizes.map((size, at) => plainBay(`bay-${at}`, [at * 1500, 0, 0], size))
    const boxes = bays.flatMap((bay) => loosened(cutBay(bay, { xs, ys, heights, keep }), bay))
    return plainInput(
      bays,
      boxes.map((size, at) =>
        plainPiece(`piece-${at}`, size, { massG: Math.max(100, Math.round((size[0] * size[1] * size[2]) / 5000)) }),
      ),
    )
  })
