/** Edits that speak of what is not there, or give what is there already: refused, with the thing and its id named. */
import { describe, expect, it } from 'vitest'
import type { Edit } from '../../../../shared/document/index.ts'
import { createText } from '../../../../shared/text/index.ts'
import { edited, one, refused, sample } from './edited.ts'

const rule = { ...one(sample.checklist.rules, 'own-hush') }
const change = (taken: Extract<Edit, { kind: 'take-remedy' }>['change']): Edit => ({
  kind: 'take-remedy',
  change: taken,
})

const MISSING: readonly (readonly [Edit, string, string])[] = [
  [{ kind: 'duplicate-piece', pieceId: 'kite' }, 'piece', 'kite'],
  [{ kind: 'remove-piece', pieceId: 'kite' }, 'piece', 'kite'],
  [{ kind: 'move-to-bin', pieceId: 'kite', binId: null }, 'piece', 'kite'],
  [{ kind: 'move-to-bin', pieceId: 'flask', binId: 'attic' }, 'bin', 'attic'],
  [{ kind: 'set-spare', pieceId: 'kite', spare: true }, 'piece', 'kite'],
  [{ kind: 'duplicate-bin', binId: 'flask' }, 'bin', 'flask'],
  [{ kind: 'remove-bin', binId: 'flask' }, 'bin', 'flask'],
  [{ kind: 'lock', unitId: 'kite', lock: { layout: 'bed', bayId: 'console' } }, 'unit', 'kite'],
  [{ kind: 'unlock', unitId: 'kite' }, 'unit', 'kite'],
  [{ kind: 'set-night', nightId: 'night-9', decision: { covers: true } }, 'night', 'night-9'],
  [{ kind: 'set-night', nightId: 'night-9', decision: { beddingPieceIds: [] } }, 'night', 'night-9'],
  [{ kind: 'set-night', nightId: 'night-1', decision: { beddingPieceIds: ['kite'] } }, 'piece', 'kite'],
  [{ kind: 'choose-bedding', nightId: 'night-1', pieceIds: ['kite'] }, 'piece', 'kite'],
  [{ kind: 'duplicate-night', nightId: 'night-9' }, 'night', 'night-9'],
  [{ kind: 'remove-night', nightId: 'night-9' }, 'night', 'night-9'],
  [{ kind: 'remove-lesson', lessonId: 'l9' }, 'lesson', 'l9'],
  [{ kind: 'lesson-to-rule', lessonId: 'l9', rule }, 'lesson', 'l9'],
  [{ kind: 'edit-rule', rule: { ...rule, id: 'own-9' } }, 'rule', 'own-9'],
  [{ kind: 'remove-rule', ruleId: 'own-9' }, 'rule', 'own-9'],
  [{ kind: 'remove-measurement', index: 0 }, 'measurement', '0'],
  [{ kind: 'remove-ledger-entry', entryId: 'paid-9' }, 'ledger-entry', 'paid-9'],
  [change({ kind: 'bring-bedding', nightId: 'night-9', pieceId: 'winter-bag' }), 'night', 'night-9'],
  [change({ kind: 'bring-piece', pieceId: 'kite' }), 'piece', 'kite'],
  [change({ kind: 'leave-behind', pieceIds: ['flask', 'kite'] }), 'piece', 'kite'],
  [change({ kind: 'turn-piece', pieceId: 'kite' }), 'piece', 'kite'],
  [change({ kind: 'covers', nightId: 'night-9' }), 'night', 'night-9'],
]

describe('an edit of what is not there', () => {
  it.each(MISSING.map(([edit, what, id]) => [JSON.stringify(edit).slice(0, 90), edit, what, id] as const))(
    'is refused: %s',
    (_, edit, what, id) => {
      expect(refused(edit)).toEqual({ code: 'edit-target-missing', path: [], params: { what, id } })
    },
  )

  it('is told in words of both languages, with the id', () => {
    for (const [edit, , id] of MISSING)
      for (const language of ['en', 'de'] as const) {
        const words = createText(language, 'metric').problem(refused(edit))
        expect(words).toContain(id)
        expect(words).not.toMatch(/edit-target-missing|\{/)
      }
  })

  it('stops several changes at the one that fails, and none of them is made', () => {
    const together = change({
      kind: 'together',
      changes: [
        { kind: 'turn-piece', pieceId: 'kite' },
        { kind: 'covers', nightId: 'night-9' },
      ],
    })
    // The first failure is told, not the last.
    expect(refused(together).params).toEqual({ what: 'piece', id: 'kite' })
  })
})

describe('an id that is taken', () => {
  const lesson = { id: 'l1', text: 'Boots froze' }
  const withLesson = edited([{ kind: 'add-lesson', lesson }])
  const bin = one(sample.kit.bins, 'food-box')

  it.each<[string, Edit, string]>([
    ['a bin as a bin', { kind: 'add-bin', bin }, 'food-box'],
    ['a bin as a piece', { kind: 'add-bin', bin: { ...bin, id: 'flask' } }, 'flask'],
    ['a night', { kind: 'add-night', night: one(sample.nights, 'night-2') }, 'night-2'],
    ['a lesson', { kind: 'add-lesson', lesson }, 'l1'],
    ['a rule', { kind: 'add-rule', rule }, 'own-hush'],
    ['a rule out of a lesson', { kind: 'lesson-to-rule', lessonId: 'l1', rule }, 'own-hush'],
    ['what was paid', { kind: 'add-ledger-entry', entry: one(sample.ledger, 'paid-1') }, 'paid-1'],
  ])('is refused for %s', (_, edit, id) => {
    expect(refused(edit, withLesson)).toEqual({ code: 'edit-id-taken', path: [], params: { id } })
  })
})

describe('a path that leads nowhere', () => {
  it.each([
    [[]],
    [['format']],
    [['nights', 'first', 'date']],
    [['nights', -1, 'date']],
    [['nights', 0.5]],
    [['title', 'length']],
    [['preferences', 0]],
    [['vehicle', 'spoiler', 'colour']],
    [['kit', 'constructor', 'name']],
  ])('is refused and named: %j', (path) => {
    expect(refused({ kind: 'set-value', path, value: 'x' })).toEqual({
      code: 'edit-path-missing',
      path,
      params: { field: path.join('.') },
    })
  })

  it('through the prototype sets a field that nobody knows, and nothing outside the trip', () => {
    expect(refused({ kind: 'set-value', path: ['preferences', '__proto__', 'dark'], value: true }).code).toBe(
      'field-unknown',
    )
    expect(refused({ kind: 'set-value', path: ['preferences', '__proto__'], value: { dark: true } }).code).toBe(
      'field-unknown',
    )
    expect(Reflect.get({}, 'dark')).toBeUndefined()
  })
})
