/** The vehicle's forms as data, but for its bays. */
import { CHOICES, freshId } from '../../../shared/document/index.ts'
import type { Trip } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { choicesFrom, fieldsPart, length, measure } from '../../ui/field-spec.ts'
import type { FieldSpec, FormPart } from '../../ui/field-spec.ts'

type Vehicle = Trip['vehicle']
const MOST_BED_HEATERS = 8
const MOST_COP_POINTS = 12
/** Next point of a line of heat out per electricity in: as much warmer as a day differs from a night. */
const COP_STEP_K = 8
const KG = 1000

const optional = { optional: true } as const
const axle = (name: 'frontAxle' | 'rearAxle', readyG: number): FormPart => {
  const path: DocumentPath = ['vehicle', 'masses', name]
  return {
    kind: 'group',
    path,
    title: `path.${name}`,
    initial: { limitG: Math.round((readyG * 0.6) / KG) * KG, readyG: Math.round((readyG * 0.5) / KG) * KG },
    parts: [
      fieldsPart([
        measure('mass', [...path, 'limitG'], 'path.axleLimitG'),
        measure('mass', [...path, 'readyG'], 'path.axleReadyG'),
      ]),
    ],
  }
}

export function massParts(vehicle: Vehicle, text: Text): readonly FormPart[] {
  const at = (name: string): DocumentPath => ['vehicle', 'masses', name]
  return [
    fieldsPart([
      { kind: 'text', path: ['vehicle', 'name'], label: 'path.name' },
      {
        kind: 'choice',
        path: ['vehicle', 'drive'],
        label: 'path.drive',
        choices: choicesFrom(CHOICES.drives, (word) => text.t(`window.drive.${word}`)),
      },
      measure('mass', at('permittedG'), 'path.permittedG', { note: 'window.note.permitted' }),
      measure('mass', at('readyG'), 'path.readyG', { note: 'window.note.ready' }),
      measure('mass', at('driverIncludedG'), 'path.driverIncludedG'),
      measure('mass', at('roofLimitG'), 'path.roofLimitG', optional),
      measure('mass', at('roofFittedG'), 'path.roofFittedG', { optional: true, note: 'window.note.roofFitted' }),
      length(at('rearAxleXMm'), 'path.rearAxleXMm', true),
      length(at('wheelbaseMm'), 'path.wheelbaseMm', true),
      length(['vehicle', 'seatBackHeightMm'], 'path.seatBackHeightMm'),
      { kind: 'text', path: ['vehicle', 'note'], label: 'path.note', optional: true, wide: true },
    ]),
    axle('frontAxle', vehicle.masses.readyG),
    axle('rearAxle', vehicle.masses.readyG),
  ]
}

export function bedParts(
  text: Text,
  mattresses: readonly { readonly id: string; readonly name: string }[],
): readonly FormPart[] {
  const at = (...rest: DocumentPath): DocumentPath => ['vehicle', 'bed', ...rest]
  return [
    fieldsPart([
      length(at('sizeMm', 0), 'window.size.length'),
      length(at('sizeMm', 1), 'window.size.width'),
      length(at('sizeMm', 2), 'window.size.thickness'),
      length(at('atMm', 0), 'window.size.fromRear'),
      length(at('atMm', 1), 'window.size.fromLeft'),
      length(at('atMm', 2), 'window.size.above'),
      length(at('flatLengthMm'), 'path.flatLengthMm'),
      length(at('flatWidthMm'), 'path.flatWidthMm'),
      length(at('headroomMm'), 'path.headroomMm'),
      length(at('stepMm'), 'path.stepMm'),
      {
        kind: 'choice',
        path: at('headEnd'),
        label: 'path.headEnd',
        choices: choicesFrom(CHOICES.headEnds, (word) => text.t(`window.headEnd.${word}`)),
      },
      { kind: 'text', path: at('exitDoor'), label: 'path.exitDoor', optional: true },
      {
        kind: 'number',
        path: at('fittedMattressM2KPerW'),
        label: 'path.fittedMattressM2KPerW',
        note: 'window.note.fittedMattress',
        optional: true,
      },
      {
        kind: 'set',
        path: at('mattressPieceIds'),
        label: 'path.mattressPieceIds',
        choices: mattresses.map(({ id, name }) => ({ value: id, label: name })),
      },
      { kind: 'lines', path: at('prepare'), label: 'path.prepare', note: 'window.note.lines' },
      { kind: 'lines', path: at('keepClear'), label: 'path.keepClear', note: 'window.note.lines' },
    ]),
  ]
}

export function heatParts(text: Text): readonly FormPart[] {
  const at = (name: string): DocumentPath => ['vehicle', 'heater', name]
  return [
    fieldsPart([
      {
        kind: 'choice',
        path: ['vehicle', 'thermal', 'bodyClass'],
        label: 'path.bodyClass',
        choices: choicesFrom(CHOICES.bodies, (word) => text.t(`window.body.${word}`)),
      },
      {
        kind: 'choice',
        path: at('kind'),
        label: 'path.heater',
        choices: choicesFrom(CHOICES.heaters, (word) => text.t(`window.heater.${word}`)),
      },
      measure('power', at('maxHeatW'), 'path.maxHeatW'),
      measure('power', at('minHeatW'), 'path.minHeatW', optional),
      measure('power', at('awakeLoadW'), 'path.awakeLoadW', { note: 'window.note.awake' }),
      measure('power', ['vehicle', 'keepsOnW'], 'path.keepsOnW', { optional: true, note: 'window.note.keepsOn' }),
      measure('duration', at('switchesOffAfterS'), 'path.switchesOffAfterS', optional),
      measure('percent', at('switchesOffBelow01'), 'path.switchesOffBelow01', optional),
      measure('temperature', at('lowerLimitC'), 'path.lowerLimitC', optional),
      { kind: 'switch', path: at('mayRunAllNight'), label: 'path.mayRunAllNight' },
      { kind: 'switch', path: at('canCool'), label: 'path.canCool' },
    ]),
    copRows(),
    bedHeaterRows(text),
  ]
}

const copRows = (): FormPart => ({
  kind: 'rows',
  path: ['vehicle', 'heater', 'cop'],
  title: 'path.cop',
  hint: 'window.vehicle.copHint',
  one: 'window.one.copPoint',
  most: MOST_COP_POINTS,
  initial: (rows) => {
    const last = rows.at(-1) as Vehicle['heater']['cop'][number] | undefined
    return last === undefined ? { outsideC: 0, value: 2 } : { outsideC: last.outsideC + COP_STEP_K, value: last.value }
  },
  partsOf: (row) => [
    fieldsPart([
      measure('temperature', ['vehicle', 'heater', 'cop', row, 'outsideC'], 'path.outsideC'),
      { kind: 'number', path: ['vehicle', 'heater', 'cop', row, 'value'], label: 'path.copValue' },
    ]),
  ],
})

/** Common draw of an underblanket, W. */
const UNDERBLANKET_W = 60
const bedHeaterRows = (text: Text): FormPart => ({
  kind: 'rows',
  path: ['vehicle', 'bedHeaters'],
  title: 'window.rows.bedHeaters',
  hint: 'window.vehicle.bedHeatersHint',
  one: 'what.bed-heater',
  most: MOST_BED_HEATERS,
  initial: (rows) => ({
    id: freshId('bed-heater', rows),
    name: text.t('window.bedHeater.underblanket'),
    kind: 'underblanket',
    powerW: UNDERBLANKET_W,
  }),
  partsOf: (row) => {
    const at = (name: string): DocumentPath => ['vehicle', 'bedHeaters', row, name]
    return [
      fieldsPart([
        { kind: 'text', path: at('name'), label: 'path.name' },
        {
          kind: 'choice',
          path: at('kind'),
          label: 'path.kind',
          choices: choicesFrom(CHOICES.bedHeaters, (word) => text.t(`window.bedHeater.${word}`)),
        },
        measure('power', at('powerW'), 'path.powerW'),
      ]),
    ]
  },
})

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
      'lossScale',
    ] as const
  ).map((name) => ({ kind: 'number', path: ['vehicle', 'thermal', name], label: `path.${name}`, optional: true }))

export const energyParts = (text: Text): readonly FormPart[] => [
  fieldsPart([
    { kind: 'number', path: ['vehicle', 'consumption', 'whPerKm'], label: 'path.whPerKm' },
    { kind: 'number', path: ['vehicle', 'consumption', 'dragAreaM2'], label: 'path.dragAreaM2', optional: true },
    {
      kind: 'number',
      path: ['vehicle', 'consumption', 'rollingCoefficient'],
      label: 'path.rollingCoefficient',
      optional: true,
    },
    measure('power', ['vehicle', 'consumption', 'auxiliaryW'], 'path.auxiliaryW', optional),
  ]),
  batteryGroup(),
  chargingGroup(text),
  leisureGroup(text),
]

function batteryGroup(): FormPart {
  const at = (name: string): DocumentPath => ['vehicle', 'battery', name]
  return {
    kind: 'group',
    path: ['vehicle', 'battery'],
    title: 'path.battery',
    initial: { usableWh: 60_000, reserve01: 0.12, chargeLimit01: 0.9 },
    parts: [
      fieldsPart([
        measure('energy', at('usableWh'), 'path.usableWh'),
        measure('percent', at('reserve01'), 'path.reserve01'),
        measure('percent', at('chargeLimit01'), 'path.chargeLimit01'),
        measure('power', at('coldOverheadW'), 'path.coldOverheadW', optional),
      ]),
    ],
  }
}

function chargingGroup(text: Text): FormPart {
  const at = (...rest: DocumentPath): DocumentPath => ['vehicle', 'charging', ...rest]
  return {
    kind: 'group',
    path: ['vehicle', 'charging'],
    title: 'path.charging',
    initial: { efficiency01: 0.9, overheadW: 250, minimumA: 6, maximumA: 16 },
    parts: [
      fieldsPart([
        measure('current', at('minimumA'), 'path.minimumA'),
        measure('current', at('maximumA'), 'path.maximumA'),
        measure('percent', at('efficiency01'), 'path.efficiency01'),
        measure('power', at('overheadW'), 'path.overheadW'),
        measure('power', at('fastMaxW'), 'path.fastMaxW', optional),
      ]),
      {
        kind: 'group',
        path: at('inlet'),
        title: 'path.inlet',
        initial: { side: 'left', xMm: 0, heightMm: 900 },
        parts: [
          fieldsPart([
            {
              kind: 'choice',
              path: at('inlet', 'side'),
              label: 'path.side',
              choices: choicesFrom(CHOICES.inletSides, (word) => text.t(`window.side.${word}`)),
            },
            length(at('inlet', 'xMm'), 'window.size.fromRear'),
            length(at('inlet', 'heightMm'), 'window.size.aboveGround'),
          ]),
        ],
      },
    ],
  }
}

function leisureGroup(text: Text): FormPart {
  const at = (name: string): DocumentPath => ['vehicle', 'leisure', name]
  return {
    kind: 'group',
    path: ['vehicle', 'leisure'],
    title: 'path.leisure',
    initial: { kind: 'lfp', usableWh: 1200, reserve01: 0.1, chargerW: 250, loadW: 20 },
    parts: [
      fieldsPart([
        {
          kind: 'choice',
          path: at('kind'),
          label: 'path.leisure',
          choices: choicesFrom(CHOICES.leisureKinds, (word) => text.t(`window.leisure.${word}`)),
        },
        measure('energy', at('usableWh'), 'path.usableWh'),
        measure('percent', at('reserve01'), 'path.reserve01'),
        measure('power', at('chargerW'), 'path.chargerW'),
        measure('power', at('loadW'), 'path.loadW'),
        measure('power', at('inverterMaxW'), 'path.inverterMaxW', optional),
      ]),
    ],
  }
}
