/** Compartments of a scenario become bays with openings. */
import type { Bay, Opening } from '../../../shared/document/index.ts'
import type { Compartment } from './scenario.ts'
import { given, gramsOf, idOf, leftoversOf, noteOf } from './words.ts'

type Face = Opening['face']
type Rectangle = { fromMm: [number, number]; toMm: [number, number] }

/** Load limit where the scenario names none, g: common practice for a floor area. */
const UNSTATED_LOAD_LIMIT_G = 100_000
/** A bay lower than this beside the bed is reached over its rim, mm: common practice. */
const OVER_THE_RIM_MM = 500

const KNOWN = [
  'id',
  'name',
  'origin_mm',
  'size_mm',
  'available',
  'max_load_kg',
  'opening_mm',
  'doors',
  'environment',
  'restraint',
  'cutouts_mm',
  'reach_from_bed',
  'reach_from_driver_seat',
  'follows_outdoor_temp',
  'outside_the_sleeping_space',
  'soft_only',
  'max_item_kg',
  'last_resort',
  'not_lockable',
  'note',
]

const KINDS: readonly (readonly [RegExp, Bay['kind']])[] = [
  [/^site|food.?locker/, 'locker'],
  [/roof/, 'roof-box'],
  [/under.?floor|under the floor|floor well/, 'under-floor'],
  [/front.?box|frunk|bonnet|hood|front trunk|front.?compartment/, 'front-compartment'],
  [/foot.?well/, 'footwell'],
  [/strip|beside|gap|bedside/, 'bedside'],
  [/door.?bin|console|pocket|glove/, 'pocket'],
  [/shelf|overhead|cupboard/, 'shelf'],
  [/seat/, 'seat'],
  [/awning|outdoor|outside/, 'outside'],
]

export function bayKindOf(compartment: Compartment): Bay['kind'] {
  const id = compartment.id.toLowerCase()
  if (id === 'bay') return 'cargo'
  const name = (compartment.name ?? '').toLowerCase()
  // A gap beside the bed may be called a side pocket: the name decides before the id.
  if (/gap between|beside the/.test(name)) return 'bedside'
  const match = KINDS.find(([pattern]) => pattern.test(id))
  if (match !== undefined) return match[1]
  return KINDS.find(([pattern]) => pattern.test(name))?.[1] ?? 'cargo'
}

/** Sizes of a face: the two other axes in x, y, z order. */
function faceSizes(face: Face, size: readonly [number, number, number]): [number, number] {
  if (face === 'x-' || face === 'x+') return [size[1], size[2]]
  if (face === 'y-' || face === 'y+') return [size[0], size[2]]
  return [size[0], size[1]]
}

/** The stated width and height laid on a face: width across, height up (forward for a lid). */
function holeOn(face: Face, size: readonly [number, number, number], hole: readonly number[]): [number, number] {
  const [first, second] = faceSizes(face, size)
  const width = hole[0] ?? first
  const height = hole[1] ?? second
  return face === 'z+'
    ? [Math.min(height, first), Math.min(width, second)]
    : [Math.min(width, first), Math.min(height, second)]
}

function bestFace(size: readonly [number, number, number], hole: readonly number[]): Face {
  const share = (face: Face): number => {
    const [a, b] = holeOn(face, size, hole)
    return a * b
  }
  const faces: readonly Face[] = ['z+', 'y-', 'x-']
  return faces.reduce((best, face) => (share(face) > share(best) ? face : best), 'z+')
}

function faceOf(door: string, bay: Bay['kind'], compartment: Compartment): Face {
  const size = compartment.size_mm
  const hole = compartment.opening_mm
  if (hole === null || hole === undefined || bay === 'under-floor') return 'z+'
  const text = door.toLowerCase()
  if (/tailgate|boot|hatch|rear doors?$|back doors?/.test(text) && !/left|right/.test(text)) return 'x-'
  if (/left|near.?side|driver/.test(text)) return 'y-'
  if (/right|passenger|sliding|side door|side/.test(text)) return 'y+'
  if (/bonnet|hood|top/.test(text)) return 'z+'
  return bestFace(size, hole)
}

/** The rectangle of an opening: centred along the face, or towards the door where the bay is longer; at the floor where one walks up to it. */
function rectangleOf(face: Face, compartment: Compartment, doorCentreXMm: number | null): Rectangle {
  const sizes = faceSizes(face, compartment.size_mm).map(Math.round)
  const [first = 1, second = 1] = sizes
  const hole = compartment.opening_mm
  if (hole === null || hole === undefined) return { fromMm: [0, 0], toMm: [first, second] }
  const [a, b] = holeOn(face, compartment.size_mm, hole).map(Math.round)
  const width = a ?? first
  const height = b ?? second
  const wanted =
    (face === 'y-' || face === 'y+') && doorCentreXMm !== null
      ? doorCentreXMm - compartment.origin_mm[0] - width / 2
      : (first - width) / 2
  const from = Math.round(Math.min(Math.max(wanted, 0), first - width))
  const floor = face === 'z+' ? Math.round((second - height) / 2) : 0
  return { fromMm: [from, floor], toMm: [from + width, floor + height] }
}

/** Where along the vehicle a door is: the middle of the shortest bay behind it. */
function doorCentres(compartments: readonly Compartment[]): ReadonlyMap<string, number> {
  const shortest = new Map<string, Compartment>()
  for (const compartment of compartments) {
    for (const door of compartment.doors ?? []) {
      const known = shortest.get(door)
      if (known === undefined || known.size_mm[0] > compartment.size_mm[0]) shortest.set(door, compartment)
    }
  }
  return new Map([...shortest].map(([door, bay]) => [door, bay.origin_mm[0] + bay.size_mm[0] / 2]))
}

type Obstacle = Bay['obstacles'][number]

const numbersOf = (list: unknown): number[] =>
  Array.isArray(list)
    ? list
        .flat()
        .filter((one): one is number => typeof one === 'number')
        .map(Math.round)
    : []

function boxOf(at: readonly number[], size: readonly number[], label: string): Obstacle[] {
  const [x, y, z] = at
  const [dx, dy, dz] = size
  if (x === undefined || y === undefined || z === undefined) return []
  if (dx === undefined || dy === undefined || dz === undefined) return []
  return [{ label, atMm: [x, y, z], sizeMm: [dx, dy, dz] }]
}

/** A solid part as six numbers, as two lists, or as an object with a corner and a size or an end. */
function cutoutBox(value: unknown, index: number): Obstacle[] {
  const label = `solid part ${String(index + 1)}`
  if (Array.isArray(value)) return boxOf(numbersOf(value).slice(0, 3), numbersOf(value).slice(3, 6), label)
  if (typeof value !== 'object' || value === null) return []
  const entries = Object.entries(value)
  const at = numbersOf(entries.find(([key]) => /at|origin|from|pos/.test(key))?.[1])
  const size = numbersOf(entries.find(([key]) => /size|dim/.test(key))?.[1])
  const to = numbersOf(entries.find(([key]) => key.startsWith('to'))?.[1])
  const name: unknown = entries.find(([key]) => /name|label|id|note/.test(key))?.[1]
  const sized = size.length === 3 ? size : to.map((end, axis) => end - (at[axis] ?? 0))
  return boxOf(at, sized, typeof name === 'string' ? name : label)
}

const RESTRAINTS: Readonly<Record<string, Bay['restraint']>> = {
  barrier: 'barrier',
  belt: 'belt',
  lid: 'lid',
  net: 'net',
  wedged: 'wedge',
  wedge: 'wedge',
  strap: 'strap',
  straps: 'strap',
  none: 'none',
}

const opensFromInside = (door: string): boolean =>
  !/tailgate|boot|hatch|bonnet|hood|lid|locker/.test(door.toLowerCase())

function openingsOf(
  compartment: Compartment,
  kind: Bay['kind'],
  bedCentreYMm: number,
  centres: ReadonlyMap<string, number>,
): Opening[] {
  const doors = compartment.doors?.length ? compartment.doors : ['open top']
  const openings = doors.map((door, index) => {
    const face = doors[0] === 'open top' ? 'z+' : faceOf(door, kind, compartment)
    return {
      id: idOf(`${compartment.id}-opening-${String(index + 1)}`),
      name: door,
      face,
      ...rectangleOf(face, compartment, centres.get(door) ?? null),
      door,
      opensFromInside: opensFromInside(door),
    }
  })
  // An open top is one hole, whichever door it lies behind.
  const single = openings.every((one) => one.face === 'z+') ? openings.slice(0, 1) : openings
  if (kind !== 'bedside' || compartment.reach_from_bed !== true) return single
  const [, sizeY, sizeZ] = compartment.size_mm
  const bedSide = compartment.origin_mm[1] + sizeY / 2 > bedCentreYMm ? 'y-' : 'y+'
  const face: Face = sizeZ < OVER_THE_RIM_MM ? 'z+' : bedSide
  const [first, second] = faceSizes(face, compartment.size_mm)
  const fromBed: Opening = {
    id: idOf(`${compartment.id}-from-bed`),
    name: 'from the bed',
    face,
    fromMm: [0, 0],
    toMm: [Math.round(first), Math.round(second)],
    door: 'from the bed',
    opensFromInside: true,
  }
  return [...single, fromBed]
}

/** A hole larger than the face it leads through is cut to the face: its measured size is kept in words. */
function clippedNote(compartment: Compartment, openings: readonly Opening[]): string {
  const hole = compartment.opening_mm
  if (hole === null || hole === undefined) return ''
  const spans = openings.flatMap(({ fromMm, toMm }) => [toMm[0] - fromMm[0], toMm[1] - fromMm[1]])
  return hole.every((side) => spans.includes(Math.round(side))) ? '' : `opening as measured: ${hole.join(' x ')} mm`
}

const roundAll = (size: readonly [number, number, number]): [number, number, number] => [
  Math.round(size[0]),
  Math.round(size[1]),
  Math.round(size[2]),
]

export function baysOf(compartments: readonly Compartment[], bedCentreYMm: number): Bay[] {
  const centres = doorCentres(compartments)
  return compartments.map((compartment) => {
    const available = compartment.available ?? ['drive', 'sleep']
    const said = bayKindOf(compartment)
    // A box on the outside that rides along, such as one for gas, is the vehicle's own: cold and apart as a front compartment is.
    const kind = said === 'outside' && available.includes('drive') ? 'front-compartment' : said
    const site = kind === 'locker' || kind === 'outside'
    const environment = compartment.environment ?? 'cabin'
    const inCabin = environment === 'cabin' || environment === 'front_seats'
    const cutouts = Array.isArray(compartment.cutouts_mm) ? compartment.cutouts_mm : []
    const access = compartment.sleep_access ?? ''
    const openings = openingsOf(compartment, kind, bedCentreYMm, centres)
    return {
      id: idOf(compartment.id),
      name: compartment.name ?? compartment.id,
      kind,
      originMm: roundAll(compartment.origin_mm),
      sizeMm: roundAll(compartment.size_mm),
      obstacles: cutouts.flatMap((cutout: unknown, index) => cutoutBox(cutout, index)),
      slopes: [],
      openings,
      usable: {
        drive: !site && available.includes('drive'),
        bed: available.includes('sleep') || available.includes('bed'),
      },
      belongsTo: site ? 'site' : 'vehicle',
      loadLimitG: compartment.max_load_kg ? gramsOf(compartment.max_load_kg) : UNSTATED_LOAD_LIMIT_G,
      ...given('unitLimitG', compartment.max_item_kg ? gramsOf(compartment.max_item_kg) : undefined),
      softOnly: compartment.soft_only ?? false,
      lastResort: compartment.last_resort ?? false,
      lockable: !(compartment.not_lockable ?? false),
      heatedAtNight: inCabin && !(compartment.follows_outdoor_temp ?? false),
      sleepingSpace: !(compartment.outside_the_sleeping_space ?? environment === 'outside'),
      closedByBed: /under the (mattress|bed)|closed/.test(access),
      restraint: RESTRAINTS[compartment.restraint ?? 'none'] ?? 'none',
      reachFromBed: compartment.reach_from_bed ?? false,
      reachFromDriverSeat: compartment.reach_from_driver_seat ?? false,
      ...noteOf(compartment.note, clippedNote(compartment, openings), leftoversOf(compartment, KNOWN)),
    }
  })
}
