/** Invented loads from a seed: vehicles, bins, pieces and nights of every kind the engine must cope with. */
import type {
  AccessClass,
  Face,
  NightState,
  PackBay,
  PackBin,
  PackingInput,
  PackNight,
  PackOpening,
  PackPiece,
  Restraint,
  Vec3,
} from '../../../shared/packing/index.ts'

export type Dice = {
  readonly upTo: (low: number, high: number) => number
  readonly chance: (share01: number) => boolean
  readonly pick: <T>(from: readonly [T, ...T[]]) => T
}

/** A linear congruential generator (constants of Numerical Recipes, 2nd ed., ch. 7.1): other than the engine's own. */
export function diceFrom(seed: number): Dice {
  let state = (seed * 2_654_435_761) >>> 0
  const next = (): number => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 4_294_967_296
  }
  next()
  return {
    upTo: (low, high) => low + Math.floor(next() * (high - low + 1)),
    chance: (share01) => next() < share01,
    pick: (from) => from[Math.floor(next() * from.length)] ?? from[0],
  }
}

const FACES: readonly [Face, ...Face[]] = ['x-', 'x+', 'y-', 'y+', 'z+']
const RESTRAINTS: readonly [Restraint, ...Restraint[]] = ['barrier', 'belt', 'strap', 'net', 'lid', 'wedge', 'none']
const ACCESS: readonly [AccessClass, ...AccessClass[]] = [
  'en-route',
  'on-arrival',
  'evening',
  'night',
  'morning',
  'seldom',
  'emergency',
]

export function openingOn(bay: string, face: Face, sizeMm: Vec3, dice: Dice | null): PackOpening {
  const [first, second] =
    face[0] === 'x' ? [sizeMm[1], sizeMm[2]] : face[0] === 'y' ? [sizeMm[0], sizeMm[2]] : [sizeMm[0], sizeMm[1]]
  const trim = (length: number): number => (dice === null || dice.chance(0.6) ? 0 : dice.upTo(0, Math.floor(length / 6)))
  return {
    id: `${bay}-${face}`,
    face,
    fromMm: [trim(first), face === 'z+' ? trim(second) : 0],
    toMm: [first - trim(first), second - trim(second)],
    door: `door ${face}`,
    opensFromInside: dice !== null && dice.chance(0.4),
  }
}

/** A plain bay that refuses nothing; tests override what they are about. */
export function plainBay(id: string, sizeMm: Vec3, faces: readonly Face[] = ['z+']): PackBay {
  return {
    id,
    kind: 'cargo',
    originMm: [0, 0, 0],
    sizeMm,
    obstacles: [],
    slopes: [],
    openings: faces.map((face) => openingOn(id, face, sizeMm, null)),
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
    reachFromDriverSeat: true,
  }
}

/** A plain rigid piece that asks for nothing; tests override what they are about. */
export function plainPiece(id: string, sizeMm: Vec3, massG = 1000): PackPiece {
  return {
    id,
    sizeMm,
    massG,
    form: 'rigid',
    squeezeTo01: 1,
    uprightEdges: [0, 1, 2],
    bearsG: null,
    access: ['seldom'],
    uses: { drive: 1, bed: 1 },
    traits: {
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
    },
    belongsWith: [],
    apartFrom: [],
    binId: null,
    locks: [],
  }
}

export const plainInput = (bays: readonly PackBay[], pieces: readonly PackPiece[]): PackingInput => ({
  vehicle: {
    payloadG: 1_000_000,
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
  weights: { reach: 1, dusk: 1, lowAndCentral: 0.3, baysKeptFree: 0.1 },
})

export const plainNight = (id: string, states: Readonly<Record<string, NightState>> = {}): PackNight => ({
  id,
  states,
  lowTempC: {},
  highTempC: {},
  outsideStorage: false,
  foodBayIds: null,
})

function randomBay(index: number, dice: Dice): PackBay {
  const sizeMm: Vec3 = [dice.upTo(25, 110) * 10, dice.upTo(20, 110) * 10, dice.upTo(18, 75) * 10]
  const id = `bay${index}`
  const base = plainBay(id, sizeMm)
  const kind = dice.pick(['cargo', 'seat', 'footwell', 'under-floor', 'pocket', 'roof-box', 'bedside', 'locker', 'outside'])
  const site = kind === 'locker' || kind === 'outside'
  const faces = [...new Set([dice.pick(FACES), dice.pick(FACES)])]
  const obstacles = dice.chance(0.4)
    ? [{ label: 'arch', atMm: [0, 0, 0] as const, sizeMm: [sizeMm[0] >> 1, sizeMm[1] >> 2, sizeMm[2] >> 1] as const }]
    : []
  const slopes = dice.chance(0.25)
    ? [{ face: dice.pick(['x-', 'x+', 'y-', 'y+']), insetFloorMm: dice.upTo(0, 60), insetTopMm: dice.upTo(0, 120) }]
    : []
  return {
    ...base,
    kind,
    // Bays stand side by side, now and then over one another, as a folded seat does.
    originMm: [dice.chance(0.15) ? 0 : index * 1200, dice.upTo(0, 3) * 100, dice.upTo(-2, 3) * 100],
    obstacles,
    slopes,
    openings: faces.map((face) => openingOn(id, face, sizeMm, dice)),
    usable: { drive: !site && dice.chance(0.9), bed: site || dice.chance(0.75) },
    belongsTo: site ? 'site' : 'vehicle',
    loadLimitG: dice.upTo(4, 120) * 1000,
    unitLimitG: dice.chance(0.15) ? dice.upTo(3, 20) * 1000 : null,
    softOnly: dice.chance(0.08),
    lastResort: dice.chance(0.1),
    lockable: !dice.chance(0.15),
    sleepingSpace: !dice.chance(0.3),
    closedByBed: dice.chance(0.2),
    restraint: dice.pick(RESTRAINTS),
    reachFromBed: dice.chance(0.5),
    reachFromDriverSeat: dice.chance(0.4),
  }
}

function randomPiece(index: number, bins: readonly PackBin[], bays: readonly PackBay[], dice: Dice): PackPiece {
  const small = dice.chance(0.5)
  const edge = (): number => (small ? dice.upTo(3, 25) : dice.upTo(8, 60)) * 10
  const soft = dice.chance(0.4)
  const base = plainPiece(`p${index}`, [edge(), edge(), edge()], dice.upTo(1, 60) * 200)
  const bin = bins[dice.upTo(0, Math.max(0, bins.length - 1))]
  const bay = bays[dice.upTo(0, bays.length - 1)]
  return {
    ...base,
    form: soft ? 'soft' : 'rigid',
    squeezeTo01: soft ? dice.upTo(40, 100) / 100 : 1,
    uprightEdges: dice.chance(0.3) ? [2] : dice.chance(0.2) ? [0, 1] : [0, 1, 2],
    bearsG: dice.chance(0.3) ? dice.upTo(0, 10) * 1000 : null,
    access: [dice.pick(ACCESS), dice.pick(ACCESS)],
    uses: { drive: dice.upTo(0, 4), bed: dice.upTo(0, 4) },
    traits: {
      ...base.traits,
      liquidMl: dice.chance(0.2) ? dice.upTo(200, 9000) : 0,
      freezesBelowC: dice.chance(0.2) ? dice.upTo(-10, 0) : null,
      spoilsAboveC: dice.chance(0.1) ? dice.upTo(4, 25) : null,
      food: dice.chance(0.15),
      scented: dice.chance(0.1),
      valuable: dice.chance(0.15),
      needsRestraint: dice.chance(0.1),
      fuel: dice.chance(0.07),
      lithiumWh: dice.chance(0.1) ? 60 : 0,
      mayStandOutside: dice.chance(0.3),
    },
    belongsWith: dice.chance(0.1) ? [`p${dice.upTo(0, index)}`] : [],
    apartFrom: dice.chance(0.07) && index > 0 ? [`p${dice.upTo(0, index - 1)}`] : [],
    binId: bin !== undefined && small && dice.chance(0.4) ? bin.id : null,
    locks:
      bay !== undefined && dice.chance(0.05)
        ? [{ layout: dice.pick(['drive', 'bed']), bayId: bay.id, atMm: dice.chance(0.4) ? [0, 0, 0] : null, sizeMm: null }]
        : [],
  }
}

function randomBin(index: number, dice: Dice): PackBin {
  const innerMm: Vec3 = [dice.upTo(20, 45) * 10, dice.upTo(20, 35) * 10, dice.upTo(15, 32) * 10]
  return {
    id: `bin${index}`,
    sizeMm: [innerMm[0] + 20, innerMm[1] + 20, innerMm[2] + 15],
    innerMm,
    massG: 900,
    form: dice.chance(0.2) ? 'soft' : 'rigid',
    squeezeTo01: 0.8,
    bearsG: dice.chance(0.3) ? 8000 : null,
    liftLimitG: 15_000,
    lid: dice.chance(0.5),
    locks: [],
  }
}

/** One whole load. The same seed gives the same load. */
export function randomLoad(seed: number, most = 24): PackingInput {
  const dice = diceFrom(seed)
  const bays = Array.from({ length: dice.upTo(1, 7) }, (_, index) => randomBay(index, dice))
  const bins = Array.from({ length: dice.upTo(0, 2) }, (_, index) => randomBin(index, dice))
  const pieces = Array.from({ length: dice.upTo(1, most) }, (_, index) => randomPiece(index, bins, bays, dice))
  const nights = Array.from({ length: dice.upTo(0, 2) }, (_, index) => randomNight(`n${index}`, pieces, bays, dice))
  const withAxles = dice.chance(0.6)
  const base = plainInput(bays, pieces)
  return {
    ...base,
    bins,
    nights,
    freeShare01: dice.upTo(0, 10) / 100,
    vehicle: {
      ...base.vehicle,
      payloadG: dice.upTo(20, 400) * 1000,
      frontAxle: withAxles ? { limitG: 1_200_000, readyG: 1_190_000 } : null,
      rearAxle: withAxles ? { limitG: 1_250_000, readyG: 1_150_000 } : null,
      rearAxleXMm: withAxles ? 800 : null,
      wheelbaseMm: withAxles ? 2800 : null,
      roofLimitG: dice.chance(0.5) ? dice.upTo(5, 50) * 1000 : null,
      seatBackHeightMm: dice.upTo(40, 90) * 10,
    },
  }
}

function randomNight(
  id: string,
  pieces: readonly PackPiece[],
  bays: readonly PackBay[],
  dice: Dice,
): PackNight {
  const lockers = bays.filter((bay) => bay.kind === 'locker').map((bay) => bay.id)
  const temps = (low: number, high: number): Record<string, number> =>
    Object.fromEntries(bays.map((bay) => [bay.id, dice.upTo(low, high)]))
  return {
    id,
    states: Object.fromEntries(
      pieces.map((piece) => [
        piece.id,
        dice.chance(0.7) ? 'stored' : dice.pick<NightState>(['bed', 'in-use', 'outside', 'left-behind']),
      ]),
    ),
    lowTempC: temps(-12, 8),
    highTempC: temps(5, 22),
    outsideStorage: dice.chance(0.4),
    foodBayIds: lockers.length > 0 && dice.chance(0.5) ? lockers : null,
  }
}
