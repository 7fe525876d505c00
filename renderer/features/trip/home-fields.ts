/** The form of the clocks at home: leaving before the first night, back after the last. */
import { nextDate } from '../../../shared/units/index.ts'
import type { LocalDate } from '../../../shared/units/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import { fieldsPart } from '../../ui/field-spec.ts'
import type { FormPart } from '../../ui/field-spec.ts'

export function homeParts(nights: Trip['nights']): readonly FormPart[] {
  const [first, last] = [nights[0], nights.at(-1)]
  if (first === undefined || last === undefined) return []
  return [
    homeClock('leaveHome', { date: first.date, clock: '09:00', zone: first.site.zone }),
    homeClock('backHome', { date: nextDate(last.date as LocalDate), clock: '18:00', zone: last.site.zone }),
  ]
}

const homeClock = (
  name: 'leaveHome' | 'backHome',
  initial: { readonly date: string; readonly clock: string; readonly zone: string },
): FormPart => ({
  kind: 'group',
  path: [name],
  title: `path.${name}`,
  initial,
  parts: [
    fieldsPart([
      { kind: 'text', path: [name, 'date'], label: 'path.date' },
      { kind: 'clock', path: [name, 'clock'], label: 'path.clock' },
      { kind: 'text', path: [name, 'zone'], label: 'path.zone' },
    ]),
  ],
})
