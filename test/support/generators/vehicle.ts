/** Random vehicles that the document accepts. */
import * as fc from 'fast-check'
import type { Bay, Opening, Vehicle } from '../../../shared/document/index.ts'
import { decimal, ids, int, joined, label, maybe, note, sizeMm } from './values.ts'

const point = (min: number, max: number): fc.Arbitrary<[number, number, number]> =>
  fc.tuple(int(min, max), int(min, max), int(min, max))

const faceSize = (face: Opening['face'], [x, y, z]: readonly [number, number, number]): readonly [number, number] =>
  face === 'z+' ? [x, y] : face === 'x-' || face === 'x+' ? [y, z] : [x, z]

/** Two different whole numbers from 0 to `size`, the smaller first. */
const within = (size: number): fc.Arbitrary<[number, number]> =>
  int(0, size - 1).chain((from) => fc.tuple(fc.constant(from), int(from + 1, size)))

const opening = (id: string, size: readonly [number, number, number]): fc.Arbitrary<Opening> =>
  fc.constantFrom<Opening['face'][]>('x-', 'x+', 'y-', 'y+', 'z+').chain((face) => {
    const [first, second] = faceSize(face, size)
    return fc
      .record({ a: within(first), b: within(second), name: label, door: label, opensFromInside: fc.boolean() })
      .map(({ a, b, ...rest }) => ({ id, face, fromMm: [a[0], b[0]], toMm: [a[1], b[1]], ...rest }))
  })

const obstacle = (size: readonly [number, number, number]): fc.Arbitrary<Bay['obstacles'][number]> =>
  fc.record({ x: within(size[0]), y: within(size[1]), z: within(size[2]), label }).map(({ x, y, z, label: name }) => ({
    label: name,
    atMm: [x[0], y[0], z[0]],
    sizeMm: [x[1] - x[0], y[1] - y[0], z[1] - z[0]],
  }))

const bay = (id: string): fc.Arbitrary<Bay> =>
  fc.tuple(sizeMm(50, 1500), int(1, 3)).chain(([size, openings]) =>
    joined(
      fc.record({
        id: fc.constant(id),
        name: label,
        kind: fc.constantFrom<Bay['kind'][]>(
          'cargo',
          'seat',
          'footwell',
          'under-floor',
          'front-compartment',
          'pocket',
          'bedside',
          'shelf',
        ),
        originMm: point(-500, 4000),
        sizeMm: fc.constant(size),
        obstacles: fc.array(obstacle(size), { maxLength: 2 }),
        slopes: fc.constant([]),
        openings: fc.tuple(...ids(`${id}-opening`, openings).map((one) => opening(one, size))),
        usable: fc.constant({ drive: true, bed: true }),
        belongsTo: fc.constant('vehicle' as const),
        loadLimitG: int(1000, 300_000),
        softOnly: fc.boolean(),
        lastResort: fc.boolean(),
        lockable: fc.boolean(),
        heatedAtNight: fc.boolean(),
        sleepingSpace: fc.boolean(),
        closedByBed: fc.boolean(),
        restraint: fc.constantFrom<Bay['restraint'][]>('barrier', 'belt', 'strap', 'net', 'lid', 'wedge', 'none'),
        reachFromBed: fc.boolean(),
        reachFromDriverSeat: fc.boolean(),
      }),
      joined(maybe('unitLimitG', int(1000, 50_000)), maybe('note', note)),
    ),
  )

const masses: fc.Arbitrary<Vehicle['masses']> = fc
  .record({ readyG: int(1_200_000, 2_500_000), payloadG: int(200_000, 900_000), front01: decimal(0.4, 0.6) })
  .chain(({ readyG, payloadG, front01 }) => {
    const frontG = Math.round(readyG * front01)
    return joined(
      fc.record({
        permittedG: fc.constant(readyG + payloadG),
        readyG: fc.constant(readyG),
        driverIncludedG: int(0, 90_000),
        frontAxle: fc.constant({ limitG: frontG + payloadG, readyG: frontG }),
        rearAxle: fc.constant({ limitG: readyG - frontG + payloadG, readyG: readyG - frontG }),
      }),
      joined(maybe('wheelbaseMm', int(2000, 4000)), maybe('rearAxleXMm', int(200, 1500))),
    )
  })

const electric: fc.Arbitrary<Partial<Vehicle>> = fc.record({
  drive: fc.constant('electric' as const),
  battery: fc.record({
    usableWh: int(20_000, 120_000),
    reserve01: decimal(0, 0.3),
    chargeLimit01: decimal(0.5, 1),
  }),
  charging: fc.record({
    efficiency01: decimal(0.5, 1),
    overheadW: decimal(0, 400),
    minimumA: int(6, 8),
    maximumA: int(10, 48),
  }),
})

const combustion: fc.Arbitrary<Partial<Vehicle>> = joined(
  fc.record({ drive: fc.constant('combustion' as const) }),
  maybe(
    'leisure',
    fc.record({
      kind: fc.constantFrom('lfp' as const, 'lead' as const),
      usableWh: int(200, 6000),
      reserve01: decimal(0, 0.5),
      chargerW: int(0, 1000),
      loadW: int(0, 200),
    }),
  ),
)

const heater: fc.Arbitrary<Vehicle['heater']> = fc.record({
  kind: fc.constantFrom<Vehicle['heater']['kind'][]>('heat-pump', 'resistance', 'mains-fan-heater', 'none'),
  maxHeatW: int(0, 6000),
  cop: fc
    .uniqueArray(int(-30, 30), { maxLength: 4 })
    .chain((temps) =>
      fc.tuple(
        ...temps
          .toSorted((a, b) => a - b)
          .map((outsideC) => fc.record({ outsideC: fc.constant(outsideC), value: decimal(0.5, 5) })),
      ),
    ),
  canCool: fc.boolean(),
  awakeLoadW: int(0, 400),
  mayRunAllNight: fc.boolean(),
})

const bed = (mattressIds: readonly string[]): fc.Arbitrary<Vehicle['bed']> =>
  fc.tuple(sizeMm(60, 2000), int(0, 300), int(0, 300)).chain(([size, longer, wider]) =>
    joined(
      fc.record({
        atMm: point(0, 500),
        sizeMm: fc.constant(size),
        flatLengthMm: fc.constant(size[0] + longer),
        flatWidthMm: fc.constant(size[1] + wider),
        headroomMm: int(300, 1500),
        headEnd: fc.constantFrom('front' as const, 'rear' as const),
        stepMm: int(0, 80),
        mattressPieceIds: fc.constant(mattressIds),
        prepare: fc.array(label, { maxLength: 3 }),
        keepClear: fc.array(label, { maxLength: 2 }),
      }),
      maybe('exitDoor', label),
    ),
  )

export function arbitraryVehicle(
  bayIds: readonly string[],
  bedHeaterIds: readonly string[],
  mattressIds: readonly string[],
): fc.Arbitrary<Vehicle> {
  return joined(
    fc.record({
      name: label,
      masses,
      seatBackHeightMm: int(300, 900),
      bays: fc.tuple(...bayIds.map(bay)),
      bed: bed(mattressIds),
      thermal: joined(
        fc.record({
          bodyClass: fc.constantFrom<Vehicle['thermal']['bodyClass'][]>(
            'hatchback',
            'estate',
            'crossover',
            'van-bare',
            'van-insulated',
          ),
        }),
        joined(maybe('lossBareWPerK', decimal(20, 120)), maybe('freshAirM3PerH', decimal(0, 60))),
      ),
      heater,
      bedHeaters: fc.tuple(
        ...bedHeaterIds.map((id) =>
          fc.record({
            id: fc.constant(id),
            name: label,
            kind: fc.constant('underblanket' as const),
            powerW: int(5, 100),
          }),
        ),
      ),
      consumption: fc.record({ whPerKm: decimal(100, 700) }),
    }),
    fc.oneof(electric, combustion),
  ).map((vehicle): Vehicle => ({ ...vehicle, drive: vehicle.drive ?? 'combustion' }))
}
