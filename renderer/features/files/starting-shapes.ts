/** New trips to begin with: a vehicle by body class, one traveller, one night. Rounded common measures, all to be changed by tape. */
import { FORMAT_NAME, FORMAT_VERSION } from '../../../shared/document/index.ts'
import type { Bay, Opening, Trip } from '../../../shared/document/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { nextDate, utcToLocal } from '../../../shared/units/index.ts'
import type { Utc } from '../../../shared/units/index.ts'

export const STARTING_SHAPES = ['hatchback', 'estate', 'crossover', 'van'] as const
export type StartingShape = (typeof STARTING_SHAPES)[number]

/** Common practice for each body class, mm and kg: cargo bay with the seats up, flat length with them down. */
type Shape = {
  readonly bodyClass: Trip['vehicle']['thermal']['bodyClass']
  readonly cargoMm: readonly [number, number, number]
  readonly flatMm: readonly [number, number]
  readonly headroomMm: number
  readonly readyG: number
  readonly permittedG: number
  readonly usableWh: number
  readonly whPerKm: number
}

const SHAPES: Readonly<Record<StartingShape, Shape>> = {
  hatchback: {
    bodyClass: 'hatchback',
    cargoMm: [740, 1000, 700],
    flatMm: [1600, 1000],
    headroomMm: 780,
    readyG: 1_450_000,
    permittedG: 1_900_000,
    usableWh: 50_000,
    whPerKm: 160,
  },
  estate: {
    bodyClass: 'estate',
    cargoMm: [1050, 1020, 740],
    flatMm: [1880, 1020],
    headroomMm: 750,
    readyG: 1_900_000,
    permittedG: 2_400_000,
    usableWh: 70_000,
    whPerKm: 185,
  },
  crossover: {
    bodyClass: 'crossover',
    cargoMm: [1000, 1040, 780],
    flatMm: [1850, 1040],
    headroomMm: 850,
    readyG: 1_950_000,
    permittedG: 2_480_000,
    usableWh: 75_000,
    whPerKm: 195,
  },
  van: {
    bodyClass: 'van-bare',
    cargoMm: [1800, 1200, 1200],
    flatMm: [1850, 1200],
    headroomMm: 1150,
    readyG: 1_800_000,
    permittedG: 2_400_000,
    usableWh: 50_000,
    whPerKm: 215,
  },
}

const ARCH_MM = 120
const ARCH_LENGTH_MM = 600
const ARCH_HEIGHT_MM = 260
const MATTRESS_MM = 80

/** A trip of the given shape that can be planned at once. */
export function newTrip(shape: StartingShape, text: Text, preferences: Trip['preferences'], nowUtc: number): Trip {
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone
  const today = utcToLocal(nowUtc as Utc, zone).date
  return {
    format: FORMAT_NAME,
    version: FORMAT_VERSION,
    title: text.t('window.new.title'),
    preferences,
    vehicle: vehicleOf(shape, text),
    travellers: [
      {
        id: 'traveller-1',
        label: text.t('window.new.traveller'),
        heightMm: 1720,
        massG: 72_000,
        drives: true,
        sleeps: 'average',
        sleepwearClo: 0.6,
      },
    ],
    kit: { pieces: firstPieces(SHAPES[shape], text), bins: [], freeShare01: 0.06 },
    nights: [nightOf(nextDate(today), zone, text)],
    checklist: { rules: [], switchedOffRuleIds: [], ticks: [], lessons: [] },
    measured: [],
    ledger: [],
  }
}

function vehicleOf(name: StartingShape, text: Text): Trip['vehicle'] {
  const shape = SHAPES[name]
  const [flatLengthMm, flatWidthMm] = shape.flatMm
  return {
    name: text.t(`window.shape.${name}`),
    drive: 'electric',
    masses: { permittedG: shape.permittedG, readyG: shape.readyG, driverIncludedG: 75_000 },
    seatBackHeightMm: 620,
    bays: baysOf(shape, text),
    bed: {
      atMm: [0, 60, 0],
      sizeMm: [flatLengthMm, Math.min(700, flatWidthMm), MATTRESS_MM],
      flatLengthMm,
      flatWidthMm,
      headroomMm: shape.headroomMm,
      headEnd: 'front',
      stepMm: 20,
      mattressPieceIds: ['mattress'],
      prepare: [text.t('window.new.foldSeats')],
      keepClear: [text.t('window.new.driverSeat')],
    },
    thermal: { bodyClass: shape.bodyClass },
    heater: {
      kind: 'heat-pump',
      maxHeatW: 4000,
      cop: [
        { outsideC: -10, value: 1.4 },
        { outsideC: 7, value: 2.4 },
      ],
      canCool: true,
      awakeLoadW: 200,
      mayRunAllNight: true,
    },
    bedHeaters: [],
    battery: { usableWh: shape.usableWh, reserve01: 0.12, chargeLimit01: 0.9 },
    charging: { efficiency01: 0.9, overheadW: 250, minimumA: 6, maximumA: 16, fastMaxW: 90_000 },
    consumption: { whPerKm: shape.whPerKm },
  }
}

const NEVER_FREE = {
  usable: { drive: true, bed: true },
  belongsTo: 'vehicle',
  softOnly: false,
  lastResort: false,
  lockable: true,
  heatedAtNight: true,
  sleepingSpace: true,
  closedByBed: false,
  reachFromBed: true,
  reachFromDriverSeat: false,
} as const

function opening(
  id: string,
  name: string,
  face: Opening['face'],
  size: readonly [number, number],
  inside: boolean,
): Opening {
  return { id, name, face, fromMm: [0, 0], toMm: [size[0], size[1]], door: name, opensFromInside: inside }
}

function baysOf(shape: Shape, text: Text): readonly Bay[] {
  const [length, width, height] = shape.cargoMm
  const side = Math.round((width - 2 * ARCH_MM) / 2)
  const arch = (label: string, y: number): Bay['obstacles'][number] => ({
    label,
    atMm: [120, y, 0],
    sizeMm: [ARCH_LENGTH_MM, ARCH_MM, ARCH_HEIGHT_MM],
  })
  const name = (key: 'cargo' | 'seat' | 'footwell' | 'front' | 'bedside'): string => text.t(`window.new.bay.${key}`)
  return [
    {
      ...NEVER_FREE,
      id: 'cargo',
      name: name('cargo'),
      kind: 'cargo',
      originMm: [0, 0, 0],
      sizeMm: [length, width, height],
      obstacles: [arch(text.t('window.new.arch'), 0), arch(text.t('window.new.arch'), width - ARCH_MM)],
      slopes: [],
      openings: [opening('tailgate', text.t('window.new.tailgate'), 'x-', [width, height - 40], false)],
      usable: { drive: true, bed: false },
      loadLimitG: 400_000,
      restraint: 'barrier',
    },
    {
      ...NEVER_FREE,
      id: 'passenger-seat',
      name: name('seat'),
      kind: 'seat',
      originMm: [length + 1150, width - 480, 250],
      sizeMm: [480, 480, 560],
      obstacles: [],
      slopes: [],
      openings: [opening('passenger-door', text.t('window.new.passengerDoor'), 'y+', [480, 560], true)],
      loadLimitG: 60_000,
      restraint: 'belt',
      reachFromDriverSeat: true,
    },
    {
      ...NEVER_FREE,
      id: 'passenger-footwell',
      name: name('footwell'),
      kind: 'footwell',
      originMm: [length + 1650, width - 470, -140],
      sizeMm: [400, 450, 340],
      obstacles: [],
      slopes: [],
      openings: [opening('footwell-door', text.t('window.new.passengerDoor'), 'y+', [400, 340], true)],
      loadLimitG: 40_000,
      restraint: 'wedge',
      reachFromDriverSeat: true,
    },
    {
      ...NEVER_FREE,
      id: 'bedside',
      name: name('bedside'),
      kind: 'bedside',
      originMm: [0, 780, 0],
      sizeMm: [Math.max(700, length), Math.max(120, side - 200), 420],
      obstacles: [],
      slopes: [],
      openings: [
        opening('bedside-top', name('bedside'), 'z+', [Math.max(700, length), Math.max(120, side - 200)], true),
      ],
      usable: { drive: false, bed: true },
      loadLimitG: 60_000,
      restraint: 'none',
    },
  ]
}

type Piece = Trip['kit']['pieces'][number]

function firstPieces(shape: Shape, text: Text): readonly Piece[] {
  const piece = (
    id: 'mattress' | 'bag' | 'pillow' | 'covers' | 'clothes' | 'water' | 'alarm',
    change: Partial<Piece> & Pick<Piece, 'sizeMm' | 'massG'>,
  ): Piece => ({
    id,
    name: text.t(`window.new.piece.${id}`),
    form: 'soft',
    squeezeTo01: 0.8,
    upright: ['length', 'width', 'height'],
    access: ['evening'],
    usedIn: [],
    atNight: 'stored',
    atNightOn: [],
    traits: {},
    purpose: 'other',
    belongsWith: [],
    apartFrom: [],
    locks: [],
    spare: false,
    ...change,
  })
  return [
    piece('mattress', {
      sizeMm: [660, Math.min(620, shape.flatMm[1]), 260],
      massG: 4500,
      atNight: 'bed',
      bedding: { kind: 'mat', matM2KPerW: 0.9 },
    }),
    piece('bag', {
      sizeMm: [420, 260, 260],
      massG: 1600,
      squeezeTo01: 0.6,
      atNight: 'bed',
      bedding: { kind: 'bag', comfortC: 0 },
    }),
    piece('pillow', {
      sizeMm: [420, 300, 130],
      massG: 500,
      squeezeTo01: 0.6,
      atNight: 'bed',
      bedding: { kind: 'pillow' },
    }),
    piece('covers', {
      sizeMm: [900, 550, 60],
      massG: 2200,
      atNight: 'in-use',
      access: ['on-arrival'],
      purpose: 'window-covers',
    }),
    piece('clothes', { sizeMm: [520, 300, 270], massG: 5500, access: ['morning'], purpose: 'clothes' }),
    piece('water', {
      form: 'rigid',
      squeezeTo01: 1,
      upright: ['height'],
      sizeMm: [280, 180, 300],
      massG: 10_600,
      purpose: 'water',
      traits: { liquidMl: 10_000, freezesBelowC: 0 },
    }),
    piece('alarm', {
      form: 'rigid',
      squeezeTo01: 1,
      sizeMm: [120, 80, 50],
      massG: 200,
      atNight: 'in-use',
      purpose: 'co-alarm',
    }),
  ]
}

function nightOf(date: string, zone: string, text: Text): Trip['nights'][number] {
  return {
    id: 'night-1',
    date,
    site: { name: text.t('window.new.site'), latitudeDeg: 50, longitudeDeg: 10, elevationM: 200, zone },
    arrive: '17:00',
    rules: {
      sleepInVehicle: 'not-known',
      chargeFromPost: 'not-known',
      tentOrAwning: false,
      outsideStorage: false,
      foodLockerRequired: false,
      fire: 'not-known',
      mustStandOnHardPad: false,
    },
    pitch: {
      surface: text.t('window.new.surface'),
      slope01: 0,
      slopeDownTowards: 'level',
      postSide: 'not-known',
      cableRunMm: 10_000,
      toToiletsMm: 50_000,
    },
    weather: {
      highC: 10,
      lowC: 2,
      windMPerS: 3,
      humidity01: 0.8,
      cloud01: 0.5,
      snowMm: 0,
      rainMm: 0,
      hours: [],
      coldMarginK: 2,
    },
    covers: true,
    ventilation: { gapMm: 15, sides: 2 },
    beddingPieceIds: ['mattress', 'bag', 'pillow'],
    heating: {
      setPoints: [
        { from: '18:00', tempC: 14 },
        { from: '22:00', tempC: 10 },
      ],
      bedHeaterIds: [],
    },
    sleep: { from: '22:00', to: '06:30' },
    morningMin: 60,
    arriveCharge01: 0.6,
    leg: { distanceM: 80_000, climbM: 0, outsideC: 4, fastChargers: [] },
  }
}
