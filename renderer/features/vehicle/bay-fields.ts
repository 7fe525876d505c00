/** A bay's form as data: its measures, the ways into it, what stands in it, and how its walls lean. */
import { CHOICES, freshId } from '../../../shared/document/index.ts'
import type { Bay } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { choicesFrom, fieldsPart, length, measure, sizeFields } from '../../ui/field-spec.ts'
import type { FieldSpec, FormPart } from '../../ui/field-spec.ts'

type At = (...rest: DocumentPath) => DocumentPath

const MOST_OPENINGS = 8
const MOST_OBSTACLES = 40
const MOST_SLOPES = 4

/** A plain bay to begin with: half a metre long and wide, lifted into from above. */
export function plainBay(id: string, text: Text): Bay {
  const name = text.t('window.new.bay.cargo')
  return {
    id,
    name,
    kind: 'cargo',
    originMm: [0, 0, 0],
    sizeMm: [500, 500, 400],
    obstacles: [],
    slopes: [],
    openings: [plainOpening(id, [], [500, 500], name)],
    usable: { drive: true, bed: true },
    belongsTo: 'vehicle',
    loadLimitG: 50_000,
    softOnly: false,
    lastResort: false,
    lockable: true,
    heatedAtNight: true,
    sleepingSpace: true,
    closedByBed: false,
    restraint: 'none',
    reachFromBed: false,
    reachFromDriverSeat: false,
  }
}

/** The same bay under another id; its openings get ids of their own, which no two in the vehicle share. */
export const sameBay = (bay: Bay, id: string): Bay => ({
  ...bay,
  id,
  openings: bay.openings.map((opening, index) => ({ ...opening, id: `${id}-opening-${index + 1}` })),
})

const plainOpening = (
  bayId: string,
  others: readonly unknown[],
  toMm: readonly [number, number],
  name: string,
): Bay['openings'][number] => ({
  id: freshId(`${bayId}-opening`, others),
  name,
  face: 'z+',
  fromMm: [0, 0],
  toMm: [toMm[0], toMm[1]],
  door: name,
  opensFromInside: true,
})

export function bayParts(bay: Bay, index: number, text: Text): readonly FormPart[] {
  const at: At = (...rest) => ['vehicle', 'bays', index, ...rest]
  return [fieldsPart(bayFields(at, text)), openingRows(bay, at, text), obstacleRows(bay, at, text), slopeRows(at, text)]
}

const bayFields = (at: At, text: Text): readonly FieldSpec[] => [
  { kind: 'text', path: at('name'), label: 'path.name' },
  {
    kind: 'choice',
    path: at('kind'),
    label: 'path.kind',
    choices: choicesFrom(CHOICES.bayKinds, (word) => text.t(`window.bay.${word}`)),
  },
  {
    kind: 'choice',
    path: at('belongsTo'),
    label: 'path.belongsTo',
    choices: choicesFrom(CHOICES.belongsTo, (word) => text.t(`window.belongsTo.${word}`)),
  },
  ...sizeFields(at('sizeMm')),
  length(at('originMm', 0), 'window.size.fromRear'),
  length(at('originMm', 1), 'window.size.fromLeft'),
  length(at('originMm', 2), 'window.size.above'),
  measure('mass', at('loadLimitG'), 'path.loadLimitG'),
  measure('mass', at('unitLimitG'), 'path.unitLimitG', { optional: true }),
  {
    kind: 'choice',
    path: at('restraint'),
    label: 'path.restraint',
    choices: choicesFrom(CHOICES.restraints, (word) => text.t(`window.restraint.${word}`)),
  },
  { kind: 'text', path: at('note'), label: 'path.note', optional: true, wide: true },
  { kind: 'switch', path: at('usable', 'drive'), label: 'window.bay.usableDrive' },
  { kind: 'switch', path: at('usable', 'bed'), label: 'window.bay.usableBed' },
  { kind: 'switch', path: at('heatedAtNight'), label: 'path.heatedAtNight' },
  { kind: 'switch', path: at('sleepingSpace'), label: 'path.sleepingSpace' },
  { kind: 'switch', path: at('closedByBed'), label: 'path.closedByBed' },
  { kind: 'switch', path: at('softOnly'), label: 'path.softOnly' },
  { kind: 'switch', path: at('lastResort'), label: 'path.lastResort' },
  { kind: 'switch', path: at('lockable'), label: 'path.lockable' },
  { kind: 'switch', path: at('reachFromBed'), label: 'path.reachFromBed' },
  { kind: 'switch', path: at('reachFromDriverSeat'), label: 'path.reachFromDriverSeat' },
]

/** On which two edges an opening is measured: those of its wall. */
const edgesOf = (face: string): readonly ['length' | 'width', 'height' | 'width'] =>
  face.startsWith('x') ? ['width', 'height'] : face.startsWith('y') ? ['length', 'height'] : ['length', 'width']

const openingRows = (bay: Bay, atBay: At, text: Text): FormPart => ({
  kind: 'rows',
  path: atBay('openings'),
  title: 'window.rows.openings',
  hint: 'window.vehicle.openingsHint',
  one: 'path.openings',
  least: 1,
  most: MOST_OPENINGS,
  initial: (rows) => plainOpening(bay.id, rows, [bay.sizeMm[0], bay.sizeMm[1]], text.t('path.openings')),
  partsOf: (row) => {
    const at: At = (...rest) => atBay('openings', row, ...rest)
    const [first, second] = edgesOf(bay.openings[row]?.face ?? 'z+')
    return [
      fieldsPart([
        { kind: 'text', path: at('name'), label: 'path.name' },
        { kind: 'text', path: at('door'), label: 'path.door', note: 'window.note.door' },
        {
          kind: 'choice',
          path: at('face'),
          label: 'path.face',
          choices: choicesFrom(CHOICES.faces, (word) => text.t(`window.face.${word}`)),
        },
        length(at('fromMm', 0), `window.opening.${first}From`),
        length(at('toMm', 0), `window.opening.${first}To`),
        length(at('fromMm', 1), `window.opening.${second}From`),
        length(at('toMm', 1), `window.opening.${second}To`),
        { kind: 'switch', path: at('opensFromInside'), label: 'path.opensFromInside' },
      ]),
    ]
  },
})

const obstacleRows = (bay: Bay, atBay: At, text: Text): FormPart => ({
  kind: 'rows',
  path: atBay('obstacles'),
  title: 'window.rows.obstacles',
  hint: 'window.vehicle.obstaclesHint',
  one: 'path.obstacles',
  most: MOST_OBSTACLES,
  initial: () => ({
    label: text.t('window.new.arch'),
    atMm: [0, 0, 0],
    sizeMm: bay.sizeMm.map((edge) => Math.max(1, Math.round(edge / 4))),
  }),
  partsOf: (row) => {
    const at: At = (...rest) => atBay('obstacles', row, ...rest)
    return [
      fieldsPart([
        { kind: 'text', path: at('label'), label: 'path.name' },
        length(at('atMm', 0), 'window.size.fromBayRear'),
        length(at('atMm', 1), 'window.size.fromBayLeft'),
        length(at('atMm', 2), 'window.size.aboveBay'),
        ...sizeFields(at('sizeMm')),
      ]),
    ]
  },
})

const slopeRows = (atBay: At, text: Text): FormPart => ({
  kind: 'rows',
  path: atBay('slopes'),
  title: 'window.rows.slopes',
  hint: 'window.vehicle.slopesHint',
  one: 'path.slopes',
  most: MOST_SLOPES,
  initial: () => ({ label: text.t('path.slopes'), face: 'x-', insetFloorMm: 0, insetTopMm: 100 }),
  partsOf: (row) => {
    const at: At = (...rest) => atBay('slopes', row, ...rest)
    return [
      fieldsPart([
        { kind: 'text', path: at('label'), label: 'path.name' },
        {
          kind: 'choice',
          path: at('face'),
          label: 'path.face',
          choices: choicesFrom(CHOICES.wallFaces, (word) => text.t(`window.face.${word}`)),
        },
        length(at('insetFloorMm'), 'path.insetFloorMm'),
        length(at('insetTopMm'), 'path.insetTopMm'),
      ]),
    ]
  },
})
