/** Trip and nights to the packing engine's input: bays, bins and pieces, and what each night changes. */
import type { Bay, Bin, Night, Piece, Trip } from '../../document/index.ts'
import type { NightOutcome } from '../../climate/index.ts'
import { freeVolume } from '../../packing/index.ts'
import type {
  PackBay,
  PackBin,
  PackingInput,
  PackingOutcome,
  PackLock,
  PackNight,
  PackPiece,
  PackTraits,
  PackVehicle,
} from '../../packing/index.ts'
import { MM3_PER_LITRE } from '../../units/index.ts'
import { loadedPieces, nightState } from '../load.ts'

/** Weights of the one objective; reach first, then what must be carried at dusk. */
const WEIGHTS = { reach: 1, dusk: 1, lowAndCentral: 0.3, baysKeptFree: 0.1 } as const

/** How often a piece is wanted a day, by the phase it is used in: a thing for the road several times, others once. Common practice. */
const USES_ON_THE_ROAD = 3
const DRIVE_PHASES = new Set(['arriving', 'before-dark', 'at-the-target', 'check-out'])
const BED_PHASES = new Set(['bedtime', 'in-the-night', 'morning'])

export function packingInput(trip: Trip, outcomes: readonly NightOutcome[]): PackingInput {
  const bays = [...trip.vehicle.bays.map(packBay), ...lockerBay(trip)]
  const pieces = loadedPieces(trip)
  return {
    vehicle: packVehicle(trip),
    bays,
    bins: trip.kit.bins.map(packBin),
    pieces: pieces.map((piece) => packPiece(piece, pieces)),
    nights: trip.nights.map((night, at) => packNight(night, pieces, bays, outcomes[at])),
    freeShare01: trip.kit.freeShare01,
    weights: WEIGHTS,
  }
}

/** Room left by day in the vehicle's bays, mm3; none where something has no place as it is. */
export function freeRoomMm3(input: PackingInput, { drive, driveUnplaced }: PackingOutcome): number {
  if (driveUnplaced.length > 0) return 0
  const inVehicle = new Set(input.bays.filter(({ belongsTo }) => belongsTo === 'vehicle').map(({ id }) => id))
  return freeVolume(input, drive, 'drive')
    .filter(({ bayId }) => inVehicle.has(bayId))
    .reduce((sum, { freeL }) => sum + Math.max(0, freeL) * MM3_PER_LITRE, 0)
}

const packBay = (bay: Bay): PackBay => ({
  id: bay.id,
  kind: bay.kind,
  originMm: bay.originMm,
  sizeMm: bay.sizeMm,
  obstacles: bay.obstacles,
  slopes: bay.slopes,
  openings: bay.openings,
  usable: bay.usable,
  belongsTo: bay.belongsTo,
  loadLimitG: bay.loadLimitG,
  unitLimitG: bay.unitLimitG ?? null,
  softOnly: bay.softOnly,
  lastResort: bay.lastResort,
  lockable: bay.lockable,
  heatedAtNight: bay.heatedAtNight,
  sleepingSpace: bay.sleepingSpace,
  closedByBed: bay.closedByBed,
  restraint: bay.restraint,
  reachFromBed: bay.reachFromBed,
  reachFromDriverSeat: bay.reachFromDriverSeat,
})

/** A locker that a site states but the trip does not draw: one bay of the stated size, opened at the front. */
function lockerBay(trip: Trip): readonly PackBay[] {
  if (trip.vehicle.bays.some((bay) => bay.kind === 'locker')) return []
  const sizeMm = trip.nights.find((night) => night.rules.foodLockerMm !== undefined)?.rules.foodLockerMm
  if (sizeMm === undefined) return []
  const [, width, height] = sizeMm
  const opening = {
    id: 'locker-door',
    face: 'x-',
    fromMm: [0, 0],
    toMm: [width, height],
    door: 'locker',
    opensFromInside: false,
  } as const
  const locker: PackBay = {
    id: 'site-food-locker',
    kind: 'locker',
    originMm: [0, 0, 0],
    sizeMm,
    obstacles: [],
    slopes: [],
    openings: [opening],
    usable: { drive: false, bed: true },
    belongsTo: 'site',
    /** A steel locker on the ground carries more than its volume of food weighs: no limit that binds. */
    loadLimitG: 500_000,
    unitLimitG: null,
    softOnly: false,
    lastResort: false,
    lockable: false,
    heatedAtNight: false,
    sleepingSpace: false,
    closedByBed: false,
    restraint: 'lid',
    reachFromBed: false,
    reachFromDriverSeat: false,
  }
  return [locker]
}

const packLocks = (locks: Piece['locks']): readonly PackLock[] =>
  locks.map((lock) => ({
    layout: lock.layout,
    bayId: lock.bayId,
    atMm: lock.atMm ?? null,
    sizeMm: lock.sizeMm ?? null,
  }))

const packBin = (bin: Bin): PackBin => ({
  id: bin.id,
  sizeMm: bin.sizeMm,
  innerMm: bin.innerMm,
  massG: bin.massG,
  form: bin.form,
  squeezeTo01: bin.squeezeTo01,
  bearsG: bin.bearsG ?? null,
  liftLimitG: bin.liftLimitG,
  lid: bin.lid,
  locks: packLocks(bin.locks),
})

const EDGE = { length: 0, width: 1, height: 2 } as const

function packPiece(piece: Piece, loaded: readonly Piece[]): PackPiece {
  const ids = new Set(loaded.map(({ id }) => id))
  return {
    id: piece.id,
    sizeMm: piece.sizeMm,
    massG: piece.massG,
    form: piece.form,
    squeezeTo01: piece.squeezeTo01,
    uprightEdges: piece.upright.map((edge) => EDGE[edge]),
    bearsG: piece.bearsG ?? null,
    access: piece.access,
    uses: {
      drive: piece.usedIn.reduce(
        (sum, phase) => sum + (phase === 'on-the-road' ? USES_ON_THE_ROAD : DRIVE_PHASES.has(phase) ? 1 : 0),
        0,
      ),
      bed: piece.usedIn.reduce((sum, phase) => sum + (BED_PHASES.has(phase) ? 1 : 0), 0),
    },
    traits: packTraits(piece),
    belongsWith: piece.belongsWith.filter((id) => ids.has(id)),
    apartFrom: piece.apartFrom.filter((id) => ids.has(id)),
    binId: piece.binId ?? null,
    locks: packLocks(piece.locks),
  }
}

const packTraits = ({ traits }: Piece): PackTraits => ({
  liquidMl: traits.liquidMl ?? 0,
  freezesBelowC: traits.freezesBelowC ?? null,
  spoilsAboveC: traits.spoilsAboveC ?? null,
  food: traits.food ?? false,
  scented: traits.scented ?? false,
  valuable: traits.valuable ?? false,
  fragile: traits.fragile ?? false,
  needsRestraint: traits.needsRestraint ?? false,
  wetAfterUse: traits.wetAfterUse ?? false,
  fuel: traits.fuel ?? false,
  lithiumWh: traits.lithiumWh ?? 0,
  mayStandOutside: traits.mayStandOutside ?? false,
})

/** Share of a mass that rests on the front axle: front seats and a roof's fittings midway, a rear bench near the rear axle (common practice). */
const MIDWAY_ON_FRONT_01 = 0.5
const BENCH_ON_FRONT_01 = 0.2
const FRONT_SEATS = 2

/** What rides along besides the load and is in no figure of the papers: people beyond the driver counted there, and what is fitted to the roof. */
function besideLoadG({ vehicle: { masses }, travellers }: Trip): { readonly frontG: number; readonly rearG: number } {
  const massesG = travellers.toSorted((a, b) => Number(b.drives) - Number(a.drives)).map(({ massG }) => massG)
  const total = (list: readonly number[]): number => list.reduce((sum, massG) => sum + massG, 0)
  const midwayG = total(massesG.slice(0, FRONT_SEATS)) - masses.driverIncludedG + (masses.roofFittedG ?? 0)
  const benchG = total(massesG.slice(FRONT_SEATS))
  const frontG = Math.round(MIDWAY_ON_FRONT_01 * midwayG + BENCH_ON_FRONT_01 * benchG)
  return { frontG, rearG: midwayG + benchG - frontG }
}

function packVehicle(trip: Trip): PackVehicle {
  const { masses, seatBackHeightMm } = trip.vehicle
  const { frontG, rearG } = besideLoadG(trip)
  const { frontAxle, rearAxle } = masses
  return {
    payloadG: masses.permittedG - masses.readyG - frontG - rearG,
    frontAxle: frontAxle === undefined ? null : { ...frontAxle, readyG: frontAxle.readyG + frontG },
    rearAxle: rearAxle === undefined ? null : { ...rearAxle, readyG: rearAxle.readyG + rearG },
    rearAxleXMm: masses.rearAxleXMm ?? null,
    wheelbaseMm: masses.wheelbaseMm ?? null,
    roofLimitG: masses.roofLimitG === undefined ? null : masses.roofLimitG - (masses.roofFittedG ?? 0),
    seatBackHeightMm,
    driverSide: 'left',
  }
}

function packNight(
  night: Night,
  pieces: readonly Piece[],
  bays: readonly PackBay[],
  outcome: NightOutcome | undefined,
): PackNight {
  const lockerIds = bays.filter((bay) => bay.kind === 'locker').map(({ id }) => id)
  return {
    id: night.id,
    states: Object.fromEntries(pieces.map((piece) => [piece.id, nightState(piece, night)])),
    lowTempC: Object.fromEntries(bays.map((bay) => [bay.id, bayLowC(bay, night, outcome)])),
    highTempC: Object.fromEntries(bays.map((bay) => [bay.id, bayHighC(bay, night, outcome)])),
    outsideStorage: night.rules.outsideStorage,
    foodBayIds: night.rules.foodLockerRequired ? lockerIds : null,
  }
}

/** Where a bay lies decides which of the cabin's temperatures it follows. */
function bayAir(bay: PackBay, outcome: NightOutcome): readonly number[] {
  const { series } = outcome
  if (!bay.heatedAtNight) return series.outsideC
  switch (bay.kind) {
    case 'footwell':
    case 'under-floor':
      return series.floorC
    case 'seat':
    case 'pocket':
      return series.frontAirC
    case 'cargo':
    case 'bedside':
    case 'shelf':
    case 'front-compartment':
    case 'roof-box':
    case 'outside':
    case 'locker':
      return series.bedAirC
  }
}

/**
 * Time constant of a litre bottle in still air, s: m c / (h A) = 1 kg x 4186 J/kgK / (8 W/m2K x 0.06 m2), derived.
 * What stands in a bay follows the bay's air with this lag; larger things are slower still.
 */
const CONTENTS_LAG_S = 8700

/** Temperatures of what stands in a bay: heated bays from the warmth of the drive on, bays that follow the outside without a lag. */
function contentsC(bay: PackBay, outcome: NightOutcome): readonly number[] {
  const air = bayAir(bay, outcome)
  if (!bay.heatedAtNight) return air
  const { atUtc, massC } = outcome.series
  let tempC = massC[0] ?? 0
  return air.map((airC, step) => {
    const durationS = step === 0 ? 0 : (atUtc[step] ?? 0) - (atUtc[step - 1] ?? 0)
    tempC += (airC - tempC) * (1 - Math.exp(-durationS / CONTENTS_LAG_S))
    return tempC
  })
}

/** Tenths of a degree: finer would make the load depend on noise of the night. */
const tenths = (tempC: number): number => Math.round(tempC * 10) / 10

const bayLowC = (bay: PackBay, night: Night, outcome: NightOutcome | undefined): number =>
  outcome === undefined ? night.weather.lowC - night.weather.coldMarginK : tenths(Math.min(...contentsC(bay, outcome)))

/** The night's second half: by then the warmth of the drive has gone. */
const bayHighC = (bay: PackBay, night: Night, outcome: NightOutcome | undefined): number =>
  outcome === undefined
    ? night.weather.highC
    : tenths(Math.max(...contentsC(bay, outcome).slice(Math.floor(outcome.series.atUtc.length / 2))))
