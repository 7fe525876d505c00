/** Stores that will not last: named on the night that falls short, so that the day before can mend it. */
import type { Trip } from '../../document/index.ts'
import type { Finding, NightStores } from '../types.ts'
import { finding } from './finding.ts'

const MM3_PER_ML = 1000

/** `index` is the night's place in the trip; the first night falls short at home, the others at the site before. */
export function storesFindings(trip: Trip, index: number, stores: NightStores): readonly Finding[] {
  const source = { area: 'load', nightId: stores.nightId, path: ['nights', index] } as const
  const before = trip.nights[index - 1]?.site.name
  const short = (code: string, params: Record<string, number>): Finding =>
    before === undefined
      ? finding(source, 'caution', `${code}-from-home`, params)
      : finding(source, 'caution', code, { ...params, site: before })
  return [
    ...(stores.waterShortMl > 0 ? [short('water-short', { shortMm3: stores.waterShortMl * MM3_PER_ML })] : []),
    ...(stores.foodShortG > 0 ? [short('food-short', { shortG: stores.foodShortG })] : []),
  ]
}
