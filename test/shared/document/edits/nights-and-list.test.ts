/** Edits of nights, of the checklist and of remedies: what they change and what they leave. */
import { describe, expect, it } from 'vitest'
import { applyEdit } from '../../../../shared/document/index.ts'
import type { Edit } from '../../../../shared/document/index.ts'
import { edited, one, sample } from './edited.ts'

const take = (change: Extract<Edit, { kind: 'take-remedy' }>['change']): Edit => ({ kind: 'take-remedy', change })
const first = one(sample.nights, 'night-1')

describe('a night', () => {
  it('takes bedding with the rest of a decision, and what was spare comes along', () => {
    const trip = edited([
      { kind: 'set-night', nightId: 'night-1', decision: { beddingPieceIds: ['winter-bag'], covers: false } },
    ])
    expect(one(trip.nights, 'night-1')).toEqual({ ...first, beddingPieceIds: ['winter-bag'], covers: false })
    expect(one(trip.kit.pieces, 'winter-bag').spare).toBe(false)
    expect(trip.nights[1]).toBe(sample.nights[1])
  })

  it('is added after the last where its date is later', () => {
    const trip = edited([{ kind: 'add-night', night: { ...first, id: 'late', date: '2027-12-31' } }])
    expect(trip.nights.map((night) => night.id)).toEqual(['night-1', 'night-2', 'late'])
  })

  it('that is not the first goes without a word to the others; lessons and pieces forget it', () => {
    const trip = edited([
      { kind: 'add-lesson', lesson: { id: 'l1', nightId: 'night-2', text: 'Loud yard' } },
      { kind: 'add-lesson', lesson: { id: 'l2', nightId: 'night-1', text: 'Boots froze' } },
      {
        kind: 'set-value',
        path: ['kit', 'pieces', 14, 'atNightOn'],
        value: [{ nightId: 'night-2', state: 'outside' }],
      },
      { kind: 'remove-night', nightId: 'night-2' },
    ])
    expect(trip.nights).toEqual([first])
    expect(trip.checklist.lessons).toEqual([
      { id: 'l1', text: 'Loud yard' },
      { id: 'l2', nightId: 'night-1', text: 'Boots froze' },
    ])
    expect(one(trip.kit.pieces, 'boots').atNightOn).toEqual([])
  })

  it('that goes first leaves the next its own charge where that has one', () => {
    const trip = edited([
      { kind: 'set-value', path: ['nights', 1, 'arriveCharge01'], value: 0.7 },
      { kind: 'remove-night', nightId: 'night-1' },
    ])
    expect(trip.nights[0]?.arriveCharge01).toBe(0.7)
  })
})

describe('own rules', () => {
  const hush = one(sample.checklist.rules, 'own-hush')
  const second = { ...hush, id: 'own-boots', step: 'Hang the boots' }

  it('are added, changed in their place and taken out', () => {
    const two = edited([{ kind: 'add-rule', rule: second }])
    expect(two.checklist.rules).toEqual([hush, second])
    const changed = edited([{ kind: 'edit-rule', rule: { ...hush, durationMin: 5 } }], two)
    expect(changed.checklist.rules).toEqual([{ ...hush, durationMin: 5 }, second])
    expect(edited([{ kind: 'remove-rule', ruleId: 'own-hush' }], two).checklist.rules).toEqual([second])
  })

  it('that go leave lessons of other rules linked', () => {
    const trip = edited([
      { kind: 'add-lesson', lesson: { id: 'l1', text: 'Boots froze' } },
      { kind: 'lesson-to-rule', lessonId: 'l1', rule: second },
      { kind: 'remove-rule', ruleId: 'own-hush' },
    ])
    expect(trip.checklist.lessons).toEqual([{ id: 'l1', text: 'Boots froze', ruleId: 'own-boots' }])
  })

  it('lessons go one by one', () => {
    const trip = edited([
      { kind: 'add-lesson', lesson: { id: 'l1', text: 'a' } },
      { kind: 'add-lesson', lesson: { id: 'l2', text: 'b' } },
      { kind: 'remove-lesson', lessonId: 'l1' },
    ])
    expect(trip.checklist.lessons).toEqual([{ id: 'l2', text: 'b' }])
  })
})

describe('what was read and paid', () => {
  it('is taken out by its place in the list', () => {
    const trip = edited([
      { kind: 'add-measurement', measured: { nightId: 'night-1', moment: 'bedtime', clock: '22:00' } },
      { kind: 'add-measurement', measured: { nightId: 'night-2', moment: 'bedtime', clock: '21:00' } },
      { kind: 'remove-measurement', index: 0 },
    ])
    expect(trip.measured).toEqual([{ nightId: 'night-2', moment: 'bedtime', clock: '21:00' }])
  })

  it('goes behind what was paid on the same day, and to the end where it is the latest', () => {
    const paid = { kind: 'food', label: 'oats', amountCents: 250 } as const
    const trip = edited([
      { kind: 'add-ledger-entry', entry: { ...paid, id: 'late', date: '2027-12-31' } },
      { kind: 'add-ledger-entry', entry: { ...paid, id: 'same', date: '2027-09-20' } },
    ])
    expect(trip.ledger.map((entry) => entry.id)).toEqual(['paid-1', 'paid-2', 'same', 'late'])
  })
})

describe('a remedy', () => {
  it('puts the covers in on one night', () => {
    const bare = edited([{ kind: 'set-night', nightId: 'night-1', decision: { covers: false } }])
    expect(edited([take({ kind: 'covers', nightId: 'night-1' })], bare)).toEqual(sample)
  })

  it('brings a spare piece', () => {
    const trip = edited([take({ kind: 'bring-piece', pieceId: 'hot-bottles' })])
    expect(one(trip.kit.pieces, 'hot-bottles')).toEqual({ ...one(sample.kit.pieces, 'hot-bottles'), spare: false })
  })

  it('leaves several pieces behind, and no others', () => {
    const trip = edited([take({ kind: 'leave-behind', pieceIds: ['stools', 'rubbish'] })])
    expect(trip.kit.pieces.filter((piece) => piece.spare).map((piece) => piece.id)).toEqual([
      'winter-bag',
      'hot-bottles',
      'stools',
      'rubbish',
    ])
  })

  it('does nothing where there is nothing to do: no leg to stop on, no target to be later at, nothing together', () => {
    const bare = edited([
      { kind: 'set-value', path: ['nights', 0, 'leg'] },
      { kind: 'set-value', path: ['nights', 0, 'target'] },
    ])
    expect(edited([take({ kind: 'stop-on-the-way', nightId: 'night-1', atM: 9000 })], bare)).toEqual(bare)
    expect(edited([take({ kind: 'target-later', nightId: 'night-1', byMin: 10 })], bare)).toEqual(bare)
    const nothing = applyEdit(sample, take({ kind: 'together', changes: [] }))
    expect(nothing.ok && nothing.value).toBe(sample)
  })

  it('keeps stops in order along the way, each once', () => {
    const trip = edited([
      take({ kind: 'stop-on-the-way', nightId: 'night-1', atM: 60_000 }),
      take({ kind: 'stop-on-the-way', nightId: 'night-1', atM: 14_000 }),
      take({ kind: 'stop-on-the-way', nightId: 'night-1', atM: 60_000 }),
    ])
    expect(one(trip.nights, 'night-1').leg?.acceptedStopsM).toEqual([14_000, 60_000])
  })

  it('warms a night without heat from arriving on, 8 °C and the step; cools none; leaves hours without heat alone', () => {
    const cold = edited([
      { kind: 'set-night', nightId: 'night-1', decision: { heating: { setPoints: [], bedHeaterIds: [] } } },
    ])
    const points = (change: Parameters<typeof take>[0], trip = cold) =>
      one(edited([take(change)], trip).nights, 'night-1').heating.setPoints
    expect(points({ kind: 'set-point', nightId: 'night-1', byK: 2 })).toEqual([{ from: '16:20', tempC: 10 }])
    expect(points({ kind: 'set-point', nightId: 'night-1', byK: -2 })).toEqual([])
    const mixed = edited([{ kind: 'set-value', path: ['nights', 0, 'heating', 'setPoints', 1, 'tempC'], value: null }])
    expect(points({ kind: 'set-point', nightId: 'night-1', byK: -2 }, mixed)).toEqual([
      { from: '18:00', tempC: 13 },
      { from: '22:00', tempC: null },
      { from: '05:15', tempC: 14 },
    ])
  })

  it('moves a clock back round midnight', () => {
    const early = edited([
      { kind: 'set-night', nightId: 'night-1', decision: { sleep: { from: '21:30', to: '00:20' } } },
      take({ kind: 'leave-earlier', nightId: 'night-1', byMin: 30 }),
    ])
    expect(one(early.nights, 'night-1').sleep.to).toBe('23:50')
  })
})
