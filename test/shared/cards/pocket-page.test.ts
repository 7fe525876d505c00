/** What the pocket sheet is made of: sections, steps, places, moves, fields for readings; and what goes first where it grows too long. */
import { describe, expect, it } from 'vitest'
import { parsePocketText, pocketSheet, POCKET_MAX_BYTES } from '../../../shared/cards/index.ts'
import { utf8Bytes } from '../../../shared/cards/pocket/sheet.ts'
import { readingsHtml } from '../../../shared/cards/pocket/readings.ts'
import { createText } from '../../../shared/text/index.ts'
import { cardsPlan, cardsTrip, ownStep } from '../../support/cards-plan.ts'

const text = createText('en', 'metric')
const trip = cardsTrip()
const plan = cardsPlan(trip)
const sheet = pocketSheet({ trip, plan, text })
const plain = (words: string): string => words.replaceAll('\u00a0', ' ').replaceAll('\u202f', ' ')

/** One section of a sheet, by its id. */
const sectionOf = (id: string, html = sheet): string =>
  html.split('<section>').find((part) => part.startsWith(`<h2 id="${id}">`)) ?? ''
const matches = (pattern: RegExp, html: string): readonly string[] =>
  [...html.matchAll(pattern)].map(([, found = '']) => plain(found))

describe('the page', () => {
  it('has its sections in order, each with its title and a link to it', () => {
    const titles = [
      ['checklist', 'Checklist'],
      ['where', 'Where things are'],
      ['moves', 'Moves'],
      ['numbers', 'Key numbers'],
      ['help', 'If help is needed'],
      ['readings', 'Readings'],
      ['back', 'Take back to the planner'],
    ]
    expect([...sheet.matchAll(/<h2 id="([a-z]+)">([^<]+)<\/h2>/g)].map(([, id, title]) => [id, title])).toEqual(titles)
    expect([...sheet.matchAll(/<a href="#([a-z]+)">([^<]+)<\/a>/g)].map(([, id, title]) => [id, title])).toEqual(titles)
    expect(sheet).toContain('<html lang="en">')
    expect(sheet).toContain('<title>Pocket sheet · Bat count above the tarn</title>')
    expect(sheet).toContain('<h1>Bat count above the tarn</h1>')
  })

  it('gives its script the words it says and the place where it keeps ticks', () => {
    const data = Object.fromEntries(
      [...(sheet.match(/<body ([^>]*)>/)?.[1] ?? '').matchAll(/data-([a-z]+)="([^"]*)"/g)].map(([, name, value]) => [
        name,
        value,
      ]),
    )
    expect(data).toEqual({
      store: 'kipstow-pocket Bat count above the tarn 2026-11-13',
      trip: 'Bat%20count%20above%20the%20tarn',
      remembers: 'Ticks stay on this phone.',
      forgets: 'This viewer does not remember ticks. Read it as a list, or open it in a browser.',
      done: '{done} of {all} done',
      copied: 'Copied.',
      byhand: 'Mark the text and copy it.',
      imported: 'Read: {count} lines.',
      not: 'This is not a text of this pocket sheet.',
    })
  })

  it('heads each night with its date and site, and one night alone with nothing', () => {
    const heads = ['2026-11-13', '2026-11-14'].map((date, index) =>
      plain(`${text.date(date)} · ${['Upper meadow', 'Lake pitch'][index]}`),
    )
    for (const id of ['checklist', 'moves', 'numbers', 'help', 'readings'])
      expect(matches(/<h3>([^<]*)<\/h3>/g, sectionOf(id)).filter((one) => heads.includes(one))).toEqual(heads)
    const one = cardsTrip({ nights: trip.nights.slice(0, 1) })
    const alone = pocketSheet({ trip: one, plan: cardsPlan(one), text })
    expect(sectionOf('checklist', alone)).not.toContain('<h3>')
    expect(sectionOf('checklist')).not.toContain('class="notice"')
    expect(alone).not.toContain('This sheet holds')
  })
})

describe('its steps', () => {
  const steps = [
    ownStep('late', 'n1', 'morning', 'Unplug', { startUtc: null }),
    ownStep('call', 'n1', 'before-leaving', 'Call', { state: 'done', caution: true }),
    ownStep('cover', 'n1', 'before-leaving', 'Cover', {
      state: 'skipped',
      caution: true,
      text: { kind: 'own', step: 'Cover', reason: '' },
    }),
    ownStep('second', 'n2', 'bedtime', 'Sleep', { state: 'skipped' }),
  ]
  const html = sectionOf(
    'checklist',
    pocketSheet({ trip, plan: cardsPlan(trip, { checklist: { steps, conflicts: [] } }), text }),
  )

  it('stand by phase, with state, reason and time', () => {
    expect(matches(/<h4>([^<]*)<\/h4>/g, html)).toEqual(['Before leaving', 'Morning · by 06:40', 'Bedtime · by 22:00'])
    expect(matches(/(<li[^]*?<\/li>)/g, html)).toEqual([
      '<li class="caution"><label><input type="checkbox" data-step="call" checked><span class="what">Call<small>Because the night is cold.</small></span><time>Fri 17:00</time></label></li>',
      '<li class="caution skipped"><label><input type="checkbox" data-step="cover"><span class="what">Cover</span><time>Fri 17:00</time></label></li>',
      '<li><label><input type="checkbox" data-step="late"><span class="what">Unplug<small>Because the night is cold.</small></span></label></li>',
      '<li class="skipped"><label><input type="checkbox" data-step="second"><span class="what">Sleep<small>Because the night is cold.</small></span><time>17:00</time></label></li>',
    ])
  })
})

describe('its places', () => {
  const lines = matches(/<li>([^]*?)<\/li>/g, sectionOf('where'))

  it('are told piece by piece, by name, on the road and at night', () => {
    expect(lines.slice(0, trip.kit.pieces.length)).toEqual([
      ...matches(/<li>([^]*?)<\/li>/g, sectionOf('where').split('<h3>')[1] ?? ''),
    ])
    const named = (name: string): string => lines.find((line) => line.startsWith(`<b>${name}</b>`)) ?? ''
    expect(named('Spirit stove')).toBe(
      '<b>Spirit stove</b> <small>2 Kitchen crate</small><br>On the road: Load bay, front left<br>At night: the same',
    )
    expect(named('Boots')).toBe(
      '<b>Boots</b><br>On the road: Load bay, rear right, on 7 Clothes bag<br>At night: outside',
    )
    const order = lines.slice(0, trip.kit.pieces.length).map((line) => line.match(/<b>([^<]*)/)?.[1] ?? '')
    expect(order).toEqual(order.toSorted(new Intl.Collator('en').compare))
  })

  it('of a night that was not packed are those of the road', () => {
    const bare = cardsPlan(trip, { packing: { ...plan.packing, nights: [] } })
    const html = pocketSheet({ trip, plan: bare, text })
    expect(sectionOf('where', html)).toContain(
      'On the road: Load bay, rear right, on 7 Clothes bag<br>At night: the same',
    )
    expect(sectionOf('moves', html)).not.toContain('<h4>')
  })

  it('are drawn: the road first, each step of loading, then the bays of each night that differ', () => {
    const titles = matches(/<h3>([^<]*)<\/h3>/g, sectionOf('where'))
    expect(titles.filter((title) => !title.includes(' · ') || title.startsWith('Night of'))).toEqual([
      'Drive layout',
      ...['2026-11-13', '2026-11-14'].map((date, index) =>
        plain(`Night of ${text.date(date)} · ${['Upper meadow', 'Lake pitch'][index]}`),
      ),
    ])
    const same = plan.packing.nights.map((night) => ({ ...night, bed: plan.packing.drive }))
    const unmoved = pocketSheet({ trip, plan: cardsPlan(trip, { packing: { ...plan.packing, nights: same } }), text })
    expect(sectionOf('where', unmoved)).not.toContain('Night of')
  })
})

describe('its moves', () => {
  it('are numbered in order, with the door where one is opened', () => {
    const [night] = sectionOf('moves').split('<h3>').slice(1)
    expect(matches(/<h4>([^<]*)<\/h4>/g, night ?? '')).toEqual([
      'Moves to the bed layout, in order',
      'Moves back to the drive layout, in order',
    ])
    const moves = matches(/<li>([^]*?)<\/li>/g, night ?? '')
    expect(moves).toHaveLength(5)
    expect(moves[0]).toBe(
      '<b>1.</b> <b>8 Boots</b><br>Load bay, rear right, on 7 Clothes bag › <b>outside</b> <small>(tailgate)</small>',
    )
    expect(moves[4]).toBe(
      '<b>5.</b> <b>5 Winter quilt</b><br>Passenger seat, left, on 9 Bat detectors › <b>made into the bed</b>',
    )
    expect(night).toContain('<p>Nothing has to move.</p>')
  })

  it('count no piece that leaves its bin', () => {
    const nights = plan.packing.nights.map((night) => ({
      ...night,
      changeover: {
        ...night.changeover,
        binMoves: [{ pieceId: 'stove', binId: 'kitchen', state: 'outside' as const, afterMoves: 0 }],
      },
    }))
    const html = pocketSheet({ trip, plan: cardsPlan(trip, { packing: { ...plan.packing, nights } }), text })
    const moves = matches(/<li>([^]*?)<\/li>/g, sectionOf('moves', html).split('<h3>')[1] ?? '')
    expect(moves[0]).toBe('<b></b> <b>Spirit stove</b><br>in 2 Kitchen crate › <b>outside</b>')
    expect(moves[1]).toMatch(/^<b>1\.<\/b> <b>8 Boots<\/b>/)
  })
})

describe('its numbers and its help', () => {
  it('are the verdict, figures, times and tables of each night', () => {
    const html = plain(sectionOf('numbers').split('<h3>')[1] ?? '')
    expect(html).toContain('<td class="strong">16:10</td><td>Arrive</td>')
    for (const title of ['Supply', 'Sleepers', 'Next leg', 'If it fails in the night', 'On the pitch'])
      expect(html).toContain(title)
    expect(html).toContain(`<small>${plain(text.t('cards.night.caution'))}</small>`)
    expect(html).toMatch(/<p><b>(Holds|Does not hold)/)
  })

  it('have what to say when calling, with the site’s own rows', () => {
    const html = plain(sectionOf('help'))
    expect(html).toContain('<td>Gate code</td><td class="strong">4711#</td>')
    expect(html).toContain(plain(text.t('cards.site.emergencyHow')))
    expect(html.match(/Gate code/g)).toHaveLength(2)
  })
})

describe('its fields for readings', () => {
  type Field = { moment: string; field: string; scale: string | undefined; offset: string | undefined; night: string }
  const fieldsOf = (html: string): readonly Field[] =>
    [...html.matchAll(/<input ([^>]*)>/g)].map(([, attributes = '']) => {
      const value = (name: string): string | undefined => attributes.match(new RegExp(`data-${name}="([^"]*)"`))?.[1]
      return {
        night: value('night') ?? '',
        moment: value('moment') ?? '',
        field: value('field') ?? '',
        scale: value('scale'),
        offset: value('offset'),
      }
    })
  const labels = (html: string) => matches(/<label>([^<]*)<input/g, html)

  it('ask at each moment what can be read then, after the time', () => {
    const found = fieldsOf(readingsHtml('n1', text))
    expect(found.map(({ moment, field }) => `${moment} ${field}`)).toEqual([
      'at-the-post clock',
      'at-the-post volts',
      'at-the-post currentA',
      'at-the-post meterWh',
      'at-the-post charge01',
      'bedtime clock',
      'bedtime volts',
      'bedtime currentA',
      'bedtime charge01',
      'morning clock',
      'morning meterWh',
      'morning charge01',
      'morning lowestInsideC',
    ])
    expect(new Set(found.map(({ night }) => night))).toEqual(new Set(['n1']))
    expect(matches(/<legend>([^<]*)<\/legend>/g, readingsHtml('n1', text))).toEqual([
      'At the post',
      'Bedtime',
      'Morning',
    ])
    expect(labels(readingsHtml('n1', text)).join(' | ')).toBe(
      'Time | Volts | Amps | Meter, kWh | Battery, % | Time | Volts | Amps | Battery, % | Time | Meter, kWh | Battery, % | Lowest inside, °C',
    )
    expect(fieldsOf(sectionOf('readings')).map(({ night }) => night)).toContain('n2')
  })

  /** The trip's value of what was typed. */
  const taken = (units: 'metric' | 'us', name: string, typed: number): number => {
    const found = fieldsOf(readingsHtml('n1', createText('en', units))).find(({ field }) => field === name)
    return typed * Number(found?.scale) + Number(found?.offset)
  }

  it.each([
    ['metric', 'volts', 229, 229],
    ['metric', 'currentA', 9.5, 9.5],
    ['metric', 'meterWh', 1234.5, 1_234_500],
    ['metric', 'charge01', 64, 0.64],
    ['metric', 'lowestInsideC', -3, -3],
    ['us', 'volts', 118, 118],
    ['us', 'meterWh', 2, 2000],
    ['us', 'charge01', 100, 1],
    // 32 and 212 degrees Fahrenheit are the freezing and the boiling of water.
    ['us', 'lowestInsideC', 32, 0],
    ['us', 'lowestInsideC', 212, 100],
    ['us', 'lowestInsideC', -40, -40],
  ] as const)('%s: %s of %d is %d in the trip', (units, field, typed, value) => {
    expect(taken(units, field, typed)).toBeCloseTo(value, 9)
  })

  it('name degrees Fahrenheit where the traveller reads them', () => {
    expect(labels(readingsHtml('n1', createText('en', 'us')))).toContain('Lowest inside, °F')
  })
})

describe('a sheet that would grow too long', () => {
  /** A sheet whose reasons and steps take so many bytes more. */
  const grown = (reasonBytes: number, stepBytes = 0, nights = trip.nights): string => {
    const of = cardsTrip({ nights })
    const filler = nights.map((night) =>
      ownStep(`filler/${night.id}`, night.id, 'bedtime', `Filler${'s'.repeat(stepBytes)}`, {
        text: { kind: 'own', step: `Filler${'s'.repeat(stepBytes)}`, reason: `why${'r'.repeat(reasonBytes)}` },
      }),
    )
    const steps = [...cardsPlan(of).checklist.steps, ...filler]
    return pocketSheet({ trip: of, plan: cardsPlan(of, { checklist: { steps, conflicts: [] } }), text })
  }
  const small = grown(0)
  const drawn = (html: string): readonly string[] => [...html.matchAll(/<svg[^]*?<\/svg>/g)].map(([svg]) => svg)
  const shownIn = (html: string) => ({
    drawings: drawn(html).length,
    stepByStep: html.includes('Step by step, bay by bay'),
    reasons: html.includes('why'),
    cut: html.includes('This sheet holds'),
  })
  /** Of each of two nights so much, that the sheet is some thousand bytes over, less what has gone by then. */
  const over = (goneBytes: number): number => Math.ceil((POCKET_MAX_BYTES - utf8Bytes(small) + goneBytes + 2500) / 2)
  const bytesOf = (svgs: readonly string[]): number => svgs.reduce((sum, svg) => sum + utf8Bytes(svg), 0)
  const stepless = grown(over(0))
  const steps = drawn(stepless)
  const stepsBytes = bytesOf(drawn(small)) - bytesOf(steps)

  it('keeps everything while there is room', () => {
    expect(shownIn(small)).toEqual({ drawings: drawn(small).length, stepByStep: true, reasons: true, cut: false })
    expect(shownIn(grown(over(-6000)))).toEqual(shownIn(small))
  })

  it('leaves out the drawings of each step first, then the others, then the reasons', () => {
    expect(shownIn(stepless)).toEqual({ drawings: steps.length, stepByStep: false, reasons: true, cut: false })
    expect(steps.length).toBeGreaterThan(0)
    expect(steps.length).toBeLessThan(drawn(small).length)
    const bare = grown(over(stepsBytes))
    expect(shownIn(bare)).toEqual({ drawings: 0, stepByStep: false, reasons: true, cut: false })
    const reasonless = grown(over(bytesOf(drawn(small))))
    expect(shownIn(reasonless)).toEqual({ drawings: 0, stepByStep: false, reasons: false, cut: false })
    for (const html of [stepless, bare, reasonless]) expect(utf8Bytes(html)).toBeLessThan(POCKET_MAX_BYTES)
  })

  it('then leaves out the last nights and says how many it holds, one at the least', () => {
    const [first] = trip.nights
    if (first === undefined) throw new Error('the trip has a night')
    const five = Array.from({ length: 5 }, (_, index) => ({ ...first, id: `n${index}` }))
    // Of five nights of more than 70 kB four do not fit: of four, of three (0.8 of four, whole nights), three do.
    const three = grown(0, 70_000, five)
    expect(three).toContain('This sheet holds the first 3 of 5 nights')
    expect(three).toContain('data-step="filler/n2"')
    expect(three).not.toContain('data-step="filler/n3"')
    expect(utf8Bytes(three)).toBeLessThan(POCKET_MAX_BYTES)
    expect(shownIn(three)).toMatchObject({ drawings: 0, reasons: false, cut: true })
    // One night alone is too long: it is given all the same.
    expect(grown(0, 310_000, five.slice(0, 2))).toContain('This sheet holds the first 1 of 2 nights')
  })
})

describe('text from a sheet', () => {
  const head = ['kipstow-pocket 1', 'trip T']
  const read = (...lines: readonly string[]) => parsePocketText([...head, ...lines, `end ${lines.length}`].join('\n'))
  const readings = (...lines: readonly string[]) => {
    const found = read(...lines)
    return found.ok ? found.value.readings : found.problem.code
  }

  it('may be without a line, and has a title of any letters', () => {
    expect(read()).toEqual({ ok: true, value: { tripTitle: 'T', ticks: [], readings: [] } })
    const umlaut = parsePocketText('kipstow-pocket 1\ntrip H%C3%BCtte\nend 0')
    expect(umlaut.ok ? umlaut.value.tripTitle : '').toBe('Hütte')
    const untitled = parsePocketText('kipstow-pocket 1\ntrip\nend 0')
    expect(untitled.ok ? untitled.value.tripTitle : 'none').toBe('')
  })

  it.each([
    ['no trip', 'kipstow-pocket 1\nend 0', 'pocket-unreadable'],
    ['a trip that is not well formed', 'kipstow-pocket 1\ntrip a<b\nend 0', 'pocket-unreadable'],
    ['no version', 'kipstow-pocket\ntrip T\nend 0', 'pocket-version'],
    ['nothing after the title', 'kipstow-pocket 1\ntrip T', 'pocket-cut-off'],
    ['an end without a count', 'kipstow-pocket 1\ntrip T\nend', 'pocket-cut-off'],
  ])('is refused with %s', (_, pasted, code) => {
    const found = parsePocketText(pasted)
    expect(found.ok ? 'read' : found.problem.code).toBe(code)
  })

  it.each([
    ['tick a', 'a tick without its time'],
    ['tick a 12 13', 'a tick with more'],
    ['tick a -1', 'a time before all time'],
    ['tick a 1234567890123', 'a time too far'],
    [`tick ${'k'.repeat(201)} 1`, 'a key too long'],
    ['tick a 1x', 'a time with a letter'],
    ['tock a 1', 'another verb'],
    ['read n1 morning 06:00', 'a reading without a value'],
    ['read n1 morning 06:00 volts', 'a value without a number'],
    ['read n1 morning 06:00 volts=1=2', 'a value given twice in one'],
    ['read n1 morning 06:00 volts=+1', 'a sign that is not written'],
    ['read n1 morning 06:00 volts=1.', 'a point without a digit'],
    ['read n1 morning 06:60 volts=1', 'a minute that is not'],
    ['read n1 morning 24:00 volts=1', 'an hour that is not'],
    ['read n1 morning 6:00 volts=1', 'an hour of one digit'],
    ['read -n1 morning 06:00 volts=1', 'a night that begins with a dash'],
    [`read n${'1'.repeat(64)} morning 06:00 volts=1`, 'a night too long'],
    ['read n1 noon 06:00 volts=1', 'another moment'],
    ['wrote n1 morning 06:00 volts=1', 'another verb for a reading'],
  ])('is refused with %s: %s', (line) => {
    const found = read(line)
    expect(found.ok ? 'read' : found.problem).toMatchObject({ code: 'pocket-line', params: { line: 3 } })
  })

  it('shows the beginning of a line that it refuses', () => {
    const found = read(`nonsense ${'x'.repeat(100)}`)
    expect(found.ok ? '' : found.problem.params['value']).toBe(`nonsense ${'x'.repeat(71)}`)
  })

  it('takes keys and nights of the greatest length, and values from least to most', () => {
    expect(read(`tick ${'k'.repeat(200)} 123456789012`).ok).toBe(true)
    expect(readings(`read n${'1'.repeat(63)} bedtime 23:59 volts=0 currentA=400`)).toEqual([
      { nightId: `n${'1'.repeat(63)}`, moment: 'bedtime', clock: '23:59', volts: 0, currentA: 400 },
    ])
    expect(readings('read n1 morning 00:00 charge01=1 lowestInsideC=-60')).toEqual([
      { nightId: 'n1', moment: 'morning', clock: '00:00', charge01: 1, lowestInsideC: -60 },
    ])
    for (const [field, most] of [
      ['volts', 500],
      ['currentA', 400],
      ['meterWh', 100_000_000],
      ['charge01', 1],
      ['lowestInsideC', 60],
    ] as const) {
      expect(readings(`read n1 morning 06:00 ${field}=${most}`)).toHaveLength(1)
      expect(readings(`read n1 morning 06:00 ${field}=${most + 1}`)).toBe('pocket-line')
      expect(readings(`read n1 morning 06:00 ${field}=-61`)).toBe('pocket-line')
    }
  })
})
