/** What is written down on the way, as data: readings of the night itself, and what was paid. */
import { CHOICES, freshId } from '../../../shared/document/index.ts'
import type { LedgerEntry, Measured, Night, Traveller } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { choicesFrom, fieldsPart, measure } from '../../ui/field-spec.ts'
import type { FormPart } from '../../ui/field-spec.ts'

const MOST_MEASURED = 1000
const MOST_ENTRIES = 5000
const optional = { optional: true } as const

/** Readings of one night: the forecast learns from them. */
export const measuredRows = (night: Night, text: Text): FormPart => ({
  kind: 'rows',
  path: ['measured'],
  one: 'what.measurement',
  most: MOST_MEASURED,
  only: (row) => (row as Measured).nightId === night.id,
  initial: (rows) => ({
    nightId: night.id,
    ...(rows.some((row) => (row as Measured).nightId === night.id)
      ? { moment: 'morning', clock: night.sleep.to }
      : { moment: 'bedtime', clock: night.sleep.from }),
  }),
  partsOf: (row) => {
    const at = (name: keyof Measured): DocumentPath => ['measured', row, name]
    return [
      fieldsPart([
        {
          kind: 'choice',
          path: at('moment'),
          label: 'path.moment',
          choices: choicesFrom(CHOICES.moments, (word) => text.t(`window.moment.${word}`)),
        },
        { kind: 'clock', path: at('clock'), label: 'path.clock' },
        measure('percent', at('charge01'), 'path.charge01', optional),
        measure('energy', at('meterWh'), 'path.meterWh', optional),
        measure('energy', at('heatingWh'), 'path.heatingWh', optional),
        measure('temperature', at('meanInsideC'), 'path.meanInsideC', optional),
        measure('temperature', at('lowestInsideC'), 'path.lowestInsideC', optional),
        measure('temperature', at('meanOutsideC'), 'path.meanOutsideC', optional),
        measure('voltage', at('volts'), 'path.volts', optional),
        measure('current', at('currentA'), 'path.currentA', optional),
      ]),
    ]
  },
})

type Payers = { readonly travellers: readonly Traveller[]; readonly nights: readonly Night[] }

export const ledgerRows = ({ travellers, nights }: Payers, text: Text): FormPart => ({
  kind: 'rows',
  path: ['ledger'],
  one: 'window.one.payment',
  most: MOST_ENTRIES,
  initial: (rows) => ({
    id: freshId('paid', rows),
    date: (rows.at(-1) as LedgerEntry | undefined)?.date ?? nights[0]?.date ?? '',
    kind: 'site',
    label: text.t('window.ledger.site'),
    amountCents: 0,
  }),
  partsOf: (row) => {
    const at = (name: keyof LedgerEntry): DocumentPath => ['ledger', row, name]
    return [
      fieldsPart([
        { kind: 'text', path: at('date'), label: 'path.date' },
        {
          kind: 'choice',
          path: at('kind'),
          label: 'path.kind',
          choices: choicesFrom(CHOICES.ledgerKinds, (word) => text.t(`window.ledger.${word}`)),
        },
        { kind: 'text', path: at('label'), label: 'path.label' },
        { kind: 'money', path: at('amountCents'), label: 'path.amountCents' },
        measure('energy', at('energyWh'), 'path.energyWh', optional),
        {
          kind: 'choice',
          path: at('paidByTravellerId'),
          label: 'path.paidByTravellerId',
          optional: true,
          choices: travellers.map(({ id, label }) => ({ value: id, label })),
        },
        {
          kind: 'choice',
          path: at('nightId'),
          label: 'what.night',
          optional: true,
          choices: nights.map(({ id, date, site }) => ({ value: id, label: `${text.date(date)} ${site.name}` })),
        },
      ]),
    ]
  },
})
