/** The vehicle's forms as data. */
import { VEHICLE_CHOICES } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import type { FieldSpec } from '../../ui/field-spec.ts'

const length = (path: DocumentPath, label: FieldSpec['label'], optional = false): FieldSpec => ({
  kind: 'measure',
  measure: 'length',
  path,
  label,
  optional,
})

const optional = (
  measure: Extract<FieldSpec, { readonly kind: 'measure' }>['measure'],
  path: DocumentPath,
  label: FieldSpec['label'],
  note?: FieldSpec['label'],
): FieldSpec => ({ kind: 'measure', measure, path, label, optional: true, ...(note === undefined ? {} : { note }) })

export const massFields = (): readonly FieldSpec[] => [
  { kind: 'text', path: ['vehicle', 'name'], label: 'path.name' },
  {
    kind: 'measure',
    measure: 'mass',
    path: ['vehicle', 'masses', 'permittedG'],
    label: 'path.permittedG',
    note: 'window.note.permitted',
  },
  {
    kind: 'measure',
    measure: 'mass',
    path: ['vehicle', 'masses', 'readyG'],
    label: 'path.readyG',
    note: 'window.note.ready',
  },
  {
    kind: 'measure',
    measure: 'mass',
    path: ['vehicle', 'masses', 'roofLimitG'],
    label: 'path.roofLimitG',
    optional: true,
  },
  length(['vehicle', 'masses', 'rearAxleXMm'], 'path.rearAxleXMm', true),
  length(['vehicle', 'masses', 'wheelbaseMm'], 'path.wheelbaseMm', true),
  length(['vehicle', 'seatBackHeightMm'], 'path.seatBackHeightMm'),
]

export const bedFields = (): readonly FieldSpec[] => [
  length(['vehicle', 'bed', 'sizeMm', 0], 'window.size.length'),
  length(['vehicle', 'bed', 'sizeMm', 1], 'window.size.width'),
  length(['vehicle', 'bed', 'sizeMm', 2], 'window.size.thickness'),
  length(['vehicle', 'bed', 'atMm', 2], 'window.size.above'),
  length(['vehicle', 'bed', 'headroomMm'], 'path.headroomMm'),
  length(['vehicle', 'bed', 'stepMm'], 'path.stepMm'),
]

export const heatFields = (text: Text): readonly FieldSpec[] => [
  {
    kind: 'choice',
    path: ['vehicle', 'thermal', 'bodyClass'],
    label: 'path.bodyClass',
    choices: VEHICLE_CHOICES.bodies.map((value) => ({ value, label: text.t(`window.body.${value}`) })),
  },
  {
    kind: 'choice',
    path: ['vehicle', 'heater', 'kind'],
    label: 'path.heater',
    choices: VEHICLE_CHOICES.heaters.map((value) => ({ value, label: text.t(`window.heater.${value}`) })),
  },
  { kind: 'measure', measure: 'power', path: ['vehicle', 'heater', 'maxHeatW'], label: 'path.maxHeatW' },
  {
    kind: 'measure',
    measure: 'power',
    path: ['vehicle', 'heater', 'awakeLoadW'],
    label: 'path.awakeLoadW',
    note: 'window.note.awake',
  },
  { kind: 'switch', path: ['vehicle', 'heater', 'mayRunAllNight'], label: 'path.mayRunAllNight' },
  { kind: 'switch', path: ['vehicle', 'heater', 'canCool'], label: 'path.canCool' },
  optional('power', ['vehicle', 'keepsOnW'], 'path.keepsOnW', 'window.note.keepsOn'),
  optional('duration', ['vehicle', 'heater', 'switchesOffAfterS'], 'path.switchesOffAfterS'),
  optional('percent', ['vehicle', 'heater', 'switchesOffBelow01'], 'path.switchesOffBelow01'),
  optional('temperature', ['vehicle', 'heater', 'lowerLimitC'], 'path.lowerLimitC'),
  optional('power', ['vehicle', 'heater', 'minHeatW'], 'path.minHeatW'),
]

/** The body's own figures; empty ones follow the body class. */
export const lossFields = (): readonly FieldSpec[] =>
  (
    [
      'lossBareWPerK',
      'lossCoveredWPerK',
      'windFactorPerMPerS',
      'glassAreaM2',
      'airVolumeM3',
      'heatCapacityKJPerK',
      'freshAirM3PerH',
    ] as const
  ).map((name) => ({ kind: 'number', path: ['vehicle', 'thermal', name], label: `path.${name}`, optional: true }))

export const energyFields = (
  battery: boolean,
  charging: boolean,
  leisure: boolean,
  text: Text,
): readonly FieldSpec[] => [
  ...(battery
    ? ([
        { kind: 'measure', measure: 'energy', path: ['vehicle', 'battery', 'usableWh'], label: 'path.usableWh' },
        { kind: 'measure', measure: 'percent', path: ['vehicle', 'battery', 'reserve01'], label: 'path.reserve01' },
        {
          kind: 'measure',
          measure: 'percent',
          path: ['vehicle', 'battery', 'chargeLimit01'],
          label: 'path.chargeLimit01',
        },
      ] as const)
    : []),
  ...(charging
    ? ([
        { kind: 'measure', measure: 'current', path: ['vehicle', 'charging', 'minimumA'], label: 'path.minimumA' },
        { kind: 'measure', measure: 'current', path: ['vehicle', 'charging', 'maximumA'], label: 'path.maximumA' },
        {
          kind: 'measure',
          measure: 'percent',
          path: ['vehicle', 'charging', 'efficiency01'],
          label: 'path.efficiency01',
        },
        { kind: 'measure', measure: 'power', path: ['vehicle', 'charging', 'overheadW'], label: 'path.overheadW' },
      ] as const)
    : []),
  ...(leisure ? leisureFields(text) : []),
  { kind: 'number', path: ['vehicle', 'consumption', 'whPerKm'], label: 'path.whPerKm' },
]

function leisureFields(text: Text): readonly FieldSpec[] {
  const at = (name: string): DocumentPath => ['vehicle', 'leisure', name]
  return [
    {
      kind: 'choice',
      path: at('kind'),
      label: 'path.leisure',
      choices: VEHICLE_CHOICES.leisureKinds.map((value) => ({ value, label: text.t(`window.leisure.${value}`) })),
    },
    { kind: 'measure', measure: 'energy', path: at('usableWh'), label: 'path.usableWh' },
    { kind: 'measure', measure: 'percent', path: at('reserve01'), label: 'path.reserve01' },
    { kind: 'measure', measure: 'power', path: at('chargerW'), label: 'path.chargerW' },
    { kind: 'measure', measure: 'power', path: at('loadW'), label: 'path.loadW' },
    optional('power', at('inverterMaxW'), 'path.inverterMaxW'),
  ]
}

export function bayFields(index: number, text: Text): readonly FieldSpec[] {
  const at = (...rest: DocumentPath): DocumentPath => ['vehicle', 'bays', index, ...rest]
  return [
    { kind: 'text', path: at('name'), label: 'path.name' },
    {
      kind: 'choice',
      path: at('kind'),
      label: 'path.kind',
      choices: VEHICLE_CHOICES.bayKinds.map((value) => ({ value, label: text.t(`window.bay.${value}`) })),
    },
    length(at('sizeMm', 0), 'window.size.length'),
    length(at('sizeMm', 1), 'window.size.width'),
    length(at('sizeMm', 2), 'window.size.height'),
    length(at('originMm', 0), 'window.size.fromRear'),
    length(at('originMm', 1), 'window.size.fromLeft'),
    length(at('originMm', 2), 'window.size.above'),
    { kind: 'measure', measure: 'mass', path: at('loadLimitG'), label: 'path.loadLimitG' },
    {
      kind: 'choice',
      path: at('restraint'),
      label: 'path.restraint',
      choices: VEHICLE_CHOICES.restraints.map((value) => ({ value, label: text.t(`window.restraint.${value}`) })),
    },
    { kind: 'switch', path: at('usable', 'drive'), label: 'window.bay.usableDrive' },
    { kind: 'switch', path: at('usable', 'bed'), label: 'window.bay.usableBed' },
    { kind: 'switch', path: at('heatedAtNight'), label: 'path.heatedAtNight' },
    { kind: 'switch', path: at('sleepingSpace'), label: 'path.sleepingSpace' },
    { kind: 'switch', path: at('closedByBed'), label: 'path.closedByBed' },
    { kind: 'switch', path: at('softOnly'), label: 'path.softOnly' },
    { kind: 'switch', path: at('lockable'), label: 'path.lockable' },
    { kind: 'switch', path: at('reachFromBed'), label: 'path.reachFromBed' },
    { kind: 'switch', path: at('reachFromDriverSeat'), label: 'path.reachFromDriverSeat' },
  ]
}

export function openingFields(bay: number, index: number, face: string, text: Text): readonly FieldSpec[] {
  const at = (...rest: DocumentPath): DocumentPath => ['vehicle', 'bays', bay, 'openings', index, ...rest]
  const [first, second] = face.startsWith('x')
    ? (['width', 'height'] as const)
    : face.startsWith('y')
      ? (['length', 'height'] as const)
      : (['length', 'width'] as const)
  return [
    { kind: 'text', path: at('name'), label: 'path.openings' },
    {
      kind: 'choice',
      path: at('face'),
      label: 'path.face',
      choices: VEHICLE_CHOICES.faces.map((value) => ({ value, label: text.t(`window.face.${value}`) })),
    },
    length(at('fromMm', 0), `window.opening.${first}From`),
    length(at('toMm', 0), `window.opening.${first}To`),
    length(at('fromMm', 1), `window.opening.${second}From`),
    length(at('toMm', 1), `window.opening.${second}To`),
  ]
}
