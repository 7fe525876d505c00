/** What may be written but makes no sense: each check on both sides of its border, at the field it names, and nothing else said. */
import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseTrip } from '../../../../shared/document/index.ts'
import { bytesOf, sampleText } from '../sample.ts'
import { MALFORMED } from './malformed.ts'

type Edit = readonly [path: string, value: unknown]
/** Expected: `code path`; none where the trip is fine. */
type Case = readonly [kind: string, edits: readonly Edit[], ...expected: readonly string[]]

const key = (part: string): string | number => (/^\d+$/.test(part) ? Number(part) : part)

function edited(edits: readonly Edit[]): Uint8Array {
  const root: unknown = JSON.parse(sampleText())
  for (const [path, value] of edits) {
    const parts = path.split('.').map(key)
    const holder = parts.slice(0, -1).reduce<unknown>((inside, part) => Reflect.get(Object(inside), part), root)
    const last = parts.at(-1) ?? ''
    if (value === undefined) Reflect.deleteProperty(Object(holder), last)
    else Reflect.set(Object(holder), last, value)
  }
  return bytesOf(JSON.stringify(root))
}

const bay = 'vehicle.bays.0' // 1090 by 1180 by 740 mm
const lock = (layout: string, bayId: string, more: object = {}) => ({ layout, bayId, ...more })
const lesson = { id: 'l1', nightId: 'night-1', text: 'x' }
const tick = { stepKey: 'a:n1', state: 'done', atUtc: 0 }
const traveller = {
  id: 'third',
  label: 'T',
  heightMm: 1700,
  massG: 70_000,
  drives: false,
  sleeps: 'average',
  sleepwearClo: 1,
}

const KIT: readonly Case[] = [
  ['a unit apart from a bin', [['kit.pieces.4.apartFrom', ['night-bag']]]],
  [
    'a unit apart from nothing known',
    [['kit.pieces.4.apartFrom', ['boots', 'ghost']]],
    'reference-unknown kit.pieces.4.apartFrom.1',
  ],
  [
    'a unit with nothing known',
    [['kit.pieces.4.belongsWith', ['ghost']]],
    'reference-unknown kit.pieces.4.belongsWith.0',
  ],
  [
    'a unit apart from itself',
    [['kit.pieces.4.apartFrom', ['pillow-imke']]],
    'reference-to-itself kit.pieces.4.apartFrom.0',
  ],
  [
    'a unit with and apart from the same',
    [
      ['kit.pieces.4.belongsWith', ['lead', 'boots']],
      ['kit.pieces.4.apartFrom', ['boots']],
    ],
    'with-and-apart kit.pieces.4.belongsWith.1',
  ],
  [
    'a unit with one and apart from another',
    [
      ['kit.pieces.4.belongsWith', ['lead']],
      ['kit.pieces.4.apartFrom', ['boots']],
    ],
  ],
  [
    'a night twice',
    [
      [
        'kit.pieces.25.atNightOn',
        [
          { nightId: 'night-2', state: 'in-use' },
          { nightId: 'night-2', state: 'in-use' },
        ],
      ],
    ],
    'night-twice kit.pieces.25.atNightOn.1.nightId',
  ],
  [
    'a night unknown',
    [
      [
        'kit.pieces.25.atNightOn',
        [
          { nightId: 'night-1', state: 'in-use' },
          { nightId: 'night-9', state: 'in-use' },
        ],
      ],
    ],
    'reference-unknown kit.pieces.25.atNightOn.1.nightId',
  ],
  ['a soft piece squeezed', [['kit.pieces.10.squeezeTo01', 0.5]]],
  ['a rigid bin squeezed', [['kit.bins.0.squeezeTo01', 0.9]], 'rigid-squeezed kit.bins.0.squeezeTo01'],
  ['a bin as large inside as outside', [['kit.bins.0.innerMm', [600, 400, 320]]]],
  ['a bin longer inside', [['kit.bins.0.innerMm', [601, 400, 320]]], 'bin-inside-larger kit.bins.0.innerMm.0'],
  [
    'a bin fixed in a bay that is not there',
    [['kit.bins.0.locks', [lock('drive', 'attic')]]],
    'reference-unknown kit.bins.0.locks.0.bayId',
  ],
  ['fixed in both layouts', [['kit.pieces.33.locks', [lock('drive', 'under-floor'), lock('bed', 'under-floor')]]]],
  [
    'fixed twice in one layout',
    [['kit.pieces.33.locks', [lock('drive', 'under-floor'), lock('drive', 'load-bay')]]],
    'lock-twice kit.pieces.33.locks.1.layout',
  ],
  [
    'fixed in the very corner',
    [['kit.pieces.33.locks', [lock('drive', 'load-bay', { atMm: [990, 1080, 640], sizeMm: [100, 100, 100] })]]],
  ],
  ...([0, 1, 2] as const).map((axis): Case => {
    const atMm = [990, 1080, 640].map((low, index) => (index === axis ? low + 1 : low))
    return [
      `fixed a millimetre outside, axis ${axis}`,
      [['kit.pieces.33.locks', [lock('drive', 'load-bay', { atMm, sizeMm: [100, 100, 100] })]]],
      'lock-outside-bay kit.pieces.33.locks.0.atMm',
    ]
  }),
]

const VEHICLE: readonly Case[] = [
  [
    'two openings of one id',
    [['vehicle.bays.1.openings.0.id', 'load-bay-tailgate']],
    'id-twice vehicle.bays.1.openings.0.id',
  ],
  [
    'two bed heaters of one id',
    [['vehicle.bedHeaters', [1, 2].map((n) => ({ id: 'pad', name: `Pad ${n}`, kind: 'underblanket', powerW: 50 }))]],
    'id-twice vehicle.bedHeaters.1.id',
  ],
  ['an opening as large as its face', [[`${bay}.openings.0.toMm`, [1180, 740]]]],
  [
    'an opening wider than its face',
    [[`${bay}.openings.0.toMm`, [1181, 740]]],
    `opening-outside-face ${bay}.openings.0.toMm`,
  ],
  [
    'an opening higher than its face',
    [[`${bay}.openings.0.toMm`, [1180, 741]]],
    `opening-outside-face ${bay}.openings.0.toMm`,
  ],
  ['an opening of no height', [[`${bay}.openings.0.fromMm`, [0, 710]]], `opening-empty ${bay}.openings.0.toMm`],
  ['an opening upside down', [[`${bay}.openings.0.fromMm`, [0, 711]]], `opening-empty ${bay}.openings.0.toMm`],
  ['an opening at the other end', [[`${bay}.openings.0.face`, 'x+']]],
  ...(['y-', 'y+'] as const).flatMap((face): readonly Case[] => [
    [
      `an opening on ${face}`,
      [
        [`${bay}.openings.0.face`, face],
        [`${bay}.openings.0.toMm`, [1090, 740]],
      ],
    ],
    [
      `an opening beyond ${face}`,
      [
        [`${bay}.openings.0.face`, face],
        [`${bay}.openings.0.toMm`, [1091, 740]],
      ],
      `opening-outside-face ${bay}.openings.0.toMm`,
    ],
  ]),
  [
    'an opening on top',
    [
      [`${bay}.openings.0.face`, 'z+'],
      [`${bay}.openings.0.toMm`, [1090, 1180]],
    ],
  ],
  [
    'an opening beyond the top',
    [
      [`${bay}.openings.0.face`, 'z+'],
      [`${bay}.openings.0.toMm`, [1090, 1181]],
    ],
    `opening-outside-face ${bay}.openings.0.toMm`,
  ],
  [
    'an obstacle that fills the bay',
    [[`${bay}.obstacles.0`, { label: 'o', atMm: [0, 0, 0], sizeMm: [1090, 1180, 740] }]],
  ],
  ...([0, 1, 2] as const).map((axis): Case => {
    const sizeMm = [1090, 1180, 740].map((edge, index) => (index === axis ? edge + 1 : edge))
    return [
      `an obstacle a millimetre too large, axis ${axis}`,
      [[`${bay}.obstacles.0`, { label: 'o', atMm: [0, 0, 0], sizeMm }]],
      `obstacle-outside-bay ${bay}.obstacles.0`,
    ]
  }),
  ...(
    [
      ['x-', 1090],
      ['x+', 1090],
      ['y-', 1180],
      ['y+', 1180],
    ] as const
  ).flatMap(([face, depthMm]): readonly Case[] => [
    [
      `a wall ${face} that leans in almost through`,
      [[`${bay}.slopes.0`, { label: 's', face, insetFloorMm: 0, insetTopMm: depthMm - 1 }]],
    ],
    [
      `a wall ${face} that leans in through the bay at the top`,
      [[`${bay}.slopes.0`, { label: 's', face, insetFloorMm: 0, insetTopMm: depthMm }]],
      `slope-too-deep ${bay}.slopes.0`,
    ],
    [
      `a wall ${face} that leans in through the bay at the floor`,
      [[`${bay}.slopes.0`, { label: 's', face, insetFloorMm: depthMm, insetTopMm: 0 }]],
      `slope-too-deep ${bay}.slopes.0`,
    ],
  ]),
  ['a mat for a mattress', [['kit.pieces.0.bedding.kind', 'mat']]],
  [
    'a pillow for a mattress',
    [['vehicle.bed.mattressPieceIds', ['pillow-imke']]],
    'mattress-not-bedding vehicle.bed.mattressPieceIds.0',
  ],
  [
    'a mattress that is not there',
    [['vehicle.bed.mattressPieceIds', ['mattress-left', 'ghost']]],
    'reference-unknown vehicle.bed.mattressPieceIds.1',
  ],
  [
    'a fitted mattress alone',
    [
      ['vehicle.bed.mattressPieceIds', []],
      ['vehicle.bed.fittedMattressM2KPerW', 0.5],
    ],
  ],
  ['a bed as long and wide as the floor', [['vehicle.bed.sizeMm', [1980, 1180, 90]]]],
  [
    'a bed wider than the floor',
    [['vehicle.bed.sizeMm', [1980, 1181, 90]]],
    'bed-wider-than-flat vehicle.bed.sizeMm.1',
  ],
  [
    'a bed longer than the floor',
    [['vehicle.bed.sizeMm', [1981, 1180, 90]]],
    'bed-longer-than-flat vehicle.bed.sizeMm.0',
  ],
  ['one gram of payload', [['vehicle.masses.permittedG', 2_235_001]]],
  ['payload of nothing', [['vehicle.masses.permittedG', 2_235_000]], 'payload-none vehicle.masses.readyG'],
  ['a front axle at its limit', [['vehicle.masses.frontAxle.limitG', 1_105_000]]],
  [
    'a rear axle over its limit',
    [['vehicle.masses.rearAxle.limitG', 1_129_999]],
    'axle-over-limit vehicle.masses.rearAxle.readyG',
  ],
  // Five per cent of 2,235 kg are 111.75 kg.
  ['axles that add up to five per cent less', [['vehicle.masses.rearAxle.readyG', 1_018_250]]],
  [
    'axles that add up to more than five per cent less',
    [['vehicle.masses.rearAxle.readyG', 1_018_249]],
    'axle-sum vehicle.masses.rearAxle.readyG',
  ],
  ['axles that add up to five per cent more', [['vehicle.masses.rearAxle.readyG', 1_241_750]]],
  [
    'axles that add up to more than five per cent more',
    [['vehicle.masses.rearAxle.readyG', 1_241_751]],
    'axle-sum vehicle.masses.rearAxle.readyG',
  ],
  ['one axle alone', [['vehicle.masses.frontAxle', undefined]]],
  ['a roof at its limit', [['vehicle.masses.roofFittedG', 80_000]]],
  ['a roof over its limit', [['vehicle.masses.roofFittedG', 80_001]], 'roof-over-limit vehicle.masses.roofFittedG'],
  [
    'a roof without a limit',
    [
      ['vehicle.masses.roofFittedG', 80_001],
      ['vehicle.masses.roofLimitG', undefined],
    ],
  ],
  [
    'an electric car that cannot charge',
    [['vehicle.charging', undefined]],
    'electric-without-battery vehicle.charging',
  ],
  [
    'another car without battery and charging',
    [
      ['vehicle.drive', 'combustion'],
      ['vehicle.charging', undefined],
      ['vehicle.battery', undefined],
    ],
  ],
  [
    'a reserve at the charge limit',
    [['vehicle.battery.reserve01', 0.9]],
    'reserve-above-limit vehicle.battery.reserve01',
  ],
  ['a reserve just below it', [['vehicle.battery.reserve01', 0.89]]],
  ['least current equal to most', [['vehicle.charging.minimumA', 16]]],
  [
    'least current above most',
    [['vehicle.charging.minimumA', 17]],
    'current-least-above-most vehicle.charging.minimumA',
  ],
  [
    'a heat pump measured twice at one cold',
    [['vehicle.heater.cop.2.outsideC', -5]],
    'cop-out-of-order vehicle.heater.cop.2.outsideC',
  ],
  [
    'a heat pump measured out of order',
    [['vehicle.heater.cop.1.outsideC', -16]],
    'cop-out-of-order vehicle.heater.cop.1.outsideC',
  ],
]

const NIGHTS: readonly Case[] = [
  ['two nights of one date', [['nights.1.date', '2027-10-08']], 'nights-out-of-order nights.1.date'],
  [
    'two nights of one id',
    [
      ['nights.1.id', 'night-1'],
      ['kit.pieces.25.atNightOn', []],
      ['ledger', []],
    ],
    'id-twice nights.1.id',
  ],
  ['no charge on the second evening', [['nights.1.arriveCharge01', undefined]]],
  [
    'no charge where there is no battery',
    [
      ['nights.0.arriveCharge01', undefined],
      ['vehicle.drive', 'combustion'],
      ['vehicle.battery', undefined],
    ],
  ],
  ...(['checkIn', 'quiet', 'movementBan', 'gateClosed'] as const).map((name): Case => [
    `${name} of no length`,
    [[`nights.1.${name}`, { from: '08:00', to: '08:00' }]],
    `span-empty nights.1.${name}.to`,
  ]),
  ['sixteen hours of sleep', [['nights.0.sleep', { from: '16:30', to: '08:30' }]]],
  ['a minute more', [['nights.0.sleep', { from: '16:30', to: '08:31' }]], 'sleep-too-long nights.0.sleep.to'],
  [
    'the same set-point hour twice',
    [['nights.0.heating.setPoints.2.from', '18:00']],
    'clock-twice nights.0.heating.setPoints.2.from',
  ],
  ['a low equal to the high', [['nights.0.weather.lowC', 8]]],
  [
    'an adapter unknown',
    [['nights.1.hookup.adapterPieceId', 'ghost']],
    'reference-unknown nights.1.hookup.adapterPieceId',
  ],
  [
    'an extension unknown',
    [['nights.1.hookup.extensionPieceId', 'ghost']],
    'reference-unknown nights.1.hookup.extensionPieceId',
  ],
  ['the same volts under load', [['nights.0.hookup.readings.1.volts', 231]]],
  [
    'a tenth of a volt more under load',
    [['nights.0.hookup.readings.1.volts', 231.1]],
    'reading-rises nights.0.hookup.readings.1.volts',
  ],
  [
    'two readings at one current',
    [
      [
        'nights.0.hookup.readings',
        [
          { currentA: 8, volts: 225 },
          { currentA: 8, volts: 226 },
        ],
      ],
    ],
  ],
  [
    'bedding twice',
    [['nights.0.beddingPieceIds', ['bag-imke', 'pillow-imke', 'bag-imke']]],
    'bedding-twice nights.0.beddingPieceIds.2',
  ],
  [
    'bedding unknown',
    [['nights.0.beddingPieceIds', ['bag-imke', 'ghost']]],
    'reference-unknown nights.0.beddingPieceIds.1',
  ],
  [
    'a bed heater that is not there',
    [['nights.0.heating.bedHeaterIds', ['underblanket', 'ghost']]],
    'reference-unknown nights.0.heating.bedHeaterIds.1',
  ],
  ['a charger at the end of the leg', [['nights.0.leg.fastChargers.0.atM', 96_000]]],
  [
    'a charger a metre beyond',
    [['nights.0.leg.fastChargers.0.atM', 96_001]],
    'charger-beyond-leg nights.0.leg.fastChargers.0.atM',
  ],
  [
    'no hookup, no leg',
    [
      ['nights.0.hookup', undefined],
      ['nights.0.leg', undefined],
    ],
  ],
  // In Berlin the clock goes from 02:00 to 03:00 in the night to 28 March 2027: clocks before noon belong to the next day.
  ...(
    [
      ['arrive', '02:30', 'time-skipped nights.0.arrive'],
      ['sleep.from', '02:30', 'time-skipped nights.0.sleep.from'],
      ['sleep.to', '02:59', 'time-skipped nights.0.sleep.to'],
      ['sleep.to', '03:00'],
      ['hookup.plugIn', '02:30', 'time-skipped nights.0.hookup.plugIn'],
      ['hookup.unplug', '02:30', 'time-skipped nights.0.hookup.unplug'],
      ['checkOutBy', '02:30', 'time-skipped nights.0.checkOutBy'],
      ['checkOutBy', '14:30'],
    ] as const
  ).map(([field, clock, ...expected]): Case => [
    `${field} at ${clock} when the clock goes forward`,
    [
      ['nights.0.date', '2027-03-27'],
      [`nights.0.${field}`, clock],
    ],
    ...expected,
  ]),
  [
    'an afternoon of the day before the change',
    [
      ['nights.0.date', '2027-03-28'],
      ['nights.0.hookup.plugIn', '14:30'],
    ],
  ],
]

const REST: readonly Case[] = [
  [
    'nobody who drives',
    [
      ['travellers.0.drives', false],
      ['travellers.1.drives', false],
    ],
    'nobody-drives travellers.0.drives',
  ],
  ['one who drives', [['travellers.0.drives', false]]],
  ['two travellers of one id', [['travellers.2', { ...traveller, id: 'imke' }]], 'id-twice travellers.2.id'],
  ['a trip that does not say when it leaves home', [['leaveHome', undefined]]],
  ['leaving on an impossible day', [['leaveHome.date', '2027-09-31']], 'date-impossible leaveHome.date'],
  ['leaving from an unknown zone', [['leaveHome.zone', 'Europe/Atlantis']], 'zone-unknown leaveHome.zone'],
  // Summer time in Berlin begins on 28 March 2027 at 02:00: the clock goes on from 03:00.
  [
    'coming back at a time that does not exist',
    [['backHome', { date: '2027-03-28', clock: '02:30', zone: 'Europe/Berlin' }]],
    'time-skipped backHome.clock',
  ],
  ['coming back just after it', [['backHome', { date: '2027-03-28', clock: '03:00', zone: 'Europe/Berlin' }]]],
  ['two rules of one id', [['checklist.rules.1', { ...rule(), id: 'own-hush' }]], 'id-twice checklist.rules.1.id'],
  ['two lessons of one id', [['checklist.lessons', [lesson, lesson]]], 'id-twice checklist.lessons.1.id'],
  ['a lesson of a night', [['checklist.lessons', [{ ...lesson, ruleId: 'own-hush', unusedPieceIds: ['boots'] }]]]],
  [
    'a lesson of no night',
    [['checklist.lessons', [{ ...lesson, nightId: 'night-9' }]]],
    'reference-unknown checklist.lessons.0.nightId',
  ],
  [
    'a lesson of no rule',
    [['checklist.lessons', [{ ...lesson, ruleId: 'ghost' }]]],
    'reference-unknown checklist.lessons.0.ruleId',
  ],
  [
    'a lesson of no piece',
    [['checklist.lessons', [{ ...lesson, unusedPieceIds: ['boots', 'ghost'] }]]],
    'reference-unknown checklist.lessons.0.unusedPieceIds.1',
  ],
  ['two ticks', [['checklist.ticks', [tick, { ...tick, stepKey: 'b:n1' }]]]],
  [
    'a tick twice',
    [['checklist.ticks', [tick, { ...tick, stepKey: 'b:n1' }, tick]]],
    'tick-twice checklist.ticks.2.stepKey',
  ],
  [
    'a measurement of no night',
    [['measured', [{ nightId: 'night-9', moment: 'morning', clock: '07:00' }]]],
    'reference-unknown measured.0.nightId',
  ],
  ['two bills of one id', [['ledger.1.id', 'paid-1']], 'id-twice ledger.1.id'],
  ['a bill of no night in particular', [['ledger.1.nightId', undefined]]],
  [
    'a bill paid by nobody known',
    [['ledger.1.paidByTravellerId', 'ghost']],
    'reference-unknown ledger.1.paidByTravellerId',
  ],
  ['a bill of an impossible day', [['ledger.1.date', '2027-02-29']], 'date-impossible ledger.1.date'],
  ['a bill of a leap day', [['ledger.1.date', '2028-02-29']]],
]

function rule(): object {
  return { id: 'r', phase: 'morning', step: 's', reason: 'r', when: true, after: [], durationMin: 0, enabled: true }
}

const CASES: readonly Case[] = [...KIT, ...VEHICLE, ...NIGHTS, ...REST]

describe('a trip that makes no sense', () => {
  it.each(CASES.map(([kind, edits, ...expected]) => [kind, edits, expected] as const))('%s', (_, edits, expected) => {
    const read = parseTrip(edited(edits))
    expect(read.ok ? [] : read.problem.map(({ code, path }) => `${code} ${path.join('.')}`)).toEqual(expected)
  })

  it('every code that reading can give has a case', () => {
    const folder = new URL('../../../../shared/document/parse/', import.meta.url)
    const given = readdirSync(folder).flatMap((name) =>
      [...readFileSync(new URL(name, folder), 'utf8').matchAll(/(?:found|problem)\(\s*'([a-z0-9-]+)'/g)].map(
        (match) => match[1] ?? '',
      ),
    )
    const cased = new Set([
      ...MALFORMED.map(({ code }) => code),
      ...CASES.flatMap(([, , ...expected]) => expected.map((one) => one.split(' ')[0] ?? '')),
      // Tested beside the limit itself.
      'file-too-large',
    ])
    expect(given.length).toBeGreaterThan(40)
    expect([...new Set(given)].filter((code) => !cased.has(code))).toEqual([])
  })
})
