/** What found no place: which rule stood against it in each bay, and the smallest change that would place it. */
import { assertNever } from '../result/index.ts'
import type { Text } from '../text/index.ts'
import type { Block, Column } from './model.ts'
import type { Names } from './names.ts'
import { nightsOf } from './plan-parts.ts'
import type { CardInput, Packing } from './plan-parts.ts'

type Unplaced = Packing['driveUnplaced'][number]
/** The user's names of units, bins and pieces, and of bays. */
type Named = { readonly unit: (id: string) => string; readonly bay: (id: string) => string | null }

const EDGES = ['length', 'width', 'height'] as const

export function leftOutBlocks(input: CardInput, names: Names): readonly Block[] {
  const { plan, text } = input
  const byDay = plan.packing.driveUnplaced
  const stays = new Set(byDay.map(({ unitId }) => unitId))
  const atNight = nightsOf(input).flatMap(({ night, packing }) =>
    (packing?.unplaced ?? [])
      .filter(({ unitId }) => !stays.has(unitId))
      .map((one) => rowOf(one, `${text.t('cards.column.night')}, ${text.date(night.date)}`, names, input)),
  )
  const rows = [...byDay.map((one) => rowOf(one, text.t('cards.column.drive'), names, input)), ...atNight]
  if (rows.length === 0) return []
  const columns: readonly Column[] = [
    { title: text.t('cards.column.unit'), share: 22, align: 'left', strong: true },
    { title: text.t('cards.column.when'), share: 14, align: 'left' },
    { title: text.t('cards.column.why'), share: 38, align: 'left' },
    { title: text.t('cards.column.cure'), share: 26, align: 'left', strong: true },
  ]
  return [
    { kind: 'heading', level: 2, text: text.t('cards.load.leftOut') },
    { kind: 'table', columns, rows },
  ]
}

const rowOf = (one: Unplaced, when: string, names: Names, { text }: CardInput): readonly string[] => {
  const named: Named = { unit: names.unit, bay: (id) => (names.bayOf(id) === null ? null : names.bay(id)) }
  return [names.unit(one.unitId), when, sayWhyLeftOut(one, named, text), sayCure(one, named, text)]
}

/** What stood against it in each bay or bin; empty where that was not looked into. */
export const sayWhyLeftOut = ({ why }: Unplaced, names: Named, text: Text): string =>
  why
    .map(({ bayId, rule, shortByMm }) => {
      const short =
        shortByMm === null || shortByMm === 0 ? '' : ` (${text.t('packing.shortBy', { lengthMm: shortByMm })})`
      return `${names.bay(bayId) ?? names.unit(bayId)}: ${text.t(`packing.rule.${rule}`)}${short}`
    })
    .join('; ')

/** The smallest change that places it, or that none was found. */
export function sayCure({ unitId, cure }: Unplaced, names: Named, text: Text): string {
  const unit = names.unit(unitId)
  if (cure === null) return text.t('packing.cure.none')
  switch (cure.kind) {
    case 'turn':
      return text.t(`packing.cure.turn-${EDGES[cure.edge]}`, { unit })
    case 'squeeze':
      return text.t('packing.cure.squeeze', { unit, lengthMm: cure.byMm })
    case 'leave-behind':
      return text.t('packing.cure.leave-behind', { units: text.list(cure.unitIds.map((id) => names.unit(id))) })
    case 'other-bay': {
      const rule = text.t(`packing.rule.${cure.ignoring}`)
      return text.t('packing.cure.other-bay', { unit, bay: names.bay(cure.bayId) ?? cure.bayId, rule })
    }
    case 'other-bin':
      return text.t('packing.cure.other-bin', { unit, bin: names.unit(cure.binId) })
    case 'empty-bin':
      return text.t('packing.cure.empty-bin', { bin: names.unit(cure.binId) })
    default:
      return assertNever(cure)
  }
}
