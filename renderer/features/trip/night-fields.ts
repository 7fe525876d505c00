/** The forms of one night as data: place, pitch, rules, weather, warmth and the morning. The post has a file of its own. */
import { CHOICES } from '../../../shared/document/index.ts'
import type { Night, Trip } from '../../../shared/document/index.ts'
import type { DocumentPath } from '../../../shared/result/index.ts'
import type { Text } from '../../../shared/text/index.ts'
import { choicesFrom, fieldsPart, length, measure, sizeFields } from '../../ui/field-spec.ts'
import type { FieldSpec, FormPart } from '../../ui/field-spec.ts'

export type At = (...rest: DocumentPath) => DocumentPath
export const atNight =
  (index: number): At =>
  (...rest) => ['nights', index, ...rest]

const MOST_SET_POINTS = 24
const MOST_FAST_CHARGERS = 20
const optional = { optional: true } as const

export const yesNoChoices = (text: Text) => choicesFrom(CHOICES.yesNo, (word) => text.t(`word.${word}`))

export function siteParts(index: number): readonly FormPart[] {
  const at = atNight(index)
  return [
    fieldsPart([
      { kind: 'text', path: at('site', 'name'), label: 'path.site', wide: true },
      { kind: 'text', path: at('date'), label: 'path.date' },
      { kind: 'number', path: at('site', 'latitudeDeg'), label: 'path.latitudeDeg' },
      { kind: 'number', path: at('site', 'longitudeDeg'), label: 'path.longitudeDeg' },
      { kind: 'number', path: at('site', 'elevationM'), label: 'path.elevationM' },
      { kind: 'text', path: at('site', 'zone'), label: 'path.zone' },
      { kind: 'clock', path: at('arrive'), label: 'path.arrive' },
      { kind: 'clock', path: at('sleep', 'from'), label: 'window.night.sleepFrom' },
      { kind: 'clock', path: at('sleep', 'to'), label: 'window.night.sleepTo' },
      { kind: 'number', path: at('morningMin'), label: 'path.morningMin' },
      { kind: 'clock', path: at('checkOutBy'), label: 'path.checkOutBy', optional: true },
      { kind: 'text', path: at('site', 'phone'), label: 'path.phone', optional: true },
      { kind: 'text', path: at('site', 'gateCode'), label: 'path.gateCode', optional: true },
      { kind: 'text', path: at('site', 'indoorFallback'), label: 'path.indoorFallback', optional: true },
      { kind: 'text', path: at('site', 'nearestCharger'), label: 'path.nearestCharger', optional: true },
      { kind: 'text', path: at('note'), label: 'path.note', optional: true, wide: true },
    ]),
    span(at, 'checkIn', { from: '15:00', to: '21:00' }),
    span(at, 'quiet', { from: '22:00', to: '07:00' }),
    span(at, 'movementBan', { from: '22:00', to: '06:00' }),
    span(at, 'gateClosed', { from: '22:00', to: '06:00' }),
  ]
}

const span = (
  at: At,
  name: 'checkIn' | 'quiet' | 'movementBan' | 'gateClosed',
  initial: { readonly from: string; readonly to: string },
): FormPart => ({
  kind: 'group',
  path: at(name),
  title: `path.${name}`,
  initial,
  parts: [
    fieldsPart([
      { kind: 'clock', path: at(name, 'from'), label: 'path.from' },
      { kind: 'clock', path: at(name, 'to'), label: 'path.to' },
    ]),
  ],
})

export function ruleParts(index: number, text: Text): readonly FormPart[] {
  const at = atNight(index)
  const rule = (name: 'sleepInVehicle' | 'chargeFromPost' | 'fire'): FieldSpec => ({
    kind: 'choice',
    path: at('rules', name),
    label: `path.${name}`,
    choices: yesNoChoices(text),
  })
  const allowed = (
    name: 'outsideStorage' | 'tentOrAwning' | 'foodLockerRequired' | 'mustStandOnHardPad',
  ): FieldSpec => ({ kind: 'switch', path: at('rules', name), label: `path.${name}` })
  return [
    fieldsPart([
      rule('sleepInVehicle'),
      rule('chargeFromPost'),
      rule('fire'),
      allowed('outsideStorage'),
      allowed('tentOrAwning'),
      allowed('foodLockerRequired'),
      allowed('mustStandOnHardPad'),
    ]),
    {
      kind: 'group',
      path: at('rules', 'foodLockerMm'),
      title: 'path.foodLockerMm',
      initial: [1000, 500, 500],
      parts: [fieldsPart([...sizeFields(at('rules', 'foodLockerMm'))])],
    },
  ]
}

export function pitchParts(index: number, text: Text): readonly FormPart[] {
  const at = atNight(index)
  return [
    fieldsPart([
      { kind: 'text', path: at('pitch', 'surface'), label: 'path.surface' },
      measure('percent', at('pitch', 'slope01'), 'path.slope01'),
      {
        kind: 'choice',
        path: at('pitch', 'slopeDownTowards'),
        label: 'path.slopeDownTowards',
        choices: choicesFrom(CHOICES.slopesTowards, (word) => text.t(`window.slope.${word}`)),
      },
      {
        kind: 'choice',
        path: at('pitch', 'postSide'),
        label: 'path.postSide',
        choices: choicesFrom(CHOICES.postSides, (word) => text.t(`window.postSide.${word}`)),
      },
      length(at('pitch', 'cableRunMm'), 'path.cableRunMm'),
      length(at('pitch', 'toToiletsMm'), 'path.toToiletsMm'),
      { kind: 'number', path: at('pitch', 'noseBearingDeg'), label: 'path.noseBearingDeg', optional: true },
    ]),
  ]
}

export function weatherParts(index: number): readonly FormPart[] {
  const at = atNight(index)
  return [
    fieldsPart([
      measure('temperature', at('weather', 'highC'), 'path.highC'),
      measure('temperature', at('weather', 'lowC'), 'path.lowC'),
      measure('temperatureDifference', at('weather', 'coldMarginK'), 'path.coldMarginK', {
        note: 'window.note.margin',
      }),
      measure('windSpeed', at('weather', 'windMPerS'), 'path.windMPerS'),
      { kind: 'number', path: at('weather', 'windFromDeg'), label: 'path.windFromDeg', optional: true },
      measure('percent', at('weather', 'humidity01'), 'path.humidity01'),
      measure('percent', at('weather', 'cloud01'), 'path.cloud01'),
      length(at('weather', 'rainMm'), 'path.rainMm'),
      length(at('weather', 'snowMm'), 'path.snowMm'),
    ]),
  ]
}

/** What is decided about warmth and air; the dials of the night change the same values. */
export function warmthParts(index: number, heaters: Trip['vehicle']['bedHeaters']): readonly FormPart[] {
  const at = atNight(index)
  return [
    fieldsPart([
      measure('current', at('heating', 'currentA'), 'path.askedA', { optional: true, note: 'window.note.askedA' }),
      measure('percent', at('heating', 'chargeLimit01'), 'path.chargeLimit01', {
        optional: true,
        note: 'window.note.askedA',
      }),
      length(at('ventilation', 'gapMm'), 'path.gapMm'),
      { kind: 'number', path: at('ventilation', 'sides'), label: 'path.sides' },
      { kind: 'switch', path: at('covers'), label: 'path.covers' },
      ...(heaters.length === 0
        ? []
        : [
            {
              kind: 'set',
              path: at('heating', 'bedHeaterIds'),
              label: 'path.bedHeaterIds',
              choices: heaters.map(({ id, name }) => ({ value: id, label: name })),
            } as const,
          ]),
    ]),
    {
      kind: 'rows',
      path: at('heating', 'setPoints'),
      title: 'window.rows.setPoints',
      hint: 'window.night.setPointsHint',
      one: 'path.setPoints',
      most: MOST_SET_POINTS,
      initial: (rows) => ({ from: nextHour(rows), tempC: 16 }),
      partsOf: (row) => [
        fieldsPart([
          { kind: 'clock', path: at('heating', 'setPoints', row, 'from'), label: 'path.from' },
          measure('temperature', at('heating', 'setPoints', row, 'tempC'), 'path.setPointC', {
            nullable: true,
          }),
        ]),
      ],
    },
  ]
}

const HOURS_A_DAY = 24
const FIRST_SET_POINT = 18
/** An hour after the last one: no two begin at the same time. */
function nextHour(rows: readonly unknown[]): string {
  const last = rows.at(-1) as Night['heating']['setPoints'][number] | undefined
  const hour = last === undefined ? FIRST_SET_POINT : (Number(last.from.slice(0, 2)) + 1) % HOURS_A_DAY
  return `${String(hour).padStart(2, '0')}:00`
}

export function morningParts(index: number, battery: boolean, leisure: boolean, text: Text): readonly FormPart[] {
  const at = atNight(index)
  return [
    fieldsPart([
      ...(battery
        ? [
            measure('percent', at('arriveCharge01'), 'path.arriveCharge01', {
              optional: true,
              note: 'window.note.arriveCharge',
            }),
          ]
        : []),
      ...(leisure ? [measure('percent', at('leisureCharge01'), 'path.leisureCharge01', optional)] : []),
    ]),
    legGroup(at),
    targetGroup(at, text),
    {
      kind: 'group',
      path: at('takenOn'),
      title: 'path.takenOn',
      initial: {},
      parts: [
        fieldsPart([
          measure('volume', at('takenOn', 'waterMl'), 'path.waterMl', optional),
          measure('mass', at('takenOn', 'foodG'), 'path.foodG', optional),
        ]),
      ],
    },
  ]
}

function legGroup(at: At): FormPart {
  return {
    kind: 'group',
    path: at('leg'),
    title: 'path.leg',
    initial: { distanceM: 100_000, fastChargers: [] },
    parts: [
      fieldsPart([
        measure('distance', at('leg', 'distanceM'), 'path.distanceM'),
        measure('temperature', at('leg', 'outsideC'), 'window.leg.outside', optional),
        { kind: 'number', path: at('leg', 'climbM'), label: 'path.climbM', optional: true },
        measure('speed', at('leg', 'speedKmPerH'), 'path.speedKmPerH', optional),
        { kind: 'number', path: at('leg', 'whPerKm'), label: 'path.whPerKm', optional: true },
        measure('percent', at('leg', 'reserve01'), 'path.reserve01', optional),
        { kind: 'text', path: at('leg', 'note'), label: 'path.note', optional: true, wide: true },
      ]),
      {
        kind: 'rows',
        path: at('leg', 'fastChargers'),
        title: 'window.rows.fastChargers',
        hint: 'window.leg.chargersHint',
        one: 'path.fastChargers',
        most: MOST_FAST_CHARGERS,
        initial: () => ({ atM: 50_000, powerW: 50_000 }),
        partsOf: (row) => [
          fieldsPart([
            measure('distance', at('leg', 'fastChargers', row, 'atM'), 'path.atM'),
            measure('power', at('leg', 'fastChargers', row, 'powerW'), 'path.powerW'),
            { kind: 'text', path: at('leg', 'fastChargers', row, 'name'), label: 'path.name', optional: true },
          ]),
        ],
      },
    ],
  }
}

const targetGroup = (at: At, text: Text): FormPart => ({
  kind: 'group',
  path: at('target'),
  title: 'path.target',
  initial: { name: text.t('window.new.target'), minutesBeforeSunrise: 20, driveM: 0, driveMin: 0, walkMin: 0 },
  parts: [
    fieldsPart([
      { kind: 'text', path: at('target', 'name'), label: 'path.name' },
      { kind: 'number', path: at('target', 'minutesBeforeSunrise'), label: 'path.minutesBeforeSunrise' },
      measure('distance', at('target', 'driveM'), 'path.driveM'),
      { kind: 'number', path: at('target', 'driveMin'), label: 'path.driveMin' },
      { kind: 'number', path: at('target', 'walkMin'), label: 'path.walkMin' },
      { kind: 'number', path: at('target', 'latitudeDeg'), label: 'path.latitudeDeg', optional: true },
      { kind: 'number', path: at('target', 'longitudeDeg'), label: 'path.longitudeDeg', optional: true },
    ]),
  ],
})
