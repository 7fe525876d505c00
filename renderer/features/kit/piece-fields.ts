/** What a line of the kit table has no room for, as data: a piece's own form and a bin's. */
import { CHOICES } from '../../../shared/document/index.ts'
import type { Piece, Trip } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { choicesFrom, fieldsPart, length, measure, sizeFields } from '../../ui/field-spec.ts'
import type { FieldSpec, FormPart } from '../../ui/field-spec.ts'
import { FLAGS } from './flags.ts'

type At = (...rest: DocumentPath) => DocumentPath
const MOST_COMPANIONS = 20
const MOST_OTHER_NIGHTS = 60
const optional = { optional: true } as const

const formChoices = (text: Text) => choicesFrom(CHOICES.forms, (word) => text.t(`window.form.${word}`))

export function pieceParts(piece: Piece, index: number, trip: Trip, text: Text): readonly FormPart[] {
  const at: At = (...rest) => ['kit', 'pieces', index, ...rest]
  return [
    fieldsPart([...whenFields(at, text), ...bodyFields(at, text)]),
    beddingGroup(at, trip, text),
    electricalGroup(at),
    companionRows(piece, at, trip, 'belongsWith'),
    companionRows(piece, at, trip, 'apartFrom'),
    otherNightRows(at, trip, text),
  ]
}

const whenFields = (at: At, text: Text): readonly FieldSpec[] => [
  {
    kind: 'set',
    path: at('access'),
    label: 'window.kit.column.access',
    least: 1,
    choices: choicesFrom(CHOICES.access, (word) => text.t(`window.access.${word}`)),
  },
  {
    kind: 'set',
    path: at('usedIn'),
    label: 'path.usedIn',
    choices: choicesFrom(CHOICES.phases, (word) => text.t(`phase.${word}`)),
  },
  {
    kind: 'set',
    path: at('upright'),
    label: 'path.upright',
    least: 1,
    choices: choicesFrom(CHOICES.edges, (word) => text.t(`window.size.${word}`)),
  },
]

const bodyFields = (at: At, text: Text): readonly FieldSpec[] => [
  {
    kind: 'choice',
    path: at('purpose'),
    label: 'path.purpose',
    choices: choicesFrom(CHOICES.purposes, (word) => text.t(`window.purpose.${word}`)),
  },
  { kind: 'choice', path: at('form'), label: 'path.form', choices: formChoices(text) },
  measure('percent', at('squeezeTo01'), 'path.squeezeTo01', { note: 'window.note.squeeze' }),
  measure('mass', at('bearsG'), 'path.bearsG', optional),
  measure('volume', at('traits', 'liquidMl'), 'path.liquidMl', optional),
  measure('temperature', at('traits', 'freezesBelowC'), 'path.freezesBelowC', optional),
  measure('temperature', at('traits', 'spoilsAboveC'), 'path.spoilsAboveC', optional),
  measure('energy', at('traits', 'lithiumWh'), 'path.lithiumWh', optional),
  { kind: 'text', path: at('note'), label: 'path.note', optional: true, wide: true },
  { kind: 'switch', path: at('spare'), label: 'path.spare' },
  ...FLAGS.map((flag): FieldSpec => ({ kind: 'switch', path: at('traits', flag), label: `path.${flag}` })),
]

const beddingGroup = (at: At, trip: Trip, text: Text): FormPart => ({
  kind: 'group',
  path: at('bedding'),
  title: 'path.bedding',
  initial: { kind: 'blanket' },
  parts: [
    fieldsPart([
      {
        kind: 'choice',
        path: at('bedding', 'kind'),
        label: 'path.kind',
        choices: choicesFrom(CHOICES.beddingKinds, (word) => text.t(`window.beddingKind.${word}`)),
      },
      measure('temperature', at('bedding', 'comfortC'), 'path.comfortC', {
        optional: true,
        note: 'window.note.comfort',
      }),
      { kind: 'number', path: at('bedding', 'clo'), label: 'path.clo', optional: true },
      {
        kind: 'number',
        path: at('bedding', 'matM2KPerW'),
        label: 'path.matM2KPerW',
        optional: true,
        note: 'window.note.mat',
      },
      {
        kind: 'choice',
        path: at('bedding', 'forTravellerId'),
        label: 'path.forTravellerId',
        optional: true,
        choices: trip.travellers.map(({ id, label }) => ({ value: id, label })),
      },
    ]),
  ],
})

const electricalGroup = (at: At): FormPart => ({
  kind: 'group',
  path: at('electrical'),
  title: 'path.electrical',
  initial: {},
  parts: [
    fieldsPart([
      measure('current', at('electrical', 'limitA'), 'path.limitA', optional),
      measure('length', at('electrical', 'lengthMm'), 'path.lengthMm', optional),
      { kind: 'number', path: at('electrical', 'areaMm2'), label: 'path.areaMm2', optional: true },
      { kind: 'lines', path: at('electrical', 'fits'), label: 'path.fits', note: 'window.note.lines' },
    ]),
  ],
})

/** Pieces that ride with this one, or apart from it. */
function companionRows(piece: Piece, at: At, trip: Trip, name: 'belongsWith' | 'apartFrom'): FormPart {
  const others = trip.kit.pieces.filter(({ id }) => id !== piece.id)
  return {
    kind: 'rows',
    path: at(name),
    title: `window.rows.${name}`,
    one: 'what.piece',
    most: Math.min(MOST_COMPANIONS, others.length),
    initial: (rows) => others.find(({ id }) => !rows.includes(id))?.id ?? '',
    partsOf: (row) => [
      fieldsPart([
        {
          kind: 'choice',
          path: at(name, row),
          label: 'what.piece',
          choices: others.map(({ id, name: label }) => ({ value: id, label })),
        },
      ]),
    ],
  }
}

const otherNightRows = (at: At, { nights }: Trip, text: Text): FormPart => ({
  kind: 'rows',
  path: at('atNightOn'),
  title: 'window.rows.otherNights',
  one: 'what.night',
  most: Math.min(MOST_OTHER_NIGHTS, nights.length),
  initial: (rows) => {
    const named = new Set((rows as Piece['atNightOn']).map(({ nightId }) => nightId))
    return { nightId: nights.find(({ id }) => !named.has(id))?.id ?? '', state: 'in-use' }
  },
  partsOf: (row) => [
    fieldsPart([
      {
        kind: 'choice',
        path: at('atNightOn', row, 'nightId'),
        label: 'what.night',
        choices: nights.map(({ id, date, site }) => ({ value: id, label: `${text.date(date)} ${site.name}` })),
      },
      {
        kind: 'choice',
        path: at('atNightOn', row, 'state'),
        label: 'path.atNight',
        choices: choicesFrom(CHOICES.nightStates, (word) => text.t(`window.state.${word}`)),
      },
    ]),
  ],
})

/** A common folding box: 600 × 400 mm as made for pallets (ISO 3394). */
export const plainBin = (id: string, name: string): Trip['kit']['bins'][number] => ({
  id,
  name,
  sizeMm: [600, 400, 300],
  innerMm: [570, 370, 280],
  massG: 2000,
  form: 'rigid',
  squeezeTo01: 1,
  liftLimitG: 15_000,
  lid: true,
  locks: [],
})

export function binParts(index: number, text: Text): readonly FormPart[] {
  const at: At = (...rest) => ['kit', 'bins', index, ...rest]
  return [
    fieldsPart([
      { kind: 'text', path: at('name'), label: 'path.name' },
      ...sizeFields(at('sizeMm')),
      length(at('innerMm', 0), 'window.size.innerLength'),
      length(at('innerMm', 1), 'window.size.innerWidth'),
      length(at('innerMm', 2), 'window.size.innerHeight'),
      measure('mass', at('massG'), 'path.emptyG'),
      measure('mass', at('liftLimitG'), 'path.liftLimitG'),
      measure('mass', at('bearsG'), 'path.bearsG', optional),
      { kind: 'choice', path: at('form'), label: 'path.form', choices: formChoices(text) },
      measure('percent', at('squeezeTo01'), 'path.squeezeTo01', { note: 'window.note.squeeze' }),
      { kind: 'switch', path: at('lid'), label: 'path.lid' },
    ]),
  ]
}

export const roomFields = (): readonly FieldSpec[] => [
  measure('percent', ['kit', 'freeShare01'], 'path.freeShare01', { note: 'window.note.freeShare' }),
]
