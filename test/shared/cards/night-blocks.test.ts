/** What must stand on the night card for a plan written by hand: every number in its row, every word beside its number. */
import { describe, expect, it } from 'vitest'
import { nightCard } from '../../../shared/cards/index.ts'
import type { Block, CardInput } from '../../../shared/cards/index.ts'
import { adviceBlocks, drillBlocks, glassBlocks, sleeperSentences } from '../../../shared/cards/night-advice.ts'
import { faultBlocks, legBlocks, pitchBlocks, sleeperBlocks, supplyBlocks } from '../../../shared/cards/night-blocks.ts'
import { figuresOf, timesOf } from '../../../shared/cards/night-card.ts'
import { nightCharts } from '../../../shared/cards/night-charts.ts'
import { namesOf } from '../../../shared/cards/names.ts'
import { noticeBlocks } from '../../../shared/cards/notices.ts'
import { nightsOf } from '../../../shared/cards/plan-parts.ts'
import type { OneNight } from '../../../shared/cards/plan-parts.ts'
import { standardSentences } from '../../../shared/cards/standard-words.ts'
import { phaseWords, stepItem, stepTime, stepWords } from '../../../shared/cards/step-words.ts'
import { stepsOfNight } from '../../../shared/plan/index.ts'
import { sayVerdict, verdictWords } from '../../../shared/cards/verdict-words.ts'
import type { Night } from '../../../shared/document/index.ts'
import type { NightPlan, Plan } from '../../../shared/plan/index.ts'
import { createText } from '../../../shared/text/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsPlan, cardsTrip, ownStep } from '../../support/cards-plan.ts'

const text = createText('en', 'metric')
const trip = cardsTrip()
const plan = cardsPlan(trip)
const input: CardInput = { plan, trip, text, nightId: null, paper: 'a4' }
const [first] = nightsOf(input)
if (first === undefined) throw new Error('the plan has a night')
const names = namesOf(trip, plan.packing)
const plain = (words: string): string => words.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' ')
const utc = (iso: string): Utc => (Date.parse(iso) / 1000) as Utc

type Changed = {
  readonly outcome?: Partial<NightPlan['outcome']>
  readonly supply?: Partial<NonNullable<NightPlan['outcome']['supply']>>
  readonly input?: Partial<NightPlan['input']>
  readonly plan?: Partial<NightPlan>
  readonly night?: Partial<Night>
}
const nightWith = ({ outcome = {}, supply, input: asked = {}, plan: over = {}, night = {} }: Changed): OneNight => {
  const was = first.plan.outcome.supply
  const changed = supply === undefined || was === null ? {} : { supply: { ...was, ...supply } }
  return {
    ...first,
    night: { ...first.night, ...night },
    plan: {
      ...first.plan,
      outcome: { ...first.plan.outcome, ...changed, ...outcome },
      input: { ...first.plan.input, ...asked },
      ...over,
    },
  }
}

const flat = (blocks: readonly Block[]): readonly Block[] =>
  blocks.flatMap((block) => (block.kind === 'together' ? flat(block.blocks) : [block]))
const tableOf = (blocks: readonly Block[]) => flat(blocks).find((block) => block.kind === 'table')
const rowsOf = (blocks: readonly Block[]) => (tableOf(blocks)?.rows ?? []).map((row) => row.map(plain))
/** Two pairs of columns as they are read: down the left, then down the right. */
const pairsOf = (blocks: readonly Block[]) => {
  const rows = rowsOf(blocks)
  return [...rows.map((row) => row.slice(0, 2)), ...rows.map((row) => row.slice(2))].filter(([label]) => label !== '')
}
const headOf = (blocks: readonly Block[]) =>
  tableOf(blocks)?.columns.map(({ title, align, strong = false }) => `${align}${strong ? ' strong' : ''}: ${title}`)
const noticesOf = (blocks: readonly Block[]) =>
  flat(blocks).flatMap((block) => (block.kind === 'notice' ? [[block.tone, block.label, plain(block.text)]] : []))
const wordsOf = (blocks: readonly Block[]) =>
  flat(blocks).flatMap((block) => (block.kind === 'paragraph' ? [plain(block.text)] : []))

describe('the supply', () => {
  const rows: readonly (readonly string[])[] = [
    ['Current to ask for', '12 A'],
    ['Limited by', 'the breaker'],
    ['Volts: no load › at that current (sag)', `231 V › 222 V (${plain(text.percent(0.038).text)})`],
    ['Add no load below', '218 V'],
    ['Step the current down below', '215 V'],
    ['Stop charging below', '207 V'],
    ['Power at the plug', plain(text.power(2840).text)],
    ['Lost as heat in the wiring', '66 W'],
    ['In one weak contact, at worst', '60 W'],
    ['Energy from the post', plain(text.energy(35_000).text)],
    // From 16:00 to 05:40 UTC, an hour later at the site.
    ['Plugged in', '17:00 – 06:40'],
  ]
  it('stands in pairs read downwards, with blanks for what is read there', () => {
    const blocks = supplyBlocks(first, input)
    expect(pairsOf(blocks)).toEqual(rows)
    expect(headOf(blocks)).toEqual(['left: ', 'left strong: ', 'left: ', 'left strong: '])
    expect(flat(blocks)[0]).toEqual({ kind: 'heading', level: 2, text: 'Supply' })
    expect(blocks.at(-1)).toEqual({
      kind: 'blanks',
      labels: ['Volts, no load', 'Volts and amps, loaded', 'Meter, kWh', 'Plug warm? 10 min / 60 min'],
    })
    expect(noticesOf(blocks)).toEqual([])
  })

  it('tells of leads and pilot only where they are known', () => {
    const known = { pathOhm: 0.02, heatInPathW: 30, pilotDutyPercent: 20, askA: 12 }
    const labels = (changed: Changed) => pairsOf(supplyBlocks(nightWith(changed), input)).slice(10)
    const battery = { usableWh: 1, reserve01: 0, chargeLimit01: 1, efficiency01: 1, overheadW: 0, coldOverheadW: 0 }
    const withBattery = { battery: { ...battery, arrive01: 0.5, fastMaxW: 1 } }
    expect(labels({ supply: known, input: withBattery }).map(([label, value]) => `${label}: ${value}`)).toEqual([
      'Of it in known leads and adapter: 30 W',
      `Pilot duty cycle for 12 A: ${plain(text.percent(0.2).text)}`,
      'Plugged in: 17:00 – 06:40',
    ])
    expect(labels({ supply: { ...known, pathOhm: 0 } }).map(([label]) => label)).toEqual(['Plugged in'])
    expect(labels({ supply: { ...known, pilotDutyPercent: null }, input: withBattery })).toHaveLength(2)
  })

  it('asks for what the traveller wants where that is less, never for more than the circuit bears', () => {
    const asked = (currentA: number | null) =>
      rowsOf(
        supplyBlocks(nightWith({ input: { decisions: { ...first.plan.input.decisions, currentA } } }), input),
      )[0]?.[1]
    expect([asked(null), asked(8), asked(16)]).toEqual(['12 A', '8 A', '12 A'])
  })

  it('asks for nothing without an earth, and nothing for a battery that may not or cannot charge there', () => {
    const supplyInput = first.plan.input.supply
    const battery = { usableWh: 1, reserve01: 0, chargeLimit01: 1, efficiency01: 1, overheadW: 0, coldOverheadW: 0 }
    const drives = { battery: { ...battery, arrive01: 0.5, fastMaxW: 1 } }
    const asked = (over: Partial<NonNullable<typeof supplyInput>>, changed: Changed = {}) => {
      if (supplyInput === null) throw new Error('the night has a post')
      const one = nightWith({ ...changed, input: { ...changed.input, supply: { ...supplyInput, ...over } } })
      return rowsOf(supplyBlocks(one, input))[0]?.[1]
    }
    expect(asked({ earthOk: 'no' })).toBe('0 A')
    expect(asked({ earthOk: 'not-known' })).toBe('12 A')
    expect(asked({ chargeAllowed: false }, { input: drives })).toBe('0 A')
    expect(asked({}, { input: drives, supply: { belowMinimum: true } })).toBe('0 A')
    // A heater on the post itself draws where no battery may.
    expect(asked({ chargeAllowed: false }, { input: { battery: null } })).toBe('12 A')
  })

  it('warns of volts that were assumed and of a current below the least', () => {
    const label = (tone: 'note' | 'caution') => text.t(`cards.tone.${tone}`)
    expect(noticesOf(supplyBlocks(nightWith({ supply: { measured: false, belowMinimum: true } }), input))).toEqual([
      ['caution', label('caution'), plain(text.t('cards.supply.belowMinimum'))],
      ['note', label('note'), plain(text.t('cards.supply.assumed'))],
    ])
  })

  it('is said to be none where there is no post', () => {
    const none = [['No hookup this night', '']]
    expect(rowsOf(supplyBlocks(nightWith({ outcome: { supply: null } }), input))).toEqual(none)
    const { hookup: _post, ...bare } = first.night
    expect(rowsOf(supplyBlocks({ ...first, night: bare }, input))).toEqual(none)
  })
})

describe('the sleepers', () => {
  const difference = (byK: number) => plain(text.temperatureDifference(byK).text)

  it('stand with their verdict, margin, and since when they or their feet are cold', () => {
    const blocks = sleeperBlocks(first, input, names)
    expect(rowsOf(blocks)).toEqual([
      ['Ada', 'cold', difference(-2.2), '03:20', '02:10', '7 °C / 4 °C'],
      ['Bo & <i>Zoë</i>', 'warm enough', difference(3.4), '–', '–', '7 °C / 4 °C'],
    ])
    expect(headOf(blocks)).toEqual([
      'left strong: Who',
      'left strong: Verdict',
      'left: Margin',
      'left: Cold from',
      'left: Feet cold from',
      'left: Coldest bed / feet',
    ])
    expect(wordsOf(blocks)).toEqual(['Bedding: Winter quilt · Mattress.'])
  })

  it('need no bedding to be told, and are not told where nobody sleeps', () => {
    expect(wordsOf(sleeperBlocks(nightWith({ night: { beddingPieceIds: [] } }), input, names))).toEqual([])
    expect(sleeperBlocks(nightWith({ outcome: { sleepers: [] } }), input, names)).toEqual([])
  })
})

describe('what is said of sleepers, plan and failures', () => {
  const [ada] = first.plan.outcome.sleepers
  if (ada === undefined) throw new Error('somebody sleeps')

  it('is a sentence for each who turns cold or has cold feet, and none for others', () => {
    const said = (over: Partial<typeof ada>) =>
      wordsOf(sleeperSentences(nightWith({ outcome: { sleepers: [{ ...ada, ...over }] } }), input))
    expect(wordsOf(sleeperSentences(first, input))).toHaveLength(1)
    expect(said({})[0]).toContain('Ada')
    expect(said({ feetColdFromUtc: null })).toHaveLength(1)
    expect(said({ coldFromUtc: null })).toHaveLength(1)
    expect(said({ coldFromUtc: null, feetColdFromUtc: null })).toEqual([])
  })

  type Search = NonNullable<NightPlan['search']>
  const searched = (over: object, decisions: object = {}) =>
    adviceBlocks(
      nightWith({ plan: { search: { front: [{ decisions }], recommendedIndex: 0, ...over } as unknown as Search } }),
      input,
    )

  it('is the plan to take over with its reasons, and its bedding where no reason names it', () => {
    const because = plain(text.t('night.because.saves-moves', { count: 2 }))
    const bedding = plain(text.t('night.because.bedding', { name: text.t('night.bedding.none') }))
    const reasons = [{ code: 'saves-moves', value: 2 }]
    expect(searched({ reasons })[0]).toMatchObject({
      kind: 'together',
      blocks: [
        { kind: 'heading', level: 2, text: 'Recommended' },
        { kind: 'paragraph', tone: 'plain' },
      ],
    })
    expect(wordsOf(searched({ reasons }))).toEqual([because])
    expect(wordsOf(searched({ reasons }, { beddingSetId: 'gone' }))).toEqual([`${because} ${bedding}`])
    const named = [...reasons, { code: 'bedding', setId: 'gone' }]
    expect(wordsOf(searched({ reasons: named }, { beddingSetId: 'gone' }))).toEqual([`${because} ${bedding}`])
    expect(wordsOf(searched({}))).toEqual([''])
    expect(adviceBlocks(first, input)).toEqual([])
    expect(searched({ reasons, recommendedIndex: 5 })).toEqual([])
  })

  it('is what to do about each failure for which there is advice', () => {
    const [fault] = first.plan.faults
    if (fault === undefined) throw new Error('the plan rehearses a fault')
    const advice = { actions: [{ code: 'covers-up' }], byUtc: null, byColdUtc: null, holds: true }
    const faults = [fault, { ...fault, advice }] as unknown as NightPlan['faults']
    const title = plain(text.t('night.fault.supply-lost', { time: '03:00' }))
    expect(wordsOf(drillBlocks(nightWith({ plan: { faults } }), input))).toEqual([
      `${title}: ${plain(text.t('night.action.covers-up'))} ${plain(text.t('night.action.holds'))}`,
    ])
  })
})

describe('the leg', () => {
  const { leg } = first.plan.outcome
  if (leg === null) throw new Error('the plan has a leg')

  it('stands with what it needs, keeps and leaves, and each stop with its charge and time', () => {
    const [stop] = leg.stops
    if (stop === undefined) throw new Error('the leg has a stop')
    const one = nightWith({ outcome: { leg: { ...leg, stops: [stop, { ...stop, name: null }] } } })
    const how = plain(text.t('cards.leg.stopHow', { arrive01: 0.31, leave01: 0.6, durationS: 1500 }))
    expect(rowsOf(legBlocks(one, input))).toEqual([
      ['Needs', plain(text.energy(33_000).text)],
      ['Reserve kept', plain(text.energy(7400).text)],
      ['In hand', plain(text.energy(6930).text)],
      ['Stop after 84 km: Valley car park', how],
      ['Stop after 84 km: fast charger', how],
    ])
    expect(noticesOf(legBlocks(one, input))).toEqual([])
    expect(headOf(legBlocks(one, input))).toEqual(['left: ', 'left strong: '])
  })

  it('says where it cannot be driven; without a leg there is nothing to say', () => {
    const blocked = legBlocks(nightWith({ outcome: { leg: { ...leg, reachable: false } } }), input)
    expect(noticesOf(blocked).map(([tone, , words]) => [tone, words])).toEqual([
      ['shortfall', plain(text.t('cards.leg.unreachable'))],
    ])
    expect(legBlocks(nightWith({ outcome: { leg: null } }), input)).toEqual([])
  })
})

describe('what may fail', () => {
  const [fault] = first.plan.faults
  if (fault === undefined) throw new Error('the plan rehearses a fault')
  const faulty = (...over: readonly Partial<typeof fault>[]) =>
    faultBlocks(nightWith({ plan: { faults: over.map((one) => ({ ...fault, ...one })) } }), input)

  it('stands with the coldest bed, the charge, the heat left, and until when to act', () => {
    // At 02:00 and 04:00 UTC, an hour later at the site.
    expect(rowsOf(faulty({}))).toEqual([
      ['Supply lost at 03:00', '3 °C', plain(text.percent(0.5).text), plain(text.duration(11.5 * 3600)), '05:00'],
    ])
    expect(headOf(faulty({}))).toEqual([
      'left strong: What',
      'left: Coldest bed',
      'left: At departure',
      'left: Heat left',
      'left strong: Act by',
    ])
    expect(wordsOf(faulty({}))).toEqual([plain(text.t('cards.fault.drill'))])
  })

  it('leaves open what is not known, and has a word for no heat at all', () => {
    const unknown = { depart01: null, hoursOfHeatLeft: null, actByUtc: null }
    const atUtc = fault.fault.atUtc
    const rows = rowsOf(
      faulty(
        { ...unknown, fault: { kind: 'heater-fails', atUtc } },
        { hoursOfHeatLeft: 0 },
        { hoursOfHeatLeft: 1 / 60 },
        { fault: { kind: 'breaker-trips', atUtc, heldA: null, resetUtc: null } },
      ),
    )
    expect(rows.map(([what, , ...rest]) => [what, ...rest])).toEqual([
      ['Heater fails at 03:00', '–', '–', '–'],
      ['Supply lost at 03:00', plain(text.percent(0.5).text), 'none', '05:00'],
      ['Supply lost at 03:00', plain(text.percent(0.5).text), plain(text.duration(60)), '05:00'],
      ['Breaker trips at 03:00', plain(text.percent(0.5).text), plain(text.duration(11.5 * 3600)), '05:00'],
    ])
    expect(faulty()).toEqual([])
  })
})

describe('the pitch', () => {
  const pitched = (over: Partial<NightPlan['pitch']>) =>
    rowsOf(pitchBlocks(nightWith({ plan: { pitch: { ...first.plan.pitch, ...over } } }), input))

  it('says how to park, where the head lies, where ramps go, and whether the lead reaches', () => {
    expect(pitched({})).toEqual([
      ['Park', 'nose out'],
      ['Head', 'lies uphill'],
      ['Ramps', plain(text.t('cards.pitch.ramp.rear', { rampMm: 88 }))],
      ['Lead', 'reaches the post'],
    ])
    expect(pitched({ park: 'nose-in', headUphill: false, rampUnder: 'left', leadReaches: false })).toEqual([
      ['Park', 'nose in'],
      ['Head', 'lies downhill: turn round or use ramps'],
      ['Ramps', plain(text.t('cards.pitch.ramp.left', { rampMm: 88 }))],
      ['Lead', 'does not reach the post'],
    ])
    expect(pitched({ park: 'not-known', headUphill: null, rampUnder: null, leadReaches: null })).toEqual([
      ['Park', 'not known: ask where the post is'],
    ])
  })
})

describe('figures and times', () => {
  const figures = (changed: Changed) =>
    figuresOf(nightWith(changed), input).map(({ label, value }) => `${label}: ${plain(value)}`)

  it('are those that decide the night', () => {
    expect(figures({})).toEqual([
      `coldest outside: ${plain(text.temperature(-10).text)}`,
      `coldest in bed: ${plain(text.temperature(6.9).text)}`,
      'ask for: 12 A',
      `at departure: ${plain(text.percent(0.64).text)}`,
      `in hand after the leg: ${plain(text.energy(6930).text)}`,
    ])
    expect(figures({ outcome: { supply: null, leg: null, depart01: null } })).toHaveLength(2)
    expect(figures({ outcome: { depart01: null, leisureDepart01: 0.4, leg: null } }).at(-1)).toBe(
      `at departure: ${plain(text.percent(0.4).text)}`,
    )
  })

  it('run through the night in order, by the site’s own clock', () => {
    expect(timesOf(first, input)).toEqual([
      ['Arrive', '16:10'],
      ['Sunset', '16:52'],
      ['Civil dusk', '17:24'],
      ['Quiet from', '22:00'],
      ['Bedtime', '22:00'],
      ['Wake', '05:45'],
      ['Depart', '06:40'],
      ['Civil dawn', '06:58'],
      ['Quiet until', '07:00'],
      ['Be at the target', '07:10'],
      ['Sunrise', '07:30'],
      ['Check out by', '11:00'],
    ])
  })

  it('tell gates and bans where there are some, and stand on the card read downwards', () => {
    const clock = {
      ...first.plan.clock,
      gateFromUtc: utc('2026-11-13T22:00:00Z'),
      gateToUtc: utc('2026-11-14T03:00:00Z'),
      banFromUtc: utc('2026-11-13T23:00:00Z'),
      banToUtc: utc('2026-11-14T04:00:00Z'),
      checkOutUtc: null,
    }
    const times = timesOf(nightWith({ plan: { clock } }), input)
    expect(times.slice(5, 9)).toEqual([
      ['Gate closes', '23:00'],
      ['No vehicle may move from', '00:00'],
      ['Gate opens', '04:00'],
      ['Vehicles may move from', '05:00'],
    ])
    const card = nightCard({ ...input, nightId: 'n1' })
    const table = flat(card.blocks).find((block) => block.kind === 'table')
    expect(table?.rows).toEqual([
      ['16:10', 'Arrive', '06:40', 'Depart'],
      ['16:52', 'Sunset', '06:58', 'Civil dawn'],
      ['17:24', 'Civil dusk', '07:00', 'Quiet until'],
      ['22:00', 'Quiet from', '07:10', 'Be at the target'],
      ['22:00', 'Bedtime', '07:30', 'Sunrise'],
      ['05:45', 'Wake', '11:00', 'Check out by'],
    ])
    expect(table?.columns.map(({ align, strong }) => [align, strong])).toEqual([
      ['right', true],
      ['left', undefined],
      ['right', true],
      ['left', undefined],
    ])
  })

  it('with an odd number of times leave the last place empty', () => {
    const clock = { ...first.plan.clock, checkOutUtc: null }
    const nights = [{ ...first.plan, clock }]
    const card = nightCard({ ...input, nightId: 'n1', plan: { ...plan, nights } })
    const table = flat(card.blocks).find((block) => block.kind === 'table')
    expect(table?.rows.at(-1)).toEqual(['05:45', 'Wake', '', ''])
    expect([card.title, card.subtitle]).toEqual([text.t('cards.night.title'), 'Bat count above the tarn · Grey estate'])
  })

  it('begin a page for each night but the first', () => {
    const kinds = nightCard(input).blocks.map(({ kind }) => kind)
    expect(kinds.filter((kind) => kind === 'page-break')).toHaveLength(1)
    expect(kinds[0]).toBe('heading')
  })
})

describe('the charts', () => {
  const labels = (one: OneNight, of: CardInput = input) =>
    nightCharts(one, of).map((block) =>
      block.kind === 'drawing' ? block.shapes.flatMap((shape) => (shape.kind === 'label' ? [shape.text] : [])) : [],
    )

  it('name the moments of the night and their lines', () => {
    const [temperatures, charge, power] = labels(first)
    expect(temperatures).toEqual(
      expect.arrayContaining([
        plain(text.t('cards.chart.temperature', { unit: '°C' })),
        'Sunset',
        'Bedtime',
        'Wake',
        'Civil dawn',
        'Depart',
        ...(['bed', 'feet', 'outside', 'dew'] as const).map((key) => text.t(`cards.chart.${key}`)),
      ]),
    )
    expect(charge).toEqual(expect.arrayContaining([text.t('cards.chart.charge'), text.t('cards.chart.battery')]))
    expect(charge).not.toContain('Sunset')
    expect(charge).not.toContain(text.t('cards.chart.leisure'))
    expect(power).toEqual(
      expect.arrayContaining([
        text.t('cards.chart.power'),
        text.t('cards.chart.supply'),
        text.t('cards.chart.heating'),
      ]),
    )
  })

  it('leave out what there is none of: a sunset, a battery, power that never flows', () => {
    const { series, clock } = { ...first.plan, series: first.plan.outcome.series }
    const sun = { ...clock.sun, sunsetUtc: null }
    expect(labels(nightWith({ plan: { clock: { ...clock, sun } } }))[0]).not.toContain('Sunset')
    expect(labels(nightWith({ outcome: { depart01: null } })).map(([title]) => title)).not.toContain(
      text.t('cards.chart.charge'),
    )
    const still = series.atUtc.map(() => 10)
    const dark = { ...series, supplyW: still, heatingElectricW: still }
    expect(labels(nightWith({ outcome: { series: dark } }))).toHaveLength(2)
    const trickle = { ...dark, supplyW: series.atUtc.map(() => 11) }
    expect(labels(nightWith({ outcome: { series: trickle } }))[2]).not.toContain(text.t('cards.chart.heating'))
    expect(
      nightCharts(nightWith({ outcome: { series: { ...series, atUtc: series.atUtc.slice(0, 1) } } }), input),
    ).toEqual([])
  })

  it('draw a leisure battery, alone or beside the other', () => {
    const leisure01 = first.plan.outcome.series.charge01
    const series = { ...first.plan.outcome.series, leisure01 }
    const alone = labels(nightWith({ outcome: { series, depart01: null, leisureDepart01: 0.5 } }))[1]
    expect(alone).toContain(text.t('cards.chart.leisure'))
    expect(alone).not.toContain(text.t('cards.chart.battery'))
  })

  it('speak in degrees Fahrenheit where the traveller does: -10 to 2 degrees outside are 14 to 36', () => {
    const us = createText('en', 'us')
    const [temperatures] = labels(first, { ...input, text: us })
    expect(temperatures).toContain(us.t('cards.chart.temperature', { unit: '°F' }))
    const numbers = (temperatures ?? []).map(Number).filter((value) => !Number.isNaN(value))
    expect(Math.min(...numbers)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...numbers)).toBeGreaterThanOrEqual(50)
  })
})

describe('the glass', () => {
  type Glass = NonNullable<NightPlan['outcome']['glass']>[number]
  const pane = (over: Partial<Glass>): Glass => ({
    id: 'windscreen',
    surfaceC: [],
    condensateG: [],
    frostG: [],
    mostCondensateG: 12,
    mostFrostG: 30,
    wetFromUtc: null,
    frostFromUtc: null,
    ...over,
  })
  const said = (glass: readonly Glass[], windowCosts: NightPlan['outcome']['windowCosts'] = []) =>
    wordsOf(glassBlocks(nightWith({ outcome: { glass, windowCosts } }), input))

  it('is told pane by pane, dew and frost from when, dry panes not at all', () => {
    const dew = plain(text.t('night.pane.dew', { dewG: 12, time: '23:00' }))
    const frost = plain(text.t('night.pane.frost', { frostG: 30, time: '02:00' }))
    const wetFromUtc = utc('2026-11-13T22:00:00Z')
    const frostFromUtc = utc('2026-11-14T01:00:00Z')
    expect(
      said([
        pane({ wetFromUtc, frostFromUtc }),
        pane({ id: 'tailgate', frostFromUtc }),
        pane({ id: 'rear-sides' }),
        pane({ id: 'front-sides', wetFromUtc }),
      ]),
    ).toEqual([`On the glass: windscreen ${dew}; ${frost} · tailgate window ${frost} · front side windows ${dew}.`])
    expect(said([pane({})])).toEqual([])
  })

  it('has what an open window takes, as electricity where the heater runs on it, for three gaps', () => {
    const cost = (gapMm: number, heatW: number, electricW: number | null) => ({
      gapMm,
      airM3PerH: 10,
      heatW,
      electricW,
    })
    const costs = [cost(5, 100, 40), cost(10, 200, null), cost(15, 300, 120), cost(20, 400, 160)]
    const gap = (lengthMm: number, powerW: number) => plain(`${text.length(lengthMm).text}: ${text.power(powerW).text}`)
    expect(said([], costs)).toEqual([
      `A window open by, and the power it takes: ${gap(5, 40)} · ${gap(10, 200)} · ${gap(20, 160)}.`,
    ])
  })
})

describe('the verdict in one sentence', () => {
  const verdict: Plan['verdict'] = { ...plan.verdict, holds: true, shortfalls: 0 }
  const say = (over: Partial<Plan['verdict']>) => plain(sayVerdict({ ...verdict, ...over }, 'Europe/Zurich', text))
  const charge = plain(text.percent(0.64).text)

  it('has its numbers where there are some', () => {
    const coldest = plain(text.temperature(6.9).text)
    expect(say({})).toBe(
      `Holds. ${charge} at departure; ${plain(text.energy(6930).text)} in hand after the leg; coldest ${coldest} at 05:40; 5 moves at dusk.`,
    )
    expect(say({ depart01: null, legMarginWh: null, movesAtDusk: 0, holds: false, shortfalls: 2 })).toBe(
      `Does not hold: 2 reasons. coldest ${coldest} at 05:40; no moves at dusk.`,
    )
    const short = plain(text.t('verdict.short', { shortWh: 1500 }))
    expect(say({ legMarginWh: -1500, movesAtDusk: 1, holds: false, shortfalls: 1 })).toBe(
      `Does not hold: one reason. ${charge} at departure; ${short}; coldest ${coldest} at 05:40; one move at dusk.`,
    )
    expect(short).not.toContain('-')
    expect(say({ legMarginWh: 0 })).toContain('in hand after the leg')
  })

  it('is the trip’s, or that of the night that the card is about', () => {
    const nightVerdicts = [
      { ...verdict, movesAtDusk: 1 },
      { ...verdict, movesAtDusk: 2 },
    ]
    const words = (nightId: string | null, of: Plan = { ...plan, verdict, nightVerdicts }) =>
      verdictWords({ ...input, plan: of, nightId })
    expect(words(null)).toContain('5 moves at dusk')
    expect(words('n1')).toContain('one move at dusk')
    expect(words('n2')).toContain('2 moves at dusk')
    expect(words('gone')).toContain('5 moves at dusk')
    expect(words('n2', { ...plan, verdict, nightVerdicts: [] })).toContain('5 moves at dusk')
  })
})

describe('steps in words', () => {
  const step = (over: Partial<ReturnType<typeof ownStep>> = {}) => ownStep('s', 'n1', 'bedtime', 'Close up', over)
  const startUtc = utc('2026-11-13T16:00:00Z')
  const deadlineUtc = utc('2026-11-13T17:00:00Z')

  it('take the zone of their night, else that of the first', () => {
    const [one] = plan.nights
    if (one === undefined) throw new Error('the plan has a night')
    const moved = { ...plan, nights: [one, { ...one, nightId: 'n2', clock: { ...one.clock, zone: 'Asia/Kathmandu' } }] }
    const told = (nightId: string, of = moved): string | null =>
      stepTime(ownStep('s', nightId, 'bedtime', 'Close up', { startUtc }), of, text)
    // Zurich is an hour ahead of UTC in November, Kathmandu 5 h 45 min.
    expect(told('n1')).toBe('17:00')
    expect(told('n2')).toBe('21:45')
    expect(told('gone')).toBe('17:00')
    expect(told('n1', { ...plan, nights: [] })).toBe('16:00')
  })

  it('take the zone of home at home, with the day of the week', () => {
    const home = {
      leave: { atUtc: startUtc, zone: 'Europe/London' },
      back: { atUtc: startUtc, zone: 'Asia/Kathmandu' },
    }
    const told = (phase: 'before-leaving' | 'on-the-road' | 'back-home', of = home): string | null =>
      stepTime(ownStep('s', 'n1', phase, 'Close up', { startUtc }), { ...plan, home: of }, text)
    expect(told('before-leaving')).toBe('Fri\u00a016:00')
    expect(told('back-home')).toBe('Fri\u00a021:45')
    expect(told('on-the-road')).toBe('17:00')
    expect(stepTime(ownStep('s', 'n1', 'back-home', 'Close up', { startUtc }), plan, text)).toBe('Fri\u00a017:00')
    const due = ownStep('s', 'n1', 'before-leaving', 'Close up', { startUtc, deadlineUtc })
    expect(stepTime(due, { ...plan, home }, text)).toBe('by Fri\u00a017:00')
  })

  it('are the traveller’s own, or those of their key; a key without words is shown as it is', () => {
    expect(stepWords(step(), plan, text)).toEqual({ step: 'Close up', reason: 'Because the night is cold.' })
    const keyed = step({
      text: { kind: 'key', step: 'problem.leave-before-gate', reason: 'no.such.key' },
      params: { departUtc: startUtc, gateToUtc: deadlineUtc, lostS: 3600 },
    })
    const words = stepWords(keyed, plan, text)
    expect(words.step).toContain('17:00 is before the gate opens at 18:00')
    expect(words.reason).toBe('no.such.key')
  })

  it('say by when, else when, else nothing', () => {
    expect(stepTime(step({ deadlineUtc, startUtc }), plan, text)).toBe('by 18:00')
    expect(stepTime(step({ startUtc }), plan, text)).toBe('17:00')
    expect(stepTime(step({ startUtc: null }), plan, text)).toBeNull()
  })

  it('stand under their phase, which says by when all of it is done where the plan tells', () => {
    const home = { leave: { atUtc: startUtc, zone: 'Asia/Kathmandu' }, back: null }
    const told = (phase: Parameters<typeof phaseWords>[1]['phase'], of = plan): string =>
      phaseWords(of, { nightId: 'n1', phase }, text)
    expect(told('before-leaving')).toBe('Before leaving')
    expect(told('before-leaving', { ...plan, home })).toBe('Before leaving · by Fri\u00a021:45')
    expect(told('bedtime')).toBe('Bedtime · by 22:00')
    expect(told('arriving')).toBe('Arriving')
    expect(told('back-home', { ...plan, home })).toBe('Back home')
    expect(told('bedtime', { ...plan, nights: [] })).toBe('Bedtime')
  })

  it('are read with their night, those before leaving all with the first', () => {
    const steps = (['n1', 'n2'] as const).flatMap((id) =>
      (['before-leaving', 'bedtime', 'back-home'] as const).map((phase) => ownStep(`${phase}:${id}`, id, phase, 'Do')),
    )
    const of = { ...plan, checklist: { steps, conflicts: [] } }
    const keys = (id: string): readonly string[] => stepsOfNight(of, id).map(({ key }) => key)
    expect(keys('n1')).toEqual(['before-leaving:n1', 'bedtime:n1', 'back-home:n1', 'before-leaving:n2'])
    expect(keys('n2')).toEqual(['bedtime:n2', 'back-home:n2'])
    expect(keys('gone')).toEqual([])
  })

  it('say until when to begin, where that is before the deadline', () => {
    const detail = (over: Parameters<typeof step>[0]) => stepItem(step(over), plan, text).detail
    const latestStartUtc = utc('2026-11-13T16:45:00Z')
    expect(detail({ deadlineUtc, latestStartUtc })).toBe('Because the night is cold. Start by 17:45.')
    expect(detail({ deadlineUtc, latestStartUtc: deadlineUtc })).toBe('Because the night is cold.')
    expect(detail({ deadlineUtc: null, latestStartUtc })).toBe('Because the night is cold.')
    expect(detail({ deadlineUtc, latestStartUtc: null })).toBe('Because the night is cold.')
    const silent = { text: { kind: 'own', step: 'Close up', reason: '' } } as const
    expect(detail(silent)).toBeNull()
    expect(detail({ ...silent, deadlineUtc, latestStartUtc })).toBe('Start by 17:45.')
    expect(stepItem(step({ state: 'done', caution: true }), plan, text)).toEqual({
      text: 'Close up',
      detail: 'Because the night is cold.',
      time: '17:00',
      state: 'done',
      caution: true,
    })
  })
})

describe('notices', () => {
  const finding = (code: string, severity: Plan['findings'][number]['severity'], over: object = {}) =>
    ({
      id: code,
      severity,
      area: 'night',
      nightId: 'n1',
      problem: { code, path: [], params: {} },
      ...over,
    }) as Plan['findings'][number]
  const noticed = (findings: readonly Plan['findings'][number][], nightId: string | null = null) =>
    noticesOf(noticeBlocks({ ...input, plan: { ...plan, findings } }, ['night', 'leg'], nightId)).map(([tone]) => tone)

  it('stand worst first, each sentence once, of the areas and the night asked for', () => {
    const list = [
      finding('night-earth-missing', 'note'),
      finding('site-and-codes-decide', 'caution'),
      finding('readings-do-not-fit', 'shortfall'),
    ]
    expect(noticed(list)).toEqual(['shortfall', 'caution', 'note'])
    expect(noticed([finding('site-and-codes-decide', 'caution'), finding('site-and-codes-decide', 'note')])).toEqual([
      'caution',
    ])
    expect(noticed([finding('site-and-codes-decide', 'note', { area: 'load' })])).toEqual([])
    expect(noticed([finding('site-and-codes-decide', 'note', { area: 'leg' })])).toEqual(['note'])
    const elsewhere = [finding('site-and-codes-decide', 'note', { nightId: 'n2' })]
    expect([noticed(elsewhere, 'n1'), noticed(elsewhere, 'n2'), noticed(elsewhere)]).toEqual([[], ['note'], ['note']])
    expect(noticed([finding('site-and-codes-decide', 'note', { nightId: null })], 'n1')).toEqual(['note'])
    expect(noticesOf(noticeBlocks({ ...input, plan: { ...plan, findings: list } }, ['night'], null))[0]?.[1]).toBe(
      text.t('cards.tone.shortfall'),
    )
  })
})

describe('the standards for people awake', () => {
  type Standards = NonNullable<NightPlan['standards']>
  const atUtc = utc('2026-11-13T20:00:00Z')
  const standards = (over: object = {}) =>
    ({
      sitting: { atUtc, vote: -0.749, dissatisfied01: 0.17 },
      asleep: { vote: 0, leastClo: 1 },
      outside: [],
      ...over,
    }) as unknown as Standards
  const said = (of: Standards) => standardSentences({ ...first.plan, standards: of }, text).map(plain)
  const zone = first.plan.clock.zone

  it('give their vote in tenths, or say that they know nothing', () => {
    const sitting = plain(text.t('cards.standards.sitting', { atUtc, zone, vote: -0.7, share01: 0.17 }))
    const unknown = plain(text.t('cards.standards.sittingUnknown', { atUtc, zone }))
    expect(said(standards())).toEqual([sitting])
    expect(said(standards({ sitting: { atUtc, vote: null, dissatisfied01: 0.1 } }))).toEqual([unknown])
    expect(said(standards({ sitting: { atUtc, vote: 1, dissatisfied01: null } }))).toEqual([unknown])
    const { standards: _none, ...without } = first.plan
    expect(standardSentences(without, text)).toEqual([])
  })

  it('say that they know nothing of a sleeper only where both know nothing', () => {
    const asleep = plain(text.t('cards.standards.asleep'))
    const of = (vote: number | null, leastClo: number | null) =>
      said(standards({ asleep: { vote, leastClo } })).slice(1)
    expect([of(null, null), of(1, null), of(null, 1)]).toEqual([[asleep], [], []])
  })

  it('tell the clothing wanted outside, and what the wind makes of the cold', () => {
    const work = { atUtc, leastClo: 2, neutralClo: 3, windChillC: -12 }
    const of = (over: object) => said(standards({ outside: [{ ...work, ...over }] })).at(-1)
    const clothes = plain(text.t('cards.standards.outside', { atUtc, zone, leastClo: 2, neutralClo: 3 }))
    const wind = plain(text.t('cards.standards.windChill', { tempC: -12 }))
    const unknown = plain(text.t('cards.standards.outsideUnknown', { atUtc, zone }))
    expect(of({})).toBe(`${clothes} ${wind}`)
    expect(of({ windChillC: null })).toBe(clothes)
    expect(of({ leastClo: null })).toBe(`${unknown} ${wind}`)
    expect(of({ neutralClo: null, windChillC: null })).toBe(unknown)
  })
})
