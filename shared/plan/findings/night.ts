/** The night: who is cold and when, what the supply does, what the air is like, and whether the next leg can be driven. */
import type { Night, Trip } from '../../document/index.ts'
import { PILOT_MINIMUM_A } from '../../climate/index.ts'
import type { NightOutcome } from '../../climate/index.ts'
import type { ProblemParams } from '../../result/index.ts'
import type { Finding, NightPlan } from '../types.ts'
import { finding } from './finding.ts'

export function nightFindings(trip: Trip, night: Night, index: number, plan: NightPlan): readonly Finding[] {
  const { outcome, clock } = plan
  const source = { area: 'night', nightId: night.id, path: ['nights', index, 'heating'] } as const
  const { zone } = clock
  const found: Finding[] = []
  for (const sleeper of outcome.sleepers) {
    const traveller = trip.travellers.find(({ id }) => id === sleeper.sleeperId)?.label ?? sleeper.sleeperId
    const bedding = { ...source, path: ['nights', index, 'beddingPieceIds'] }
    if (sleeper.verdict === 'cold' || sleeper.verdict === 'too-cold') {
      const params = {
        traveller,
        shortK: -sleeper.marginK,
        coldestC: sleeper.coldestOperativeC,
        zone,
        fromUtc: sleeper.coldFromUtc ?? outcome.coldestBedUtc,
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
          { traveller, shortK: -sleeper.marginK, coldestC: sleeper.coldestOperativeC },
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
          { traveller, zone, fromUtc: sleeper.feetColdFromUtc, feetC: sleeper.coldestFeetC },
          sleeper.sleeperId,
        ),
      )
    }
  }
  for (const caution of outcome.cautions) {
    const severity = fallsShort(caution, outcome) ? 'shortfall' : 'caution'
    const params = { zone, atUtc: caution.atUtc ?? clock.bedtimeUtc, ...cautionValue(caution, plan) }
    found.push(finding({ ...source, path: ['nights', index, 'hookup'] }, severity, `night-${caution.code}`, params))
  }
  found.push(...legFindings(night, index, plan))
  return found
}

/** Carbon dioxide that nobody may work in for eight hours, ppm (Directive 2006/15/EC): not to be slept in either. */
const CO2_MOST_PPM = 5000

function fallsShort({ code }: NightOutcome['cautions'][number], { co2MaxPpm }: NightOutcome): boolean {
  return code === 'sag-stop' || code === 'earth-missing' || (code === 'co2-high' && co2MaxPpm > CO2_MOST_PPM)
}

/** A caution's number under the name that carries its unit. */
function cautionValue({ code, value }: NightOutcome['cautions'][number], { input, outcome }: NightPlan): ProblemParams {
  if (value === null) return {}
  switch (code) {
    case 'co2-high':
    case 'no-fresh-air':
      return { co2Ppm: outcome.co2MaxPpm }
    case 'sag-step-down':
    case 'sag-stop':
      return { lowV: value }
    case 'cold-illness':
    case 'heat-illness':
      return { tempC: value }
    case 'below-minimum-current':
      return { allowedA: value, limitA: Math.max(PILOT_MINIMUM_A, input.supply?.minimumA ?? 0) }
    case 'domestic-socket':
    case 'adapter':
    case 'extension-lead':
      return { limitA: value }
    case 'shared-wiring':
      return { sag01: value }
    default:
      return { value }
  }
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
  const agreed = leg.stops.every(({ atM }) => night.leg?.acceptedStopsM?.includes(atM) === true)
  return [
    finding(source, agreed ? 'note' : 'caution', 'leg-needs-stop', {
      atM: stop.atM,
      charger: stop.name === null ? '' : `, ${stop.name}`,
      energyWh: stop.energyWh,
      durationS: stop.durationS,
      shortWh: Math.max(0, -leg.marginWh),
      depart01,
    }),
  ]
}
