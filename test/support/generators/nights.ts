/** Random nights that the document accepts. */
import * as fc from 'fast-check'
import type { Hookup, Night } from '../../../shared/document/index.ts'
import type { Names } from './kit.ts'
import { clock, clockAt, decimal, int, joined, label, maybe, note, span, yesNo } from './values.ts'

const tariff: fc.Arbitrary<Hookup['tariff']> = fc.oneof(
  fc.constant({ kind: 'included' as const }),
  fc.constant({ kind: 'not-known' as const }),
  fc.record({ kind: fc.constant('per-night' as const), price: decimal(0, 90) }),
  fc.record({ kind: fc.constant('per-kwh' as const), price: decimal(0, 2) }),
)

const hookup = (names: Names): fc.Arbitrary<Hookup> =>
  fc.tuple(int(110, 240), decimal(0, 2)).chain(([nominalV, ohm]) =>
    joined(
      fc.record({
        connector: fc.constantFrom<Hookup['connector'][]>(
          'nema-tt-30',
          'nema-14-50',
          'iec-60309-16-blue',
          'cee-7-3-schuko',
          'other',
        ),
        nominalV: fc.constant(nominalV),
        breakerA: int(6, 50),
        readings: fc.uniqueArray(int(0, 30), { maxLength: 3 }).map((currents) =>
          currents.map((currentA) => ({
            currentA,
            volts: Math.max(0, Math.round((nominalV - ohm * currentA) * 10) / 10),
          })),
        ),
        earthOk: yesNo,
        polarityReversed: yesNo,
        resetReachable: yesNo,
        plugIn: int(15 * 60, 22 * 60).map(clockAt),
        unplug: int(5 * 60, 11 * 60).map(clockAt),
        otherLoadW: int(0, 2000),
        tariff,
      }),
      joined(
        joined(maybe('siteLimitA', int(4, 32)), maybe('event', note)),
        maybe('adapterPieceId', fc.constantFrom(...names.pieceIds)),
      ),
    ),
  )

const leg: fc.Arbitrary<Night['leg']> = int(0, 600_000).chain((distanceM) =>
  joined(
    fc.record({
      distanceM: fc.constant(distanceM),
      fastChargers: fc.array(fc.record({ atM: int(0, distanceM), powerW: int(20_000, 300_000) }), { maxLength: 2 }),
    }),
    joined(maybe('whPerKm', decimal(120, 350)), maybe('climbM', int(-900, 900))),
  ),
)

const weather: fc.Arbitrary<Night['weather']> = fc.tuple(decimal(-30, 25), decimal(0, 20)).chain(([lowC, range]) =>
  fc.record({
    highC: fc.constant(Math.round((lowC + range) * 1000) / 1000),
    lowC: fc.constant(lowC),
    windMPerS: decimal(0, 20),
    humidity01: decimal(0, 1),
    cloud01: decimal(0, 1),
    snowMm: decimal(0, 50),
    rainMm: decimal(0, 50),
    hours: fc
      .uniqueArray(int(0, 23), { maxLength: 5 })
      .chain((hours) =>
        fc.tuple(
          ...hours.map((hour) => fc.record({ clock: fc.constant(clockAt(hour * 60)), tempC: decimal(-30, 30) })),
        ),
      ),
    coldMarginK: decimal(0, 5),
  }),
)

const ZONES = ['Europe/Berlin', 'America/Denver', 'Asia/Kathmandu', '+01:00', '-06:00', 'UTC']

/** A date in winter: no clock is skipped. */
export const dateOf = (firstDay: number, index: number): string => {
  const day = firstDay + index
  return day <= 31 ? `2027-01-${String(day).padStart(2, '0')}` : `2027-02-${String(day - 31).padStart(2, '0')}`
}

export const arbitraryNight = (
  id: string,
  date: string,
  names: Names,
  heaterIds: readonly string[],
): fc.Arbitrary<Night> =>
  joined(
    fc.record({
      id: fc.constant(id),
      date: fc.constant(date),
      site: fc.record({
        name: label,
        latitudeDeg: decimal(-65, 65),
        longitudeDeg: decimal(-179, 179),
        elevationM: int(0, 3000),
        zone: fc.constantFrom(...ZONES),
      }),
      arrive: int(14 * 60, 22 * 60).map(clockAt),
      rules: fc.record({
        sleepInVehicle: yesNo,
        chargeFromPost: yesNo,
        tentOrAwning: fc.boolean(),
        outsideStorage: fc.boolean(),
        foodLockerRequired: fc.boolean(),
        fire: yesNo,
        mustStandOnHardPad: fc.boolean(),
      }),
      pitch: fc.record({
        surface: label,
        slope01: decimal(0, 0.1),
        slopeDownTowards: fc.constantFrom(
          'nose' as const,
          'tail' as const,
          'left' as const,
          'right' as const,
          'level' as const,
        ),
        postSide: fc.constantFrom('left-front' as const, 'right-rear' as const, 'not-known' as const),
        cableRunMm: int(0, 40_000),
        toToiletsMm: int(0, 400_000),
      }),
      weather,
      covers: fc.boolean(),
      ventilation: fc.record({ gapMm: int(0, 100), sides: int(0, 2) }),
      beddingPieceIds: fc.subarray([...names.beddingIds, names.mattressId]),
      heating: fc.record({
        setPoints: fc
          .uniqueArray(clock, { maxLength: 3 })
          .chain((clocks) =>
            fc.tuple(...clocks.map((from) => fc.record({ from: fc.constant(from), tempC: fc.option(decimal(5, 22)) }))),
          ),
        bedHeaterIds: fc.subarray([...heaterIds]),
      }),
      sleep: fc
        .tuple(int(20 * 60, 23 * 60), int(240, 600))
        .map(([from, length]) => ({ from: clockAt(from), to: clockAt(from + length) })),
      morningMin: int(0, 120),
      arriveCharge01: decimal(0.1, 1),
    }),
    joined(
      joined(maybe('hookup', hookup(names)), maybe('leg', leg)),
      joined(
        joined(maybe('quiet', span(60, 700)), maybe('note', note)),
        joined(
          maybe('checkOutBy', int(8 * 60, 12 * 60).map(clockAt)),
          maybe('takenOn', fc.record({ waterMl: int(0, 40_000), foodG: int(0, 9000) })),
        ),
      ),
    ),
  )
