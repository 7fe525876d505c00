/** What each edit does, and what it says where it cannot. */
import { describe, expect, it } from 'vitest'
import { applyEdit, parseTrip } from '../../../../shared/document/index.ts'
import type { Edit, Trip } from '../../../../shared/document/index.ts'
import { freezeDeep } from '../../../support/generators/freeze.ts'
import { bytesOf, sampleText } from '../sample.ts'

const read = parseTrip(bytesOf(sampleText()))
if (!read.ok) throw new Error('the sample does not open')
const sample: Trip = freezeDeep(read.value)

function edited(edit: Edit, trip: Trip = sample): Trip {
  const next = applyEdit(trip, edit)
  if (!next.ok) throw new Error(`${next.problem.code} at ${next.problem.path.join('.')}`)
  return next.value
}

const refusal = (edit: Edit): string => {
  const next = applyEdit(sample, edit)
  return next.ok ? 'accepted' : next.problem.code
}

const piece = (trip: Trip, id: string) => trip.kit.pieces.find((one) => one.id === id)
const night = (trip: Trip, id: string) => trip.nights.find((one) => one.id === id)

describe('setting one field', () => {
  it('changes that field and shares all the rest', () => {
    const trip = edited({ kind: 'set-value', path: ['nights', 0, 'weather', 'lowC'], value: -6 })
    expect(trip.nights[0]?.weather.lowC).toBe(-6)
    expect(trip.kit).toBe(sample.kit)
    expect(trip.nights[1]).toBe(sample.nights[1])
  })

  it('takes an optional field away', () => {
    const trip = edited({ kind: 'set-value', path: ['nights', 0, 'target'] })
    expect(trip.nights[0]).not.toHaveProperty('target')
  })

  it('adds an optional field that was not there', () => {
    expect(
      edited({ kind: 'set-value', path: ['nights', 0, 'hookup', 'siteLimitA'], value: 10 }).nights[0]?.hookup
        ?.siteLimitA,
    ).toBe(10)
  })

  it('takes one element out of a list', () => {
    const trip = edited({ kind: 'set-value', path: ['nights', 0, 'weather', 'hours', 0] })
    expect(trip.nights[0]?.weather.hours.length).toBe((sample.nights[0]?.weather.hours.length ?? 0) - 1)
  })

  it.each([
    ['a value of another kind', { path: ['title'], value: 4 }, 'field-kind'],
    ['a value beyond its limit', { path: ['nights', 0, 'hookup', 'breakerA'], value: 900 }, 'field-number-too-high'],
    ['a field that must be there', { path: ['title'] }, 'field-missing'],
    ['a path that leads nowhere', { path: ['nights', 9, 'date'], value: '2027-10-08' }, 'edit-path-missing'],
    ['a field nobody knows', { path: ['nights', 0, 'moon'], value: 'full' }, 'field-unknown'],
    ['the version of the format', { path: ['version'], value: 2 }, 'edit-path-missing'],
    ['a reference to nothing', { path: ['kit', 'pieces', 0, 'binId'], value: 'lost' }, 'reference-unknown'],
    ['an opening beyond its face', { path: ['vehicle', 'bays', 0, 'sizeMm', 2], value: 300 }, 'opening-outside-face'],
  ] as const)('refuses %s', (_, edit, code) => {
    expect(refusal({ kind: 'set-value', ...edit })).toBe(code)
  })
})

describe('pieces and bins', () => {
  it('are added with a new id only', () => {
    const pattern = piece(sample, 'flask')
    if (pattern === undefined) throw new Error('no flask')
    expect(piece(edited({ kind: 'add-piece', piece: { ...pattern, id: 'flask-9' } }), 'flask-9')?.name).toBe(
      pattern.name,
    )
    expect(refusal({ kind: 'add-piece', piece: pattern })).toBe('edit-id-taken')
    expect(refusal({ kind: 'add-piece', piece: { ...pattern, id: 'food-box' } })).toBe('edit-id-taken')
  })

  it('are duplicated beside their pattern, free of its fixed place', () => {
    const locked = edited({ kind: 'lock', unitId: 'flask', lock: { layout: 'bed', bayId: 'console' } })
    const trip = edited({ kind: 'duplicate-piece', pieceId: 'flask' }, locked)
    const at = trip.kit.pieces.findIndex((one) => one.id === 'flask')
    expect(trip.kit.pieces[at + 1]).toMatchObject({ id: 'flask-2', name: piece(sample, 'flask')?.name, locks: [] })
    expect(edited({ kind: 'duplicate-piece', pieceId: 'flask-2' }, trip).kit.pieces[at + 2]?.id).toBe('flask-3')
  })

  it('leave no mention behind when they go', () => {
    const trip = edited({ kind: 'remove-piece', pieceId: 'adapter' })
    expect(piece(trip, 'adapter')).toBeUndefined()
    expect(night(trip, 'night-2')?.hookup).not.toHaveProperty('adapterPieceId')
    const bare = edited({ kind: 'remove-piece', pieceId: 'wool-blanket' })
    expect(bare.nights.flatMap((one) => one.beddingPieceIds)).not.toContain('wool-blanket')
  })

  it('leave their pieces loose when a bin goes', () => {
    const trip = edited({ kind: 'remove-bin', binId: 'food-box' })
    expect(trip.kit.bins.map((bin) => bin.id)).not.toContain('food-box')
    expect(piece(trip, 'dry-food')).not.toHaveProperty('binId')
  })

  it('change their bin, or have none', () => {
    expect(piece(edited({ kind: 'move-to-bin', pieceId: 'snacks', binId: 'food-box' }), 'snacks')?.binId).toBe(
      'food-box',
    )
    expect(piece(edited({ kind: 'move-to-bin', pieceId: 'dry-food', binId: null }), 'dry-food')).not.toHaveProperty(
      'binId',
    )
    expect(refusal({ kind: 'move-to-bin', pieceId: 'snacks', binId: 'attic' })).toBe('edit-target-missing')
  })

  it('are fixed once in each layout, and freed', () => {
    const once = edited({ kind: 'lock', unitId: 'flask', lock: { layout: 'bed', bayId: 'console' } })
    const moved = edited({ kind: 'lock', unitId: 'flask', lock: { layout: 'bed', bayId: 'bedside-left' } }, once)
    expect(piece(moved, 'flask')?.locks).toEqual([{ layout: 'bed', bayId: 'bedside-left' }])
    expect(piece(edited({ kind: 'unlock', unitId: 'flask' }, moved), 'flask')?.locks).toEqual([])
    expect(refusal({ kind: 'lock', unitId: 'flask', lock: { layout: 'bed', bayId: 'load-bay' } })).toBe(
      'lock-bay-not-usable',
    )
  })

  it('refuse to take the last mattress', () => {
    const trip = edited({ kind: 'remove-piece', pieceId: 'mattress-left' })
    const last = applyEdit(trip, { kind: 'remove-piece', pieceId: 'mattress-right' })
    expect(last).toMatchObject({ ok: false, problem: { code: 'bed-without-mattress' } })
  })
})

describe('nights', () => {
  it('take a decision', () => {
    const trip = edited({
      kind: 'set-night',
      nightId: 'night-1',
      decision: { covers: false, ventilation: { gapMm: 40, sides: 1 } },
    })
    expect(night(trip, 'night-1')).toMatchObject({ covers: false, ventilation: { gapMm: 40, sides: 1 } })
  })

  it('bring the spare bedding that is chosen', () => {
    const trip = edited({ kind: 'choose-bedding', nightId: 'night-2', pieceIds: ['winter-bag'] })
    expect(night(trip, 'night-2')?.beddingPieceIds).toEqual(['winter-bag'])
    expect(piece(trip, 'winter-bag')?.spare).toBe(false)
    expect(refusal({ kind: 'choose-bedding', nightId: 'night-2', pieceIds: ['boots'] })).toBe('bedding-not-bedding')
  })

  it('are repeated on the day after the last', () => {
    const trip = edited({ kind: 'duplicate-night', nightId: 'night-1' })
    expect(trip.nights.at(-1)).toMatchObject({ id: 'night-3', date: '2027-10-10' })
    // Its charge is what the day before left.
    expect(trip.nights.at(-1)).not.toHaveProperty('arriveCharge01')
  })

  it('hand their charge on when the first goes, and drop what was measured', () => {
    const measured = edited({
      kind: 'add-measurement',
      measured: { nightId: 'night-1', moment: 'bedtime', clock: '22:00' },
    })
    const trip = edited({ kind: 'remove-night', nightId: 'night-1' }, measured)
    expect(trip.nights.map((one) => [one.id, one.arriveCharge01])).toEqual([
      ['night-2', sample.nights[0]?.arriveCharge01],
    ])
    expect(trip.measured).toEqual([])
    expect(trip.ledger.map((entry) => entry.nightId)).toEqual([undefined, 'night-2'])
    expect(applyEdit(trip, { kind: 'remove-night', nightId: 'night-2' })).toMatchObject({
      ok: false,
      problem: { code: 'edit-last-night' },
    })
  })

  it('go to their place by date, and refuse a date that is taken', () => {
    const first = sample.nights[0]
    if (first === undefined) throw new Error('no night')
    const trip = edited({ kind: 'add-night', night: { ...first, id: 'before', date: '2027-10-01' } })
    expect(trip.nights.map((one) => one.id)).toEqual(['before', 'night-1', 'night-2'])
    expect(refusal({ kind: 'add-night', night: { ...first, id: 'same' } })).toBe('nights-out-of-order')
  })
})

describe('the checklist', () => {
  const tick = { stepKey: 'covers:night-1', state: 'done', atUtc: 5 } as const

  it('keeps one tick for a step, and takes it back', () => {
    const once = edited({ kind: 'tick', tick })
    const skipped = edited({ kind: 'tick', tick: { ...tick, state: 'skipped', reason: 'no glare' } }, once)
    expect(skipped.checklist.ticks).toEqual([{ ...tick, state: 'skipped', reason: 'no glare' }])
    expect(edited({ kind: 'untick', stepKey: tick.stepKey }, skipped).checklist.ticks).toEqual([])
  })

  it('leaves the ticks of other steps as they are', () => {
    const other = { stepKey: 'covers:night-2', state: 'done', atUtc: 7 } as const
    const both = edited({ kind: 'tick', tick: other }, edited({ kind: 'tick', tick }))
    expect(both.checklist.ticks).toEqual([tick, other])
    const again = { ...tick, atUtc: 9 }
    expect(edited({ kind: 'tick', tick: again }, both).checklist.ticks).toEqual([other, again])
    expect(edited({ kind: 'untick', stepKey: tick.stepKey }, both).checklist.ticks).toEqual([other])
  })

  it('turns a lesson into a rule and forgets the link when the rule goes', () => {
    const rule = {
      id: 'dry-boots',
      phase: 'bedtime',
      step: 'Hang the boots',
      reason: 'They froze',
      when: true,
      after: [],
      durationMin: 2,
      enabled: true,
    } as const
    const lesson = edited({ kind: 'add-lesson', lesson: { id: 'l1', nightId: 'night-1', text: 'boots froze' } })
    const learned = edited({ kind: 'lesson-to-rule', lessonId: 'l1', rule }, lesson)
    expect(learned.checklist.lessons[0]?.ruleId).toBe('dry-boots')
    const forgotten = edited({ kind: 'remove-rule', ruleId: 'dry-boots' }, learned)
    expect(forgotten.checklist.lessons[0]).not.toHaveProperty('ruleId')
  })

  it('switches own rules by themselves and built-in ones by a list', () => {
    expect(edited({ kind: 'switch-rule', ruleId: 'own-hush', on: false }).checklist.rules[0]?.enabled).toBe(false)
    const off = edited({ kind: 'switch-rule', ruleId: 'chocks', on: false })
    expect(off.checklist.switchedOffRuleIds).toEqual(['chocks'])
    expect(edited({ kind: 'switch-rule', ruleId: 'chocks', on: true }, off).checklist.switchedOffRuleIds).toEqual([])
  })
})

describe('the ledger and the preferences', () => {
  it('sort what was paid by day', () => {
    const trip = edited({
      kind: 'add-ledger-entry',
      entry: { id: 'e', date: '2027-01-01', kind: 'food', label: 'oats', amountCents: 250 },
    })
    expect(trip.ledger[0]?.id).toBe('e')
    expect(edited({ kind: 'remove-ledger-entry', entryId: 'e' }, trip).ledger).toEqual(sample.ledger)
  })

  it('change one preference at a time', () => {
    expect(edited({ kind: 'set-preferences', preferences: { language: 'de' } }).preferences).toEqual({
      ...sample.preferences,
      language: 'de',
    })
  })
})

describe('taking a remedy', () => {
  it.each([
    ['warmer heat', { kind: 'set-point', nightId: 'night-1', byK: 2 }, ['heating', 'setPoints', 0, 'tempC'], 17],
    [
      'another charge limit',
      { kind: 'charge-limit', nightId: 'night-1', to01: 0.95 },
      ['heating', 'chargeLimit01'],
      0.95,
    ],
    ['another current', { kind: 'current', nightId: 'night-1', toA: 10 }, ['heating', 'currentA'], 10],
    ['a wider gap', { kind: 'window-gap', nightId: 'night-1', toMm: 40 }, ['ventilation', 'gapMm'], 40],
    ['a later target', { kind: 'target-later', nightId: 'night-1', byMin: 15 }, ['target', 'minutesBeforeSunrise'], 25],
    [
      'a bed heater',
      { kind: 'bed-heater', nightId: 'night-1', heaterId: 'underblanket' },
      ['heating', 'bedHeaterIds', 0],
      'underblanket',
    ],
    [
      'a stop on the way',
      { kind: 'stop-on-the-way', nightId: 'night-1', atM: 14_000 },
      ['leg', 'acceptedStopsM', 0],
      14_000,
    ],
    ['an earlier arrival', { kind: 'arrive-earlier', nightId: 'night-1', byMin: 75 }, ['arrive'], '15:05'],
    ['an earlier start', { kind: 'leave-earlier', nightId: 'night-1', byMin: 40 }, ['sleep', 'to'], '04:15'],
    ['the post unused', { kind: 'without-hookup', nightId: 'night-1' }, ['hookup'], undefined],
    [
      'several at once',
      {
        kind: 'together',
        changes: [
          { kind: 'window-gap', nightId: 'night-1', toMm: 40 },
          { kind: 'current', nightId: 'night-1', toA: 10 },
        ],
      },
      ['heating', 'currentA'],
      10,
    ],
    [
      'bedding brought along',
      { kind: 'bring-bedding', nightId: 'night-1', pieceId: 'winter-bag' },
      ['beddingPieceIds', 7],
      'winter-bag',
    ],
  ] as const)('sets %s', (_, change, path, value) => {
    const changed = night(edited({ kind: 'take-remedy', change }), 'night-1')
    expect(path.reduce<unknown>((inside, key) => Reflect.get(Object(inside), key), changed)).toBe(value)
  })

  it('leaves pieces behind, lets them turn and frees them', () => {
    expect(
      piece(edited({ kind: 'take-remedy', change: { kind: 'leave-behind', pieceIds: ['stools'] } }), 'stools')?.spare,
    ).toBe(true)
    expect(
      piece(edited({ kind: 'take-remedy', change: { kind: 'turn-piece', pieceId: 'cool-box' } }), 'cool-box')?.upright
        .length,
    ).toBe(3)
    expect(
      piece(edited({ kind: 'take-remedy', change: { kind: 'unlock', pieceId: 'water-can' } }), 'water-can')?.locks,
    ).toEqual([])
  })
})
