/** The forms of one night as data. */
import { CONNECTORS, LINE_SYSTEMS } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import type { FieldSpec } from '../../ui/field-spec.ts'

const YES_NO = ['yes', 'no', 'not-known'] as const

type At = (...rest: DocumentPath) => DocumentPath
const atNight =
  (index: number): At =>
  (...rest) => ['nights', index, ...rest]

export function siteFields(index: number): readonly FieldSpec[] {
  const at = atNight(index)
  return [
    { kind: 'text', path: at('site', 'name'), label: 'path.site', wide: true },
    { kind: 'text', path: at('date'), label: 'path.date' },
    { kind: 'number', path: at('site', 'latitudeDeg'), label: 'path.latitudeDeg' },
    { kind: 'number', path: at('site', 'longitudeDeg'), label: 'path.longitudeDeg' },
    { kind: 'text', path: at('site', 'zone'), label: 'path.zone' },
    { kind: 'clock', path: at('arrive'), label: 'path.arrive' },
    { kind: 'clock', path: at('sleep', 'from'), label: 'window.night.sleepFrom' },
    { kind: 'clock', path: at('sleep', 'to'), label: 'window.night.sleepTo' },
    { kind: 'number', path: at('morningMin'), label: 'path.morningMin' },
    { kind: 'clock', path: at('checkOutBy'), label: 'path.checkOutBy', optional: true },
  ]
}

export function ruleFields(index: number, text: Text): readonly FieldSpec[] {
  const at = atNight(index)
  const choices = YES_NO.map((value) => ({ value, label: text.t(`word.${value}`) }))
  return [
    { kind: 'choice', path: at('rules', 'sleepInVehicle'), label: 'path.sleepInVehicle', choices },
    { kind: 'choice', path: at('rules', 'chargeFromPost'), label: 'path.chargeFromPost', choices },
    { kind: 'switch', path: at('rules', 'outsideStorage'), label: 'path.outsideStorage' },
    { kind: 'switch', path: at('rules', 'tentOrAwning'), label: 'path.tentOrAwning' },
    { kind: 'switch', path: at('rules', 'foodLockerRequired'), label: 'path.foodLockerRequired' },
  ]
}

export function weatherFields(index: number): readonly FieldSpec[] {
  const at = atNight(index)
  return [
    { kind: 'measure', measure: 'temperature', path: at('weather', 'highC'), label: 'path.highC' },
    { kind: 'measure', measure: 'temperature', path: at('weather', 'lowC'), label: 'path.lowC' },
    {
      kind: 'measure',
      measure: 'temperatureDifference',
      path: at('weather', 'coldMarginK'),
      label: 'path.coldMarginK',
      note: 'window.note.margin',
    },
    { kind: 'measure', measure: 'windSpeed', path: at('weather', 'windMPerS'), label: 'path.windMPerS' },
    { kind: 'measure', measure: 'percent', path: at('weather', 'humidity01'), label: 'path.humidity01' },
    { kind: 'measure', measure: 'percent', path: at('weather', 'cloud01'), label: 'path.cloud01' },
  ]
}

/** Connectors with two hot poles, where 208 and 240 V are to be told apart. */
const TWO_POLE: ReadonlySet<unknown> = new Set(['nema-6-20', 'nema-6-50', 'nema-14-30', 'nema-14-50'])

export function hookupFields(index: number, text: Text, connector: string | undefined): readonly FieldSpec[] {
  const at = atNight(index)
  const choices = YES_NO.map((value) => ({ value, label: text.t(`word.${value}`) }))
  return [
    {
      kind: 'choice',
      path: at('hookup', 'connector'),
      label: 'path.connector',
      wide: true,
      choices: CONNECTORS.map((value) => ({ value, label: text.t(`window.connector.${value}`) })),
    },
    { kind: 'measure', measure: 'voltage', path: at('hookup', 'nominalV'), label: 'path.nominalV' },
    { kind: 'measure', measure: 'current', path: at('hookup', 'breakerA'), label: 'path.breakerA' },
    ...(TWO_POLE.has(connector) ? lineFields(at, text) : []),
    { kind: 'measure', measure: 'current', path: at('hookup', 'siteLimitA'), label: 'path.siteLimitA', optional: true },
    { kind: 'measure', measure: 'current', path: at('hookup', 'leadLimitA'), label: 'path.leadLimitA', optional: true },
    {
      kind: 'measure',
      measure: 'current',
      path: at('hookup', 'adapterLimitA'),
      label: 'path.adapterLimitA',
      optional: true,
    },
    {
      kind: 'measure',
      measure: 'current',
      path: at('hookup', 'chargingUnitLimitA'),
      label: 'path.chargingUnitLimitA',
      optional: true,
    },
    { kind: 'clock', path: at('hookup', 'plugIn'), label: 'path.plugIn' },
    { kind: 'clock', path: at('hookup', 'unplug'), label: 'path.unplug' },
    { kind: 'choice', path: at('hookup', 'earthOk'), label: 'path.earthOk', choices },
    { kind: 'choice', path: at('hookup', 'polarityReversed'), label: 'path.polarityReversed', choices },
    { kind: 'choice', path: at('hookup', 'resetReachable'), label: 'path.resetReachable', choices },
    { kind: 'measure', measure: 'power', path: at('hookup', 'otherLoadW'), label: 'path.otherLoadW' },
  ]
}

function lineFields(at: At, text: Text): readonly FieldSpec[] {
  return [
    {
      kind: 'measure',
      measure: 'voltage',
      path: at('hookup', 'lineToLineV'),
      label: 'path.lineToLineV',
      optional: true,
      note: 'window.note.lineSystem',
    },
    {
      kind: 'measure',
      measure: 'voltage',
      path: at('hookup', 'lineToNeutralV'),
      label: 'path.lineToNeutralV',
      optional: true,
    },
    {
      kind: 'choice',
      path: at('hookup', 'lineSystem'),
      label: 'path.lineSystem',
      choices: LINE_SYSTEMS.map((value) => ({ value, label: text.t(`window.lineSystem.${value}`) })),
    },
  ]
}

export function readingFields(index: number, row: number): readonly FieldSpec[] {
  const at = atNight(index)
  return [
    { kind: 'measure', measure: 'current', path: at('hookup', 'readings', row, 'currentA'), label: 'path.currentA' },
    { kind: 'measure', measure: 'voltage', path: at('hookup', 'readings', row, 'volts'), label: 'path.volts' },
  ]
}

export function legFields(index: number, hasLeg: boolean, hasTarget: boolean): readonly FieldSpec[] {
  const at = atNight(index)
  return [
    { kind: 'measure', measure: 'percent', path: at('arriveCharge01'), label: 'path.arriveCharge01', optional: true },
    ...(hasLeg
      ? ([
          { kind: 'measure', measure: 'distance', path: at('leg', 'distanceM'), label: 'path.distanceM' },
          {
            kind: 'measure',
            measure: 'temperature',
            path: at('leg', 'outsideC'),
            label: 'window.leg.outside',
            optional: true,
          },
          { kind: 'number', path: at('leg', 'climbM'), label: 'path.climbM', optional: true },
          {
            kind: 'measure',
            measure: 'speed',
            path: at('leg', 'speedKmPerH'),
            label: 'path.speedKmPerH',
            optional: true,
          },
          { kind: 'number', path: at('leg', 'whPerKm'), label: 'path.whPerKm', optional: true },
          {
            kind: 'measure',
            measure: 'percent',
            path: at('leg', 'reserve01'),
            label: 'path.reserve01',
            optional: true,
          },
        ] as const)
      : []),
    ...(hasTarget
      ? ([
          { kind: 'text', path: at('target', 'name'), label: 'path.target' },
          { kind: 'number', path: at('target', 'minutesBeforeSunrise'), label: 'path.minutesBeforeSunrise' },
          { kind: 'number', path: at('target', 'driveMin'), label: 'path.driveMin' },
          { kind: 'number', path: at('target', 'walkMin'), label: 'path.walkMin' },
        ] as const)
      : []),
  ]
}
