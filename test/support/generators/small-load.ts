/** Small loads with a bit of everything: seats, a bay shut by the bed, a yard, a bin, friends, bedding, axles near their limits. */
import type {
  AccessClass,
  NightState,
  PackBay,
  PackBin,
  PackingInput,
  PackLock,
  PackNight,
  PackPiece,
  Vec3,
} from '../../../shared/packing/index.ts'
import { plainBay, plainBin, plainInput, plainPiece } from './planted-load.ts'

type Random = () => number

const ACCESS: readonly AccessClass[] = ['en-route', 'on-arrival', 'evening', 'night', 'morning', 'seldom']
const STATES: readonly NightState[] = ['stored', 'stored', 'bed', 'in-use', 'left-behind']

export const between = (random: Random, low: number, high: number): number =>
  low + Math.floor(random() * (high - low + 1))
export const oneOf = <T>(random: Random, values: readonly T[], other: T): T =>
  values[Math.floor(random() * values.length)] ?? other

const bin: PackBin = plainBin('crate', [200, 150, 120], [190, 140, 110], { massG: 700 })

const baysOf = (random: Random): readonly PackBay[] => {
  const arch = { label: 'arch', atMm: [0, 0, 0] as const, sizeMm: [120, 90, 80] as const }
  return [
    plainBay('boot', [0, 50, 100], [600, 500, 400], {
      obstacles: random() < 0.5 ? [arch] : [],
      slopes: random() < 0.3 ? [{ face: 'x-', insetFloorMm: 0, insetTopMm: 100 }] : [],
      sleepingSpace: random() < 0.5,
    }),
    plainBay('seat', [900, 0, 300], [400, 400, 400], {
      openings: [
        { id: 'door', face: 'y-', fromMm: [0, 0], toMm: [400, 400], door: 'left', opensFromInside: false },
        { id: 'inside', face: 'x+', fromMm: [0, 100], toMm: [350, 400], door: '', opensFromInside: true },
      ],
      usable: { drive: true, bed: random() < 0.5 },
      reachFromDriverSeat: true,
      reachFromBed: false,
    }),
    plainBay('well', [100, 100, 0], [400, 300, 90], {
      openings: [{ id: 'lid', face: 'z+', fromMm: [0, 0], toMm: [400, 300], door: '', opensFromInside: true }],
      closedByBed: true,
      reachFromBed: false,
    }),
    plainBay('nook', [1400, 0, 200], [300, 300, 300], { lastResort: random() < 0.5, openings: [] }),
    plainBay('yard', [-1500, 0, 0], [600, 600, 600], {
      belongsTo: 'site',
      kind: random() < 0.5 ? 'outside' : 'locker',
      reachFromBed: false,
    }),
  ]
}

/** A lock to a bay, to a place in it, or to one way to lie there. */
const lockOf = (random: Random, sizeMm: Vec3): PackLock => ({
  layout: random() < 0.5 ? 'drive' : 'bed',
  bayId: oneOf(random, ['boot', 'seat', 'nook'], 'boot'),
  atMm: random() < 0.5 ? [between(random, 0, 12) * 10, between(random, 0, 12) * 10, 0] : null,
  sizeMm: random() < 0.4 ? sizeMm : null,
})

const pieceOf = (random: Random, at: number, count: number): PackPiece => {
  const { traits } = plainPiece('', [1, 1, 1])
  const id = (of: number): string => `piece-${of}`
  const sizeMm: Vec3 = [between(random, 6, 25) * 10, between(random, 6, 20) * 10, between(random, 4, 15) * 10]
  return plainPiece(id(at), sizeMm, {
    massG: between(random, 200, 3900),
    access: [oneOf(random, ACCESS, 'seldom'), oneOf(random, ACCESS, 'seldom')],
    uses: { drive: between(random, 0, 3), bed: between(random, 0, 3) },
    belongsWith: random() < 0.4 ? [id(between(random, 0, count - 1))] : [],
    binId: at < 3 ? 'crate' : null,
    ...(random() < 0.25 ? { form: 'soft', squeezeTo01: 0.7 } : {}),
    uprightEdges: random() < 0.5 ? [2] : [0, 1, 2],
    locks: random() < 0.2 ? [lockOf(random, sizeMm)] : [],
    traits: {
      ...traits,
      fuel: random() < 0.15,
      food: random() < 0.2,
      mayStandOutside: random() < 0.5,
    },
  })
}

const nightOf = (random: Random, id: string, count: number): PackNight => ({
  id,
  states: Object.fromEntries(
    Array.from({ length: count }, (_, at) => [`piece-${at}`, oneOf(random, STATES, 'stored')] as const).filter(
      () => random() < 0.5,
    ),
  ),
  lowTempC: {},
  highTempC: {},
  outsideStorage: random() < 0.7,
  foodBayIds: random() < 0.3 ? ['yard'] : null,
})

/** About ten things, three of them in a crate, and up to three nights. */
export const smallLoad = (random: Random): PackingInput => {
  const count = between(random, 6, 12)
  const pieces = Array.from({ length: count }, (_, at) => pieceOf(random, at, count))
  const nights = Array.from({ length: between(random, 0, 3) }, (_, at) => nightOf(random, `night-${at}`, count))
  const input = plainInput(baysOf(random), pieces, {
    bins: [bin],
    nights,
    freeShare01: random() < 0.5 ? 0.9 : 0.2,
    weights: { reach: 0.5 + random(), dusk: 0.5 + random(), lowAndCentral: random(), baysKeptFree: random() },
  })
  const axle = (): { readonly limitG: number; readonly readyG: number } => ({
    readyG: 500_000,
    limitG: 500_000 + between(random, 0, 8000),
  })
  return {
    ...input,
    vehicle: {
      ...input.vehicle,
      frontAxle: random() < 0.8 ? axle() : null,
      rearAxle: random() < 0.8 ? axle() : null,
      rearAxleXMm: random() < 0.8 ? 400 : null,
      wheelbaseMm: random() < 0.9 ? 2000 : null,
    },
  }
}
