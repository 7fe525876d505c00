/** The post's form as data: what is marked on it, what was read at it, what is plugged between, and what it costs. */
import { CHOICES } from '../../../shared/document/index.ts'
import type { Hookup, JsonValue, Night, Piece } from '../../../shared/document/index.ts'
import { hasTwoHotPoles } from '../../../shared/plan/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { choicesFrom, fieldsPart, measure } from '../../ui/field-spec.ts'
import type { FieldSpec, FormPart } from '../../ui/field-spec.ts'
import { atNight, yesNoChoices } from './night-fields.ts'
import type { At } from './night-fields.ts'

const MOST_READINGS = 20
const optional = { optional: true } as const

export function hookupParts(index: number, night: Night, pieces: readonly Piece[], text: Text): readonly FormPart[] {
  const at = atNight(index)
  const us = text.units === 'us'
  return [
    {
      kind: 'group',
      path: at('hookup'),
      title: 'path.hookup',
      initial: {
        connector: us ? 'nema-tt-30' : 'iec-60309-16-blue',
        nominalV: us ? 120 : 230,
        breakerA: us ? 30 : 10,
        readings: [],
        earthOk: 'not-known',
        polarityReversed: 'not-known',
        resetReachable: 'not-known',
        plugIn: night.arrive,
        unplug: night.sleep.to,
        otherLoadW: 0,
        tariff: { kind: 'not-known' },
      },
      parts: [
        fieldsPart([
          ...markedFields(at, night.hookup?.connector, text),
          ...checkedFields(at, text),
          ...betweenFields(at, pieces),
          ...tariffFields(at, night.hookup?.tariff, text),
        ]),
        readingRows(at, night.hookup),
      ],
    },
  ]
}

const markedFields = (at: At, connector: string | undefined, text: Text): readonly FieldSpec[] => [
  {
    kind: 'choice',
    path: at('hookup', 'connector'),
    label: 'path.connector',
    wide: true,
    choices: choicesFrom(CHOICES.connectors, (word) => text.t(`window.connector.${word}`)),
  },
  ...(connector === 'other'
    ? [{ kind: 'text', path: at('hookup', 'connectorNote'), label: 'path.connectorNote', optional: true } as const]
    : []),
  measure('voltage', at('hookup', 'nominalV'), 'path.nominalV'),
  measure('current', at('hookup', 'breakerA'), 'path.breakerA'),
  ...(connector !== undefined && hasTwoHotPoles(connector) ? lineFields(at, text) : []),
  measure('current', at('hookup', 'siteLimitA'), 'path.siteLimitA', optional),
  measure('current', at('hookup', 'leadLimitA'), 'path.leadLimitA', optional),
  measure('current', at('hookup', 'adapterLimitA'), 'path.adapterLimitA', optional),
  measure('current', at('hookup', 'chargingUnitLimitA'), 'path.chargingUnitLimitA', optional),
  measure('current', at('hookup', 'heldA'), 'path.heldA', { optional: true, note: 'window.note.heldA' }),
  { kind: 'clock', path: at('hookup', 'plugIn'), label: 'path.plugIn' },
  { kind: 'clock', path: at('hookup', 'unplug'), label: 'path.unplug' },
]

const lineFields = (at: At, text: Text): readonly FieldSpec[] => [
  measure('voltage', at('hookup', 'lineToLineV'), 'path.lineToLineV', {
    optional: true,
    note: 'window.note.lineSystem',
  }),
  measure('voltage', at('hookup', 'lineToNeutralV'), 'path.lineToNeutralV', optional),
  {
    kind: 'choice',
    path: at('hookup', 'lineSystem'),
    label: 'path.lineSystem',
    choices: choicesFrom(CHOICES.lineSystems, (word) => text.t(`window.lineSystem.${word}`)),
  },
]

const checkedFields = (at: At, text: Text): readonly FieldSpec[] => [
  ...(['earthOk', 'polarityReversed', 'resetReachable'] as const).map((name): FieldSpec => ({
    kind: 'choice',
    path: at('hookup', name),
    label: `path.${name}`,
    choices: yesNoChoices(text),
  })),
  measure('power', at('hookup', 'otherLoadW'), 'path.otherLoadW'),
]

const BETWEEN: ReadonlySet<Piece['purpose']> = new Set(['adapter', 'lead', 'charging-unit'])

function betweenFields(at: At, pieces: readonly Piece[]): readonly FieldSpec[] {
  const choices = pieces
    .filter(({ purpose }) => BETWEEN.has(purpose))
    .map(({ id, name }) => ({ value: id, label: name }))
  if (choices.length === 0) return []
  return (['adapterPieceId', 'extensionPieceId'] as const).map((name) => ({
    kind: 'choice',
    path: at('hookup', name),
    label: `path.${name}`,
    optional: true,
    choices,
  }))
}

type Tariff = Hookup['tariff']
const TARIFFS = ['not-known', 'included', 'per-night', 'per-kwh'] as const
const FIRST_PRICE: Readonly<Record<string, number>> = { 'per-night': 5, 'per-kwh': 0.4 }

const tariffFields = (at: At, tariff: Tariff | undefined, text: Text): readonly FieldSpec[] => [
  {
    kind: 'choice',
    path: at('hookup', 'tariff', 'kind'),
    label: 'path.tariff',
    choices: choicesFrom(TARIFFS, (word) => text.t(`window.tariff.${word}`)),
    writes: { path: at('hookup', 'tariff'), valueOf: tariffOf },
  },
  ...(tariff !== undefined && 'price' in tariff
    ? [{ kind: 'number', path: at('hookup', 'tariff', 'price'), label: 'path.price' } as const]
    : []),
  { kind: 'text', path: at('hookup', 'event'), label: 'path.event', optional: true, wide: true },
]

function tariffOf(kind: string): JsonValue {
  const price = FIRST_PRICE[kind]
  return price === undefined ? { kind } : { kind, price }
}

const readingRows = (at: At, hookup: Hookup | undefined): FormPart => ({
  kind: 'rows',
  path: at('hookup', 'readings'),
  title: 'window.night.readings',
  hint: 'window.night.readingsHint',
  one: 'what.measurement',
  most: MOST_READINGS,
  initial: (rows) => {
    const last = rows.at(-1) as Hookup['readings'][number] | undefined
    return last === undefined
      ? { currentA: 0, volts: hookup?.nominalV ?? 0 }
      : { currentA: last.currentA + 1, volts: last.volts }
  },
  partsOf: (row) => [
    fieldsPart([
      measure('current', at('hookup', 'readings', row, 'currentA'), 'path.currentA'),
      measure('voltage', at('hookup', 'readings', row, 'volts'), 'path.volts'),
    ]),
  ],
})
