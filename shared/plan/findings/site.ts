/** The gate questions: may one sleep in this vehicle here, charge from the post, and what the rules ask for. */
import type { Night, Trip } from '../../document/index.ts'
import type { Finding, PitchAdvice } from '../types.ts'
import { lineSystemOf } from '../inputs/line-system.ts'
import { finding } from './finding.ts'

export function siteFindings(trip: Trip, night: Night, index: number, pitch: PitchAdvice): readonly Finding[] {
  const { rules } = night
  const source = { area: 'site', nightId: night.id, path: ['nights', index, 'rules'] } as const
  const found: Finding[] = []
  if (rules.sleepInVehicle === 'no')
    found.push(finding(source, 'shortfall', 'sleeping-not-allowed', { site: night.site.name }))
  if (rules.sleepInVehicle === 'not-known')
    found.push(finding(source, 'caution', 'ask-about-sleeping', { site: night.site.name }))
  const charges = night.hookup !== undefined && trip.vehicle.battery !== undefined
  if (charges && rules.chargeFromPost === 'no')
    found.push(finding(source, 'caution', 'charging-not-allowed', { site: night.site.name }))
  if (charges && rules.chargeFromPost === 'not-known')
    found.push(finding(source, 'caution', 'ask-about-charging', { site: night.site.name }))
  if (
    rules.foodLockerRequired &&
    rules.foodLockerMm === undefined &&
    !trip.vehicle.bays.some((bay) => bay.kind === 'locker')
  ) {
    found.push(finding(source, 'shortfall', 'food-locker-missing', { site: night.site.name }))
  }
  const { hookup } = night
  if (hookup?.adapterPieceId !== undefined) {
    const adapter = trip.kit.pieces.find((piece) => piece.id === hookup.adapterPieceId)
    if (adapter === undefined || adapter.spare) {
      const path = ['nights', index, 'hookup', 'adapterPieceId'] as const
      found.push(
        finding({ ...source, path }, 'shortfall', 'adapter-not-on-board', {
          adapter: adapter?.name ?? hookup.adapterPieceId,
          site: night.site.name,
        }),
      )
    }
  }
  // Whatever the plan reckons, those who answer for the post decide: said wherever a current is planned.
  if (hookup !== undefined) {
    const path = ['nights', index, 'hookup'] as const
    found.push(finding({ ...source, path }, 'caution', 'site-and-codes-decide'))
  }
  if (hookup !== undefined && lineSystemOf(hookup) === 'not-known') {
    const path = ['nights', index, 'hookup', 'lineSystem'] as const
    found.push(finding({ ...source, path }, 'note', 'line-system-not-known', { site: night.site.name }))
  }
  if (pitch.leadReaches === false) {
    const extension = extensionName(trip, night)
    found.push(
      finding(
        { ...source, path: ['nights', index, 'pitch'] },
        'caution',
        extension === '' ? 'lead-too-short' : 'lead-wants-extension',
        { runMm: night.pitch.cableRunMm, ...(extension === '' ? {} : { extension }) },
      ),
    )
  }
  if (pitch.headUphill === false) {
    found.push(
      finding({ ...source, path: ['nights', index, 'pitch'] }, 'caution', 'head-low', {
        riseMm: pitch.riseOverBedMm,
        rampMm: pitch.rampMm,
      }),
    )
  }
  return found
}

const extensionName = (trip: Trip, night: Night): string =>
  trip.kit.pieces.find((piece) => piece.id === night.hookup?.extensionPieceId)?.name ?? ''
