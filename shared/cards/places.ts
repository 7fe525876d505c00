/** Where a unit is, in words: "load bay, rear left, on 3 Food crate". */
import type { Text } from '../text/index.ts'
import { restsOn } from './layers.ts'
import type { Names } from './names.ts'
import type { AwayPlace, Layout, Placement } from './plan-parts.ts'

export function placeWords(unitId: string, layout: Layout, names: Names, text: Text): string {
  const placement = layout.placements.find((one) => one.unitId === unitId)
  if (placement !== undefined) return placementWords(placement, layout.placements, names, text)
  const away = layout.away.find((one) => one.unitId === unitId)
  return away === undefined ? text.t('cards.place.nowhere') : text.t(`cards.away.${away.state}`)
}

export function placementWords(
  place: Placement | AwayPlace,
  all: readonly Placement[],
  names: Names,
  text: Text,
): string {
  if ('state' in place) return text.t(`cards.away.${place.state}`)
  const bay = names.bayOf(place.bayId)
  const parts = [names.bay(place.bayId)]
  if (bay !== null) {
    const where = [side(place, bay.sizeMm, 0, text), side(place, bay.sizeMm, 1, text)].filter((word) => word !== '')
    if (where.length > 0) parts.push(where.join(' '))
  }
  const below = restsOn(
    place,
    all.filter((other) => other.unitId !== place.unitId),
  )
  if (below.length > 0) {
    const what = text.list(below.map((unit) => `${names.number(unit.unitId)} ${names.unit(unit.unitId)}`))
    parts.push(text.t('cards.place.on', { what }))
  } else if (place.atMm[2] > 0) parts.push(text.t('cards.place.raised', { heightMm: place.atMm[2] }))
  return parts.join(', ')
}

/** A unit that fills most of an axis has no side on it. */
const FILLS = 0.75
const REAR_OR_LEFT = 0.4
const FRONT_OR_RIGHT = 0.6

function side(place: Placement, baySizeMm: readonly [number, number, number], axis: 0 | 1, text: Text): string {
  const length = baySizeMm[axis]
  if (place.sizeMm[axis] >= FILLS * length) return ''
  const centre = (place.atMm[axis] + place.sizeMm[axis] / 2) / length
  const at = centre < REAR_OR_LEFT ? 'low' : centre > FRONT_OR_RIGHT ? 'high' : 'middle'
  return text.t(`cards.place.${axis === 0 ? 'x' : 'y'}.${at}`)
}
