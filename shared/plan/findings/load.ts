/** The load: what found no place and why, limits passed, cautions about restraint and fuel. */
import type { Trip } from '../../document/index.ts'
import type { PackFault, PackingOutcome, Unplaced } from '../../packing/index.ts'
import type { Finding } from '../types.ts'
import { finding } from './finding.ts'

/** Names under which fuel and gas are packed, English and German, common practice. */
const FUEL_NAMES =
  /\b(petrol|gasoline|diesel|kerosene|paraffin|propane|butane|white gas|gas (can|canister|cartridge|bottle|cylinder)|fuel|methylated)\b|benzin|kraftstoff|petroleum|spiritus|propan|butan|gaskartusche|gasflasche|brennstoff/i

/** What is called fuel and not marked so would be packed beside the sleepers. */
const unmarkedFuel = (trip: Trip): readonly Finding[] =>
  trip.kit.pieces.flatMap(({ id, name, spare, traits }, index) =>
    spare || traits.fuel === true || !FUEL_NAMES.test(name)
      ? []
      : [
          finding(
            { area: 'load', nightId: null, path: ['kit', 'pieces', index, 'traits', 'fuel'] },
            'caution',
            'name-sounds-like-fuel',
            { piece: name },
            id,
          ),
        ],
  )

export function loadFindings(trip: Trip, packing: PackingOutcome): readonly Finding[] {
  const kit = { area: 'load', nightId: null, path: ['kit'] } as const
  const nameOf = unitNames(trip)
  const unplaced = (one: Unplaced): Finding => {
    const rules = [...new Set(one.why.map(({ rule }) => rule))]
    return finding(
      { ...kit, nightId: one.nightId, path: pathOf(trip, one.unitId) },
      'shortfall',
      one.layout === 'drive' ? 'no-place-by-day' : 'no-place-at-night',
      { unit: nameOf(one.unitId), rules },
      one.unitId,
    )
  }
  return [
    ...unmarkedFuel(trip),
    ...packing.driveUnplaced.map(unplaced),
    ...packing.nights.flatMap((night) => night.unplaced.map(unplaced)),
    ...packing.faults.map((fault) => limitFinding(trip, fault)),
    ...packing.nights.flatMap((night) =>
      night.changeover.stuckUnitIds.map((unitId) =>
        finding({ ...kit, nightId: night.nightId }, 'shortfall', 'changeover-stuck', { unit: nameOf(unitId) }, unitId),
      ),
    ),
    ...packing.cautions.map((caution) =>
      finding(
        { ...kit, path: pathOf(trip, caution.unitId) },
        'caution',
        `load-${caution.code}`,
        {
          unit: nameOf(caution.unitId),
          bay: bayName(trip, caution.bayId),
          ...(caution.forceKn === null ? {} : { lowKn: caution.forceKn[0], highKn: caution.forceKn[1] }),
        },
        caution.unitId,
      ),
    ),
  ]
}

/** A limit passed. Something wanted at once that has others before it is a nuisance, not a fault of the load. */
function limitFinding(trip: Trip, fault: PackFault): Finding {
  const source = { area: 'load', nightId: null, path: ['kit'] } as const
  const bay = bayName(trip, fault.bayId)
  if (fault.rule === 'reach') {
    const params = { unit: unitNames(trip)(fault.unitId ?? ''), bay, count: fault.amount }
    return finding(
      { ...source, nightId: fault.nightId },
      'caution',
      fault.amount > 0 ? 'over-reach' : 'out-of-reach',
      params,
      fault.unitId ?? '',
    )
  }
  const params = { amountG: fault.amount, limitG: fault.limit, overG: fault.amount - fault.limit, bay }
  return finding(source, 'shortfall', `over-${fault.rule}`, params, fault.bayId ?? '')
}

export function unitNames(trip: Trip): (unitId: string) => string {
  const names = new Map<string, string>([...trip.kit.pieces, ...trip.kit.bins].map((thing) => [thing.id, thing.name]))
  return (unitId) => names.get(unitId) ?? unitId
}

const bayName = (trip: Trip, bayId: string | null): string =>
  trip.vehicle.bays.find((bay) => bay.id === bayId)?.name ?? bayId ?? ''

function pathOf(trip: Trip, unitId: string): readonly (string | number)[] {
  const piece = trip.kit.pieces.findIndex(({ id }) => id === unitId)
  if (piece >= 0) return ['kit', 'pieces', piece]
  const bin = trip.kit.bins.findIndex(({ id }) => id === unitId)
  return bin >= 0 ? ['kit', 'bins', bin] : ['kit']
}
