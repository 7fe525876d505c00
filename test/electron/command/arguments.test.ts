/** What the headless command understands of its command line. */
import { describe, expect, it } from 'vitest'
import { parseArguments } from '../../../electron/command/arguments.ts'

const codeOf = (...given: string[]): string | null => {
  const parsed = parseArguments(given)
  return parsed.ok ? null : parsed.problem.code
}

describe('the arguments', () => {
  it('are a trip alone: the usual folder, the first seed, a search bounded by rounds', () => {
    expect(parseArguments(['trip.json'])).toEqual({
      ok: true,
      value: { kind: 'plan', trip: 'trip.json', out: null, seed: 1, seconds: null, quiet: false },
    })
  })

  it('may stand in any order, with a space or an equals sign', () => {
    const value = { kind: 'plan', trip: 'a b.json', out: 'o=1', seed: 4, seconds: 3, quiet: true }
    expect(parseArguments(['--seed=4', '--quiet', 'a b.json', '--out=o=1', '--seconds', '3'])).toEqual({
      ok: true,
      value,
    })
    expect(parseArguments(['--out', 'o=1', '--seconds=3', '--seed', '4', 'a b.json', '--quiet'])).toEqual({
      ok: true,
      value,
    })
  })

  it('ask for the schema or for help without a trip', () => {
    expect(parseArguments(['--schema'])).toEqual({ ok: true, value: { kind: 'schema' } })
    for (const ask of ['--help', '-h']) expect(parseArguments([ask])).toEqual({ ok: true, value: { kind: 'help' } })
  })

  it.each([
    ['no trip', [], 'command-trip-missing'],
    ['an empty trip', [''], 'command-trip-missing'],
    ['two trips', ['a.json', 'b.json'], 'command-trips-many'],
    ['an unknown word', ['a.json', '--fast'], 'command-argument-unknown'],
    ['an unknown word beside the schema', ['--schema', '--fast'], 'command-argument-unknown'],
    ['a lone dash', ['-'], 'command-argument-unknown'],
    ['a folder that is not named', ['a.json', '--out'], 'command-argument-missing'],
    ['an empty folder', ['a.json', '--out='], 'command-argument-missing'],
    ['a seed that is not given', ['a.json', '--seed'], 'command-argument-missing'],
    ['a negative seed', ['a.json', '--seed', '-3'], 'command-argument-number'],
    ['a seed beyond 32 bits', ['a.json', '--seed', '4294967296'], 'command-argument-number'],
    ['a seed with a fraction', ['a.json', '--seed', '1.5'], 'command-argument-number'],
    ['a seed in another notation', ['a.json', '--seed', '1e3'], 'command-argument-number'],
    ['no time at all', ['a.json', '--seconds', '0'], 'command-argument-number'],
    ['more than an hour', ['a.json', '--seconds', '3601'], 'command-argument-number'],
  ])('are refused: %s', (_what, given, code) => {
    expect(codeOf(...given)).toBe(code)
  })

  it('take the lowest and the highest seed and time', () => {
    for (const given of [
      ['--seed', '0'],
      ['--seed', '4294967295'],
      ['--seconds', '1'],
      ['--seconds', '3600'],
    ])
      expect(codeOf('a.json', ...given)).toBeNull()
  })

  it('name the word and the value that are refused', () => {
    expect(parseArguments(['a.json', '--seed', 'x'])).toEqual({
      ok: false,
      problem: {
        code: 'command-argument-number',
        path: [],
        params: { argument: '--seed', value: 'x', low: 0, high: 4294967295 },
      },
    })
  })
})
