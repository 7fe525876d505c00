/** That every value a trip can hold can be entered in the window, and that no form asks for one that a trip does not have. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { binParts, pieceParts, roomFields } from '../../../renderer/features/kit/piece-fields.ts'
import { homeParts } from '../../../renderer/features/trip/home-fields.ts'
import { hookupParts } from '../../../renderer/features/trip/hookup-fields.ts'
import {
  morningParts,
  pitchParts,
  ruleParts,
  siteParts,
  warmthParts,
  weatherParts,
} from '../../../renderer/features/trip/night-fields.ts'
import { ledgerRows, measuredRows } from '../../../renderer/features/trip/record-fields.ts'
import { travellerRows, tripParts } from '../../../renderer/features/trip/traveller-fields.ts'
import { bayParts } from '../../../renderer/features/vehicle/bay-fields.ts'
import { bedParts, energyParts, heatParts, lossFields, massParts } from '../../../renderer/features/vehicle/fields.ts'
import { fieldsPart } from '../../../renderer/ui/field-spec.ts'
import type { FormPart, FormValue } from '../../../renderer/ui/field-spec.ts'
import { applyEdit, parseTrip, tripSchema } from '../../../shared/document/index.ts'
import type { Edit, Hookup, Trip } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import { createText } from '../../../shared/text/index.ts'

const text = createText('en', 'metric')
const parsed = parseTrip(readFileSync('assets/samples/bats-by-the-quarry.trip.json'))
if (!parsed.ok) throw new Error('the sample does not parse')
const trip = parsed.value

/** Values that a part of the window other than a form takes, and which. */
const ELSEWHERE: readonly (readonly [RegExp, string])[] = [
  [/^(format|version)$/, 'the program'],
  [/^preferences\.(units|language|paper|currency)$/, 'preferences dialog'],
  [/(^|\.)id$/, 'the program'],
  [/^measured\.\*\.nightId$/, 'the night whose sheet is open'],
  [/^kit\.pieces\.\*\.(name|sizeMm\.\*|massG|atNight|binId)$/, 'the kit table'],
  [/^kit\.(pieces|bins)\.\*\.locks\./, 'dragging and locking in the load drawing'],
  [/^nights\.\*\.beddingPieceIds\.\*$/, 'choice of bedding'],
  [/^nights\.\*\.weather\.hours\./, 'weather import'],
  [/^nights\.\*\.leg\.acceptedStopsM\.\*$/, 'taking the remedy that proposes the stops'],
  [/^checklist\./, 'checklist view: ticks, lessons, rules'],
]

const generic = (path: DocumentPath): string => path.map((key) => (typeof key === 'number' ? '*' : key)).join('.')

/** Every place of the schema that holds a single value. */
type Shape = {
  readonly def: { readonly type: string }
  readonly shape?: Readonly<Record<string, Shape>>
  readonly element?: Shape
  readonly options?: readonly Shape[]
  readonly unwrap?: () => Shape
}
function leaves(schema: Shape, path: string): readonly string[] {
  const inside = (key: string): string => (path === '' ? key : `${path}.${key}`)
  switch (schema.def.type) {
    case 'optional':
    case 'nullable':
      return leaves(schema.unwrap?.() ?? schema, path)
    case 'object':
      return Object.entries(schema.shape ?? {}).flatMap(([key, field]) => leaves(field, inside(key)))
    case 'array':
      return schema.element === undefined ? [] : leaves(schema.element, inside('*'))
    case 'tuple':
      return [inside('*')]
    case 'union':
      return (schema.options ?? []).flatMap((option) => leaves(option, path))
    default:
      return [path]
  }
}

function pathsOf(parts: readonly FormPart[]): readonly string[] {
  return parts.flatMap((part) => {
    if (part.kind === 'group') return pathsOf(part.parts)
    if (part.kind === 'rows') return pathsOf(part.partsOf(0))
    return part.fields.map(({ kind, path }) =>
      kind === 'set' || kind === 'lines' ? `${generic(path)}.*` : generic(path),
    )
  })
}

/** All forms of the window over the first element of every list; a post of each kind that asks for something of its own. */
function allParts(): readonly FormPart[] {
  const [night] = trip.nights
  const plain = trip.kit.pieces.findIndex(({ bedding }) => bedding === undefined)
  const piece = trip.kit.pieces[plain]
  const [bay] = trip.vehicle.bays
  if (night?.hookup === undefined || piece === undefined || bay === undefined) throw new Error('the sample lost a part')
  const adapter = { ...piece, purpose: 'adapter' } as const
  const post = (connector: Hookup['connector']): readonly FormPart[] => {
    const hookup: Hookup = { ...(night.hookup ?? HOOKUP), connector, tariff: { kind: 'per-kwh', price: 0.4 } }
    return hookupParts(0, { ...night, hookup }, [adapter], text)
  }
  return [
    ...massParts(trip.vehicle, text),
    ...bayParts(bay, 0, text),
    ...bedParts(text, trip.kit.pieces),
    ...heatParts(text),
    fieldsPart(lossFields()),
    ...energyParts(text),
    ...siteParts(0),
    ...ruleParts(0, text),
    ...pitchParts(0, text),
    ...weatherParts(0),
    ...post('nema-14-50'),
    ...post('other'),
    ...warmthParts(0, [{ id: 'blanket', name: 'blanket', kind: 'underblanket', powerW: 60 }]),
    ...morningParts(0, true, true, text),
    measuredRows(night, text),
    ...tripParts(),
    ...homeParts(trip.nights),
    travellerRows(text),
    ledgerRows(trip, text),
    ...pieceParts(piece, plain, trip, text),
    ...binParts(0, text),
    fieldsPart(roomFields()),
  ]
}

const HOOKUP: Hookup = {
  connector: 'other',
  nominalV: 230,
  breakerA: 10,
  readings: [],
  earthOk: 'not-known',
  polarityReversed: 'not-known',
  resetReachable: 'not-known',
  plugIn: '17:00',
  unplug: '06:00',
  otherLoadW: 0,
  tariff: { kind: 'not-known' },
}

describe('the forms of the window', () => {
  const held = new Set(leaves(tripSchema as unknown as Shape, ''))
  const asked = new Set(pathsOf(allParts()))

  it('ask for every value that a trip can hold and nothing else in the window takes', () => {
    expect(held.size).toBeGreaterThan(250)
    const forgotten = [...held].filter((path) => !asked.has(path) && !ELSEWHERE.some(([taken]) => taken.test(path)))
    expect(forgotten).toEqual([])
  })

  it('ask for nothing that a trip does not have', () => {
    expect([...asked].filter((path) => !held.has(path))).toEqual([])
  })

  it.each(ELSEWHERE)('leave %s to: %s', (taken) => {
    expect([...held].some((path) => taken.test(path))).toBe(true)
    expect([...asked].filter((path) => taken.test(path))).toEqual([])
  })

  it('begin each group and each new row with values that the trip takes', () => {
    const roomy = withRoom(trip)
    const refused = starts(allParts()).flatMap(({ path, value, list: isList }) => {
      const rows = valueAt(roomy, path)
      const list: readonly FormValue[] = Array.isArray(rows) ? rows : []
      const edit: Edit = { kind: 'set-value', path, value: isList ? [...list, value(list)] : value([]) }
      const made = applyEdit(roomy, edit)
      return made.ok ? [] : [`${generic(path)}: ${text.problem(made.problem)}`]
    })
    expect(refused).toEqual([])
  })
})

type Start = {
  readonly path: DocumentPath
  readonly list: boolean
  readonly value: (rows: readonly unknown[]) => FormValue
}

const starts = (parts: readonly FormPart[]): readonly Start[] =>
  parts.flatMap((part): readonly Start[] => {
    if (part.kind === 'fields') return []
    if (part.kind === 'group')
      return [{ path: part.path, list: false, value: () => part.initial }, ...starts(part.parts)]
    return [{ path: part.path, list: true, value: part.initial }]
  })

const valueAt = (value: unknown, path: DocumentPath): unknown =>
  path.reduce<unknown>(
    (inside, key) => (typeof inside === 'object' && inside !== null ? Reflect.get(inside, key) : undefined),
    value,
  )

/** A trip in which every group that holds other groups is there. */
function withRoom(of: Trip): Trip {
  const [first, ...others] = of.nights
  if (first === undefined) return of
  const leg = first.leg ?? { distanceM: 100_000, fastChargers: [] }
  const night = { ...first, leg, hookup: first.hookup ?? HOOKUP }
  const charging = of.vehicle.charging ?? { efficiency01: 0.9, overheadW: 250, minimumA: 6, maximumA: 16 }
  return { ...of, nights: [night, ...others], vehicle: { ...of.vehicle, charging } }
}
