/** Outcomes as values, and what only a programmer can cause. */
import { describe, expect, it } from 'vitest'
import { assertNever, fail, invariant, ok, problem } from '../../../shared/result/index.ts'

describe('an outcome', () => {
  it('is a value or a problem', () => {
    expect(ok(4)).toEqual({ ok: true, value: 4 })
    expect(fail('why')).toEqual({ ok: false, problem: 'why' })
  })

  it('names what went wrong, where, and with which values; all but the code may be left out', () => {
    expect(problem('a', ['kit', 2], { value: 'x' })).toEqual({ code: 'a', path: ['kit', 2], params: { value: 'x' } })
    expect(problem('a')).toEqual({ code: 'a', path: [], params: {} })
  })
})

describe('a programming error', () => {
  it('throws where what must hold does not', () => {
    expect(() => invariant(true, 'fine')).not.toThrow()
    for (const wrong of [false, 0, null, undefined, ''])
      expect(() => invariant(wrong, 'a bay has a size')).toThrow('invariant: a bay has a size')
  })

  it('throws for a case that nobody thought of, with its value', () => {
    expect(() => assertNever({ kind: 'new' } as never)).toThrow('unexpected value {"kind":"new"}')
  })
})
