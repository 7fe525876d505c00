/** The night: who is cold and when, what the supply does, what the air is like, and whether the next leg can be driven. */
import type { Night, Trip } from '../../document/index.ts'
import { formatLocalTime } from '../../units/index.ts'
import type { Utc } from '../../units/index.ts'
import type { Finding, NightPlan } from '../types.ts'
import { finding } from './finding.ts'

export function nightFindings(trip: Trip, night: Night, index: number, plan: NightPlan): readonly Finding[] {
  const { outcome, clock } = plan
  const source = { area: 'night', nightId: night.id, path: ['nights', index, 'heating'] } as const
  const at = (utc: Utc): string => formatLocalTime(utc, clock.zone)
  const found: Finding[] = []
  for (const sleeper of outcome.sleepers) {
    const traveller = trip.travellers.find(({ id }) => id === sleeper.sleeperId)?.label ?? sleeper.sleeperId
    const bedding = { ...source, path: ['nights', index, 'beddingPieceIds'] }
    if (sleeper.verdict === 'cold' || sleeper.verdict === 'too-cold') {
      const params = {
        traveller,
        shortK: -sleeper.marginK,
        coldestC: sleeper.coldestOperativeC,
        from: sleeper.coldFromUtc === null ? '' : at(sleeper.coldFromUtc),
        ruledBy: sleeper.ruledBy,
      }
      found.push(
        finding(
          bedding,
          'shortfall',
          sleeper.ruledBy === 'bag-rating' ? 'too-cold-for-bag' : 'too-cold-for-body',
          params,
          sleeper.sleeperId,
        ),
      )
    } else if (sleeper.verdict === 'cool') {
      found.push(
        finding(
          bedding,
          'caution',
          'cool-sleeper',
          { traveller, marginK: sleeper.marginK, coldestC: sleeper.coldestOperativeC },
          sleeper.sleeperId,
        ),
      )
    }
    if (sleeper.feetColdFromUtc !== null) {
      found.push(
        finding(
          bedding,
          'caution',
          'cold-feet',
          { traveller, from: at(sleeper.feetColdFromUtc), feetC: sleeper.coldestFeetC },
          sleeper.sleeperId,
        ),
      )
    }
  }
  for (const caution of outcome.cautions) {
    const severity = caution.code === 'sag-stop' || caution.code === 'earth-missing' ? 'shortfall' : 'caution'
    const params = { at: caution.atUtc === null ? '' : at(caution.atUtc), value: caution.value ?? 0 }
    found.push(finding({ ...source, path: ['nights', index, 'hookup'] }, severity, `night-${caution.code}`, params))
  }
  found.push(...legFindings(night, index, plan))
  return found
}

function legFindings(night: Night, index: number, plan: NightPlan): Finding[] {
  const { outcome } = plan
  const { leg } = outcome
  const source = { area: 'leg', nightId: night.id, path: ['nights', index, 'leg'] } as const
  if (leg === null) return []
  const depart01 = outcome.depart01 ?? 0
  if (!leg.reachable) {
    return [
      finding(source, 'shortfall', 'leg-too-long', {
        shortWh: -leg.marginWh,
        needWh: leg.needWh,
        reserveWh: leg.reserveWh,
        depart01,
      }),
    ]
  }
  const [stop] = leg.stops
  if (stop === undefined) return []
  return [
    finding(source, 'caution', 'leg-needs-stop', {
      atM: stop.atM,
      charger: stop.name ?? '',
      energyWh: stop.energyWh,
      durationS: stop.durationS,
      shortWh: Math.max(0, -leg.marginWh),
      depart01,
    }),
  ]
}
