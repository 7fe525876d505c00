/** Sections of the night card: supply, sleepers, next leg, fault nights, pitch. */
import type { Block, Column } from './model.ts'
import { notice } from './notices.ts'
import type { Names } from './names.ts'
import { askedA } from './asked-current.ts'
import type { CardInput, OneNight } from './plan-parts.ts'
import type { Text } from '../text/index.ts'

const PAIR: readonly Column[] = [
  { title: '', share: 55, align: 'left' },
  { title: '', share: 45, align: 'left', strong: true },
]

/** Pairs in two columns, read downwards. */
function pairsInTwo(title: string, rows: readonly (readonly string[])[]): Block {
  const half = Math.ceil(rows.length / 2)
  const label: Column = { title: '', share: 31, align: 'left' }
  const value: Column = { title: '', share: 19, align: 'left', strong: true }
  const two = rows.slice(0, half).map((row, index) => [...row, ...(rows[half + index] ?? ['', ''])])
  return section(title, two, [label, value, label, value])
}

const section = (title: string, rows: readonly (readonly string[])[], columns: readonly Column[] = PAIR): Block => ({
  kind: 'together',
  blocks: [
    { kind: 'heading', level: 2, text: title },
    { kind: 'table', columns, rows },
  ],
})

export function supplyBlocks(one: OneNight, { text }: CardInput): readonly Block[] {
  const { supply } = one.plan.outcome
  const { hookup } = one.night
  if (supply === null || hookup === undefined) {
    return [section(text.t('cards.supply.title'), [[text.t('cards.supply.none'), '']])]
  }
  const { zone } = one.plan.clock
  const supplyInput = one.plan.input.supply
  const rows = [
    [text.t('cards.supply.ask'), text.current(askedA(one.plan)).text],
    [text.t('cards.supply.limitedBy'), text.t(`cards.limit.${supply.limitedBy}`)],
    [
      text.t('cards.supply.volts'),
      `${text.voltage(supply.noLoadV).text} \u203a ${text.voltage(supply.voltsAtLoad).text} (${text.percent(supply.sag01).text})`,
    ],
    [text.t('cards.supply.hold'), text.voltage(supply.holdV).text],
    [text.t('cards.supply.stepDown'), text.voltage(supply.stepDownV).text],
    [text.t('cards.supply.stop'), text.voltage(supply.stopV).text],
    [text.t('cards.supply.watts'), text.power(supply.wattsAtLoad).text],
    [text.t('cards.supply.wiring'), text.power(supply.heatInWiringW).text],
    [text.t('cards.supply.contact'), text.power(supply.contactAtWorstW).text],
    [text.t('cards.supply.energy'), text.energy(one.plan.outcome.fromSiteWh).text],
  ]
  const { pathOhm = 0, heatInPathW = 0, pilotDutyPercent = null } = supply
  if (pathOhm > 0) rows.push([text.t('cards.supply.leads'), text.power(heatInPathW).text])
  if (pilotDutyPercent !== null && one.plan.input.battery !== null)
    rows.push([text.t('cards.supply.pilot', { askA: supply.askA }), text.percent(pilotDutyPercent / 100).text])
  if (supplyInput !== null) {
    rows.push([
      text.t('cards.supply.hours'),
      `${text.clock(supplyInput.plugInUtc, zone)} \u2013 ${text.clock(supplyInput.unplugUtc, zone)}`,
    ])
  }
  const assumed: readonly Block[] = supply.measured ? [] : [notice(text, 'note', text.t('cards.supply.assumed'))]
  const tight: readonly Block[] = supply.belowMinimum
    ? [notice(text, 'caution', text.t('cards.supply.belowMinimum'))]
    : []
  return [
    pairsInTwo(text.t('cards.supply.title'), rows),
    ...tight,
    ...assumed,
    {
      kind: 'blanks',
      labels: [
        text.t('cards.blank.noLoad'),
        text.t('cards.blank.atLoad'),
        text.t('cards.blank.meter'),
        text.t('cards.blank.plug'),
      ],
    },
  ]
}

export function sleeperBlocks(one: OneNight, { text }: CardInput, names: Names): readonly Block[] {
  const { zone } = one.plan.clock
  const clock = (at: (typeof one.plan.outcome.sleepers)[number]['coldFromUtc']): string =>
    at === null ? '\u2013' : text.clock(at, zone)
  const rows = one.plan.outcome.sleepers.map((sleeper) => [
    names.traveller(sleeper.sleeperId),
    text.t(`cards.sleeper.${sleeper.verdict}`),
    text.temperatureDifference(sleeper.marginK).text,
    clock(sleeper.coldFromUtc),
    clock(sleeper.feetColdFromUtc),
    `${text.temperature(sleeper.coldestOperativeC).text} / ${text.temperature(sleeper.coldestFeetC).text}`,
  ])
  if (rows.length === 0) return []
  const column = (
    key: 'name' | 'verdict' | 'margin' | 'cold' | 'feet' | 'coldest',
    share: number,
    strong = false,
  ): Column => ({
    title: text.t(`cards.sleeper.column.${key}`),
    share,
    align: 'left',
    strong,
  })
  const bedding = one.night.beddingPieceIds.map((id) => names.piece(id))
  return [
    section(text.t('cards.sleeper.title'), rows, [
      column('name', 22, true),
      column('verdict', 18, true),
      column('margin', 13),
      column('cold', 15),
      column('feet', 15),
      column('coldest', 22),
    ]),
    ...(bedding.length === 0
      ? []
      : [
          {
            kind: 'paragraph',
            tone: 'plain',
            text: text.t('cards.sleeper.bedding', { names: bedding.join(' \u00b7 ') }),
          } as const,
        ]),
  ]
}

export function legBlocks(one: OneNight, { text }: CardInput): readonly Block[] {
  const { leg } = one.plan.outcome
  if (leg === null) return []
  const rows = [
    [text.t('cards.leg.need'), text.energy(leg.needWh).text],
    [text.t('cards.leg.reserve'), text.energy(leg.reserveWh).text],
    [text.t('cards.leg.margin'), text.energy(leg.marginWh).text],
    ...leg.stops.map((stop) => [
      text.t('cards.leg.stop', { wayM: stop.atM, name: stop.name ?? text.t('cards.leg.unnamed') }),
      text.t('cards.leg.stopHow', { arrive01: stop.arrive01, leave01: stop.leave01, durationS: stop.durationS }),
    ]),
  ]
  const blocked: readonly Block[] = leg.reachable ? [] : [notice(text, 'shortfall', text.t('cards.leg.unreachable'))]
  return [section(text.t('cards.leg.title'), rows), ...blocked]
}

/** How long the battery heats on; a word where it does not, rather than no seconds. */
function heatLeft(hours: number | null, text: Text): string {
  if (hours === null) return '\u2013'
  return hours < 1 / 60 ? text.t('cards.fault.noHeatLeft') : text.duration(hours * 3600)
}

export function faultBlocks(one: OneNight, { text }: CardInput): readonly Block[] {
  const { zone } = one.plan.clock
  const rows = one.plan.faults.map((fault) => [
    text.t(`cards.fault.${fault.fault.kind}`, { atUtc: fault.fault.atUtc, zone }),
    text.temperature(fault.coldestBedC).text,
    fault.depart01 === null ? '\u2013' : text.percent(fault.depart01).text,
    heatLeft(fault.hoursOfHeatLeft, text),
    fault.actByUtc === null ? '\u2013' : text.clock(fault.actByUtc, zone),
  ])
  if (rows.length === 0) return []
  const column = (key: 'what' | 'coldest' | 'depart' | 'heat' | 'actBy', share: number, strong = false): Column => ({
    title: text.t(`cards.fault.column.${key}`),
    share,
    align: 'left',
    strong,
  })
  return [
    section(text.t('cards.fault.title'), rows, [
      column('what', 36, true),
      column('coldest', 16),
      column('depart', 16),
      column('heat', 16),
      column('actBy', 18, true),
    ]),
    { kind: 'paragraph', tone: 'plain', text: text.t('cards.fault.drill') },
  ]
}

export function pitchBlocks(one: OneNight, { text }: CardInput): readonly Block[] {
  const { pitch } = one.plan
  const rows = [[text.t('cards.pitch.park'), text.t(`cards.pitch.park.${pitch.park}`)]]
  if (pitch.headUphill !== null) {
    rows.push([text.t('cards.pitch.head'), text.t(pitch.headUphill ? 'cards.pitch.head.up' : 'cards.pitch.head.down')])
  }
  if (pitch.rampUnder !== null) {
    rows.push([text.t('cards.pitch.ramp'), text.t(`cards.pitch.ramp.${pitch.rampUnder}`, { rampMm: pitch.rampMm })])
  }
  if (pitch.leadReaches !== null) {
    rows.push([text.t('cards.pitch.lead'), text.t(pitch.leadReaches ? 'cards.pitch.lead.yes' : 'cards.pitch.lead.no')])
  }
  return [section(text.t('cards.pitch.title'), rows)]
}
