/** Ids that nothing else has. */
import { describe, expect, it } from 'vitest'
import { freeId, freshId } from '../../../../shared/document/schema/ids.ts'
import { idSchema } from '../../../../shared/document/schema/values.ts'

describe('a free id', () => {
  it('counts from two, or from where it is told, to the first that is not taken', () => {
    expect(freeId(new Set(), 'tent')).toBe('tent-2')
    expect(freeId(new Set(['tent', 'tent-2', 'tent-3', 'tent-5']), 'tent')).toBe('tent-4')
    expect(freeId(new Set(['paid-1']), 'paid', 1)).toBe('paid-2')
    expect(freeId(new Set(), 'paid', 7)).toBe('paid-7')
  })

  it('of the longest name is still an id', () => {
    const longest = 'x'.repeat(64)
    const taken = new Set(Array.from({ length: 9998 }, (_, at) => `${'x'.repeat(58)}-${String(at + 2)}`))
    expect(idSchema.safeParse(longest).success).toBe(true)
    expect(freeId(taken, longest)).toBe(`${'x'.repeat(58)}-10000`)
    expect(idSchema.safeParse(freeId(taken, longest)).success).toBe(true)
  })
})

describe('the id of what is added to a list', () => {
  it('has the next number that none of the list has', () => {
    expect(freshId('lesson', [])).toBe('lesson-1')
    expect(freshId('lesson', [{ id: 'lesson-1' }, { id: 'lesson-2' }])).toBe('lesson-3')
    expect(freshId('lesson', [{ id: 'lesson-3' }, { id: 'lesson-4' }])).toBe('lesson-5')
    expect(freshId('paid', [{ what: 'night' }, 'not a row', null])).toBe('paid-4')
  })
})
