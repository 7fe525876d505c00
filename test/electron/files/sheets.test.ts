/** The files that a plan is exported as: their names, kinds and content. */
import { describe, expect, it } from 'vitest'
import { calendarOf } from '../../../electron/files/calendar.ts'
import { shellText } from '../../../electron/files/shell-text.ts'
import { createSheets } from '../../../electron/files/sheets.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { createText } from '../../../shared/text/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { cardsPlan, cardsTrip, ownStep } from '../../support/cards-plan.ts'

const utc = (iso: string): Utc => (Date.parse(iso) / 1000) as Utc
const STAMP = utc('2026-11-01T08:00:00Z')
const trip = cardsTrip()
const plan = cardsPlan(trip)
const text = (bytes: Uint8Array): string => Buffer.from(bytes).toString('utf8')

describe('a sheet', () => {
  const render = async (sheet: 'load' | 'night' | 'checklist' | 'pocket' | 'calendar' | 'plan') => {
    const made = await createSheets().render(trip, plan, sheet, STAMP)
    if (!made.ok) throw new Error(made.problem.code)
    return made.value
  }

  it.each(['load', 'night', 'checklist'] as const)(
    '%s is a PDF of that day, titled and on the trip’s paper',
    async (name) => {
      const file = await render(name)
      expect([file.name, file.mediaType]).toEqual([`${name}.pdf`, 'application/pdf'])
      const pdf = Buffer.from(file.bytes).toString('latin1')
      expect(pdf.startsWith('%PDF-1.')).toBe(true)
      expect(pdf).toContain('(D:20261101080000Z)')
      expect(pdf).toMatch(/\/MediaBox \[0 0 595\.\d+ 841\.\d+\]/)
    },
  )

  it('for the pocket is one page of HTML with the trip’s name in it', async () => {
    const file = await render('pocket')
    expect([file.name, file.mediaType]).toEqual(['pocket.html', 'text/html'])
    expect(text(file.bytes)).toMatch(/^<!doctype html>/i)
    expect(text(file.bytes)).toContain('Bat count above the tarn')
  })

  it('of the plan is the plan, to be read by other programs', async () => {
    const file = await render('plan')
    expect([file.name, file.mediaType]).toEqual(['plan.json', 'application/json'])
    expect(text(file.bytes).endsWith('}\n')).toBe(true)
    expect(JSON.parse(text(file.bytes))).toEqual(JSON.parse(JSON.stringify(plan)))
  })

  it('of the calendar is made at the time that is given', async () => {
    const file = await render('calendar')
    expect([file.name, file.mediaType]).toEqual(['calendar.ics', 'text/calendar'])
    expect(text(file.bytes)).toContain('DTSTAMP:20261101T080000Z\r\n')
  })
})

describe('the calendar', () => {
  const deadline = { deadlineUtc: utc('2026-11-13T17:00:00Z'), startUtc: utc('2026-11-13T16:40:00Z') }
  const steps: Plan['checklist']['steps'] = [
    ownStep('post', 'n1', 'arriving', 'Test the post', deadline),
    ownStep('whenever', 'n1', 'arriving', 'Whenever you like'),
    ownStep('done', 'n1', 'arriving', 'Done', { ...deadline, state: 'done' }),
    ownStep('skipped', 'n1', 'arriving', 'Skipped', { ...deadline, state: 'skipped' }),
    ownStep('unplaced', 'n1', 'arriving', 'No start', { ...deadline, startUtc: null }),
    ownStep('lake', 'n2', 'morning', 'Leave, quietly', { ...deadline, durationS: 0 }),
    ownStep('lost', 'n9', 'morning', 'Of a night that is gone', deadline),
  ]
  const calendar = (change: Parameters<typeof cardsTrip>[0] = {}): readonly string[] => {
    const own = cardsTrip(change)
    const input = {
      trip: own,
      plan: cardsPlan(own, { checklist: { steps, conflicts: [] } }),
      text: createText('de', 'metric'),
      nightId: null,
      paper: 'a4',
    } as const
    return calendarOf(input, STAMP).replaceAll('\r\n ', '').split('\r\n')
  }
  const all = (lines: readonly string[], name: string): readonly string[] =>
    lines.filter((line) => line.startsWith(`${name}:`)).map((line) => line.slice(name.length + 1))

  it('holds the open steps that have a deadline and a start, each at its own site, ten minutes ahead', () => {
    const lines = calendar()
    expect(all(lines, 'NAME')).toEqual(['Bat count above the tarn'])
    expect(all(lines, 'SUMMARY')).toEqual(['Test the post', 'Leave\\, quietly', 'Of a night that is gone'])
    expect(all(lines, 'LOCATION')).toEqual(['Upper meadow', 'Lake pitch'])
    expect(all(lines, 'DTSTART')).toEqual(Array.from({ length: 3 }, () => '20261113T164000Z'))
    expect(all(lines, 'DTEND')).toEqual(['20261113T165000Z', '20261113T165000Z'])
    expect(all(lines, 'TRIGGER')).toEqual(Array.from({ length: 3 }, () => '-PT600S'))
    expect(lines).toContain('PRODID:-//Kipstow//Checklist//DE')
  })

  it('names its entries alike however the trip is edited, until its title or first night change', () => {
    const names = all(calendar(), 'UID')
    expect(names.map((name) => name.split('@')[0])).toEqual(['post', 'lake', 'lost'])
    expect(new Set(names.map((name) => name.split('@')[1])).size).toBe(1)
    expect(all(calendar({ kit: { ...trip.kit, pieces: [] } }), 'UID')).toEqual(names)
    expect(all(calendar({ title: 'Another' }), 'UID')).not.toEqual(names)
    expect(all(calendar({ nights: trip.nights.slice(1) }), 'UID')).not.toEqual(names)
  })
})

it('the shell speaks the language of the system', () => {
  expect(shellText('en')('hosts.menu.undo')).toBe('Undo')
  expect(shellText('de')('hosts.menu.undo')).toBe('Rückgängig')
})
