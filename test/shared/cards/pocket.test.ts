/** The pocket sheet: one file, nothing fetched, nothing of the user's words run, and its text comes back whole. */
import { createHash } from 'node:crypto'
import { describe, expect, it } from 'vitest'
import { parsePocketText, pocketSheet, POCKET_MAX_BYTES } from '../../../shared/cards/index.ts'
import { POCKET_CSP, SCRIPT_SHA256, STYLE_SHA256 } from '../../../shared/cards/pocket/csp.ts'
import { POCKET_SCRIPT } from '../../../shared/cards/pocket/script.ts'
import { POCKET_STYLE } from '../../../shared/cards/pocket/style.ts'
import { createText } from '../../../shared/text/index.ts'
import { cardsPlan, cardsTrip, ownStep } from '../../support/cards-plan.ts'

const trip = cardsTrip()
const plan = cardsPlan(trip)
const text = createText('en', 'metric')
const sheet = pocketSheet({ trip, plan, text })
const sha256 = (value: string): string => createHash('sha256').update(value).digest('base64')

describe('the file', () => {
  it('is small', () => {
    expect(Buffer.byteLength(sheet)).toBeLessThan(POCKET_MAX_BYTES)
  })

  it('runs only its own style and script', () => {
    // Where this fails, style or script has changed: put the hash shown into csp.ts.
    expect(STYLE_SHA256).toBe(sha256(POCKET_STYLE))
    expect(SCRIPT_SHA256).toBe(sha256(POCKET_SCRIPT))
    expect(POCKET_CSP).toContain("default-src 'none'")
    expect(POCKET_CSP).not.toContain('unsafe')
    expect(sheet.match(/<script/g)).toHaveLength(1)
    expect(sheet.match(/<style/g)).toHaveLength(1)
    expect(sheet).not.toMatch(/ style=| on[a-z]+=/)
  })

  it('refers to nothing outside itself', () => {
    expect(sheet).not.toMatch(/https?:|src=|<link|<img|<iframe|url\(|@import/)
    expect(sheet.match(/href="([^"]*)"/g)?.every((link) => link.startsWith('href="#'))).toBe(true)
  })

  it('escapes every word of the user', () => {
    const evil = '"><script>alert(1)</script><img src=x onerror=alert(1)>'
    const bad = cardsTrip({
      title: evil,
      travellers: trip.travellers.map((one) => ({ ...one, label: evil })),
      nights: trip.nights.map((night) => ({
        ...night,
        site: { ...night.site, name: evil, phone: evil, gateCode: evil },
      })),
      kit: {
        ...trip.kit,
        pieces: trip.kit.pieces.map((piece) => ({ ...piece, name: evil })),
        bins: trip.kit.bins.map((bin) => ({ ...bin, name: evil })),
      },
      vehicle: {
        ...trip.vehicle,
        name: evil,
        bays: trip.vehicle.bays.map((bay) => ({
          ...bay,
          name: evil,
          openings: bay.openings.map((opening) => ({ ...opening, door: evil })),
        })),
      },
    })
    const steps = [ownStep(evil, 'n1', 'bedtime', evil, { text: { kind: 'own', step: evil, reason: evil } })]
    const html = pocketSheet({ trip: bad, plan: cardsPlan(bad, { checklist: { steps, conflicts: [] } }), text })
    expect(html.match(/<script/g)).toHaveLength(1)
    expect(html).not.toContain('<img')
    expect(html.match(/&lt;script&gt;/g)?.length).toBeGreaterThan(20)
  })
})

describe('the page without its script', () => {
  const plain = sheet
    .replace(/<style>.*?<\/style>/s, '')
    .replace(/<script>.*?<\/script>/s, '')
    .replaceAll(/<[^>]+>/g, ' ')

  it('still says steps, places, moves, numbers and help', () => {
    for (const words of [
      'Put the blue adapter',
      'by 16:50',
      'Kitchen crate',
      'Load bay, front left',
      'made into the bed',
      '12',
      '+00 555 0100',
      '46.72118, -9.98812',
      'This viewer does not remember ticks',
    ]) {
      expect(plain).toContain(words)
    }
  })

  it('has a tick box for each step, ticked where the step is done', () => {
    expect(sheet.match(/data-step=/g)).toHaveLength(plan.checklist.steps.length)
    expect(sheet.match(/data-step="[^"]*" checked/g)).toHaveLength(2)
  })
})

describe('a trip too long for one sheet', () => {
  const [first] = trip.nights
  if (first === undefined) throw new Error('no night')
  const long = cardsTrip({
    nights: Array.from({ length: 60 }, (_, index) => ({ ...first, id: `n${index}` })),
  })
  const steps = long.nights.flatMap((night) =>
    Array.from({ length: 60 }, (_, index) =>
      ownStep(`s${index}/${night.id}`, night.id, 'bedtime', `Step ${index} with a name of usual length`),
    ),
  )
  const html = pocketSheet({ trip: long, plan: cardsPlan(long, { checklist: { steps, conflicts: [] } }), text })

  it('stays under the limit and says how many nights it holds', () => {
    expect(Buffer.byteLength(html)).toBeLessThan(POCKET_MAX_BYTES)
    expect(html).toMatch(/This sheet holds the first \d+ of 60 nights/)
  })
})

describe('text from a pocket sheet', () => {
  const good = [
    'kipstow-pocket 1',
    'trip Bat%20count%20above%20the%20tarn',
    'tick adapter%2Fn1 1795602600',
    'untick call%2Fn1 1795602700',
    'read n1 at-the-post 17:30 volts=226.5 currentA=10 meterWh=1234500',
    'read n1 morning 06:10 charge01=0.64 lowestInsideC=-1.5',
    'end 4',
  ]

  it('is read back', () => {
    expect(parsePocketText(good.join('\n'))).toEqual({
      ok: true,
      value: {
        tripTitle: 'Bat count above the tarn',
        ticks: [
          { stepKey: 'adapter/n1', state: 'done', atUtc: 1_795_602_600 },
          { stepKey: 'call/n1', state: 'open', atUtc: 1_795_602_700 },
        ],
        readings: [
          { nightId: 'n1', moment: 'at-the-post', clock: '17:30', volts: 226.5, currentA: 10, meterWh: 1_234_500 },
          { nightId: 'n1', moment: 'morning', clock: '06:10', charge01: 0.64, lowestInsideC: -1.5 },
        ],
      },
    })
  })

  it('is read although a message quoted it and parted its lines', () => {
    expect(parsePocketText(`\ufeff> ${good.join('\r\n\r\n>  ')}\r\n`)).toEqual(parsePocketText(good.join('\n')))
  })

  const refused: readonly [string, string, string][] = [
    ['nothing', '', 'pocket-unreadable'],
    ['another text', 'Dear all,\nhello', 'pocket-unreadable'],
    ['a newer sheet', good.join('\n').replace('pocket 1', 'pocket 2'), 'pocket-version'],
    ['a missing last line', good.slice(0, -1).join('\n'), 'pocket-cut-off'],
    ['a line lost in the middle', good.toSpliced(3, 1).join('\n'), 'pocket-cut-off'],
    ['an unknown line', good.toSpliced(3, 0, 'delete everything').join('\n'), 'pocket-line'],
    ['a charge above one', good.join('\n').replace('0.64', '64'), 'pocket-line'],
    ['a value that is no number', good.join('\n').replace('226.5', '1e9'), 'pocket-line'],
    ['a field that does not exist', good.join('\n').replace('volts', '__proto__'), 'pocket-line'],
    ['an impossible time', good.join('\n').replace('17:30', '27:30'), 'pocket-line'],
    ['broken escapes', good.join('\n').replace('%2Fn1 1795602600', '%E0%A4%A 1795602600'), 'pocket-line'],
    ['a bad night', good.join('\n').replace('read n1 at', 'read ../n1 at'), 'pocket-line'],
    ['a megabyte', `${good.join('\n')}${' '.repeat(1_000_000)}`, 'pocket-too-long'],
  ]
  it.each(refused)('refuses %s', (_, pasted, code) => {
    const read = parsePocketText(pasted)
    expect(read.ok ? 'read' : read.problem.code).toBe(code)
    expect(read.ok ? '' : text.problem(read.problem)).not.toContain('no sentence yet')
  })

  it('names the line that cannot be read', () => {
    const read = parsePocketText(good.toSpliced(4, 1, 'read n1 noon 12:00 volts=230').join('\n'))
    expect(read.ok ? '' : text.problem(read.problem)).toContain('Line 5')
  })
})
