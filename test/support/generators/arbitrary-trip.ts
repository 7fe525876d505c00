/** Random trips that the document accepts: every id known, every opening on its face, the nights in order. */
import * as fc from 'fast-check'
import type { Checklist, LedgerEntry, Measured, Trip } from '../../../shared/document/index.ts'
import { FORMAT_NAME, FORMAT_VERSION } from '../../../shared/document/index.ts'
import { arbitraryKit } from './kit.ts'
import type { Names } from './kit.ts'
import { arbitraryNight, dateOf } from './nights.ts'
import { clock, decimal, ids, int, joined, label, maybe, note } from './values.ts'
import { arbitraryVehicle } from './vehicle.ts'

type Shape = {
  readonly pieces: number
  readonly bins: number
  readonly bays: number
  readonly nights: number
  readonly travellers: number
  readonly heaters: number
}

/** How large a trip may grow. */
export type TripBounds = { readonly pieces: number; readonly bays: number; readonly nights: number }

const USUAL: TripBounds = { pieces: 10, bays: 4, nights: 3 }

const shapeWithin = (bounds: TripBounds): fc.Arbitrary<Shape> =>
  fc.record({
    pieces: int(0, bounds.pieces),
    bins: int(0, 3),
    bays: int(1, bounds.bays),
    nights: int(1, bounds.nights),
    travellers: int(1, 3),
    heaters: int(0, 2),
  })

const checklistOf = (names: Names): fc.Arbitrary<Checklist> =>
  fc.tuple(int(0, 2), int(0, 2)).chain(([rules, lessons]) => {
    const ruleIds = ids('rule', rules)
    return fc.record({
      rules: fc.tuple(
        ...ruleIds.map((id) =>
          fc.record({
            id: fc.constant(id),
            phase: fc.constantFrom('bedtime' as const, 'morning' as const),
            step: label,
            reason: label,
            // JsonLogic in miniature: text keys, numbers, lists.
            when: fc.oneof(
              fc.boolean(),
              fc.record({ '<': fc.tuple(fc.record({ var: fc.constant('night.lowC') }), decimal(-10, 10)) }),
            ),
            after: fc.subarray(ruleIds.filter((one) => one !== id)),
            durationMin: int(0, 60),
            enabled: fc.boolean(),
          }),
        ),
      ),
      switchedOffRuleIds: fc.uniqueArray(fc.constantFrom('covers', 'chocks', 'plug-in'), { maxLength: 2 }),
      ticks: fc.uniqueArray(
        joined(
          fc.record({
            stepKey: label,
            state: fc.constantFrom('done' as const, 'skipped' as const),
            atUtc: int(0, 2_000_000_000),
          }),
          maybe('reason', note),
        ),
        { maxLength: 4, selector: (tick) => tick.stepKey },
      ),
      lessons: fc.tuple(
        ...ids('lesson', lessons).map((id) =>
          joined(
            fc.record({ id: fc.constant(id), text: note }),
            joined(
              maybe('nightId', fc.constantFrom(...names.nightIds)),
              ruleIds.length === 0 ? fc.constant({}) : maybe('ruleId', fc.constantFrom(...ruleIds)),
            ),
          ),
        ),
      ),
    })
  })

const measuredOf = (names: Names): fc.Arbitrary<Measured[]> =>
  fc.array(
    joined(
      fc.record({
        nightId: fc.constantFrom(...names.nightIds),
        moment: fc.constantFrom('at-the-post' as const, 'bedtime' as const, 'morning' as const),
        clock,
      }),
      joined(maybe('volts', decimal(90, 250)), maybe('charge01', decimal(0, 1))),
    ),
    { maxLength: 3 },
  )

const ledgerOf = (names: Names, count: number): fc.Arbitrary<LedgerEntry[]> =>
  fc.tuple(
    ...ids('paid', count).map((id) =>
      joined(
        fc.record({
          id: fc.constant(id),
          date: int(1, 28).map((day) => dateOf(day, 0)),
          kind: fc.constantFrom('site' as const, 'charging' as const, 'food' as const),
          label,
          amountCents: int(-5000, 50_000),
        }),
        joined(
          maybe('nightId', fc.constantFrom(...names.nightIds)),
          maybe('paidByTravellerId', fc.constantFrom(...names.travellerIds)),
        ),
      ),
    ),
  )

function tripOf(shape: Shape): fc.Arbitrary<Trip> {
  const loose = ids('piece', shape.pieces)
  const names: Names = {
    pieceIds: [...loose, 'cover', 'mattress'],
    beddingIds: ['cover'],
    mattressId: 'mattress',
    binIds: ids('bin', shape.bins),
    bayIds: ids('bay', shape.bays),
    nightIds: ids('night', shape.nights),
    travellerIds: ids('traveller', shape.travellers),
  }
  const heaterIds = ids('heater', shape.heaters)
  return joined(
    fc.record({
      format: fc.constant(FORMAT_NAME),
      version: fc.constant(FORMAT_VERSION),
      title: label,
      preferences: fc.record({
        units: fc.constantFrom('metric' as const, 'us' as const),
        language: fc.constantFrom('en' as const, 'de' as const),
        currency: fc.constantFrom('EUR', 'USD', 'CHF'),
        paper: fc.constantFrom('a4' as const, 'letter' as const),
      }),
      vehicle: arbitraryVehicle(names.bayIds, heaterIds, ['mattress']),
      travellers: fc.tuple(
        ...names.travellerIds.map((id, index) =>
          fc.record({
            id: fc.constant(id),
            label,
            heightMm: int(1400, 2050),
            massG: int(40_000, 130_000),
            drives: index === 0 ? fc.constant(true) : fc.boolean(),
            sleeps: fc.constantFrom('cold' as const, 'average' as const, 'warm' as const),
            sleepwearClo: decimal(0, 2),
          }),
        ),
      ),
      kit: arbitraryKit(names),
      nights: int(1, 25).chain((day) =>
        fc.tuple(...names.nightIds.map((id, index) => arbitraryNight(id, dateOf(day, index), names, heaterIds))),
      ),
      checklist: checklistOf(names),
      measured: measuredOf(names),
      ledger: int(0, 2).chain((count) => ledgerOf(names, count)),
    }),
    maybe('note', note),
  )
}

/** A random valid trip. Pass bounds for larger ones. */
export const arbitraryTrip = (bounds: TripBounds = USUAL): fc.Arbitrary<Trip> => shapeWithin(bounds).chain(tripOf)
