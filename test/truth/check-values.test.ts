/** The judge of published values: tolerances by name, printed digits, words, bounds, and rows that it cannot answer. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { allowedFor, halfLastDigit, judge } from '../support/check-values/judge.ts'
import type { Row, Value } from '../support/check-values/rows.ts'
import { runRow } from '../support/check-values/run.ts'

const row = (expected: Record<string, Value>, tolerance: Row['tolerance']): Row => ({
  id: 'T',
  area: 'night',
  inputs: {},
  expected,
  tolerance,
  source: 'this test',
})
const verdict = (published: Value, ours: Value | undefined, tolerance: Row['tolerance'] = 0): string =>
  judge(row({ x: published }, tolerance), 'x', ours).verdict

describe('without a tolerance', () => {
  it('words, truth values and whole numbers match exactly', () => {
    expect([verdict('discard', 'discard'), verdict('discard', 'keep')]).toEqual(['passed', 'failed'])
    expect([verdict(true, true), verdict(true, false)]).toEqual(['passed', 'failed'])
    expect([verdict(40, 40), verdict(40, 40.01)]).toEqual(['passed', 'failed'])
    expect([verdict(null, null), verdict(null, 3)]).toEqual(['passed', 'failed'])
  })

  it('numbers match to half the last printed digit', () => {
    expect([halfLastDigit(0.49), halfLastDigit(3.1), halfLastDigit(12)]).toEqual([0.005, 0.05, 0])
    expect([verdict(0.49, 0.491), verdict(0.49, 0.496)]).toEqual(['passed', 'failed'])
  })

  it('lists match entry by entry', () => {
    expect([verdict([4.4, 60], [4.4, 60]), verdict([4.4, 60], [4.4, 61]), verdict([4.4, 60], [4.4])]).toEqual([
      'passed',
      'failed',
      'failed',
    ])
  })
})

describe('with a tolerance', () => {
  it('the named one is found by name, by words of the name, or by its beginning', () => {
    expect(allowedFor({ pmv: 0.02, ppd: 1 }, 'ppd')).toEqual({ absolute: 1, relative: 0 })
    expect(allowedFor({ w_rel: 0.01, dew_C: 0.15 }, 'dew_point_in_C')).toEqual({ absolute: 0.15, relative: 0 })
    expect(allowedFor({ w_rel: 0.01, dew_C: 0.15 }, 'w_in_kgkg')).toEqual({ absolute: 0, relative: 0.01 })
    expect(allowedFor({ elev: 0.05, az: 0.1 }, 'azimuth_deg')).toEqual({ absolute: 0.1, relative: 0 })
    expect(allowedFor({ C: 0.05, kWh: 0.02 }, 'tau_h')).toBeNull()
    expect(allowedFor({ V: 0.6 }, 'B')).toEqual({ absolute: 0.6, relative: 0 })
    expect(allowedFor({ rel_regression: 0.005, rel_for_a_physics_model: 0.35 }, 'hvac_electric_W')).toEqual({
      absolute: 0,
      relative: 0.35,
    })
  })

  it('either of an absolute and a relative one is enough', () => {
    expect([verdict(100, 100.4, { abs: 0.01, rel: 0.005 }), verdict(100, 100.6, { abs: 0.01, rel: 0.005 })]).toEqual([
      'passed',
      'failed',
    ])
  })

  it('an absolute one is not widened by few printed digits, a relative one is', () => {
    expect([verdict(0.5, 0.53, { abs: 0.02 }), verdict(0.5, 0.503, { rel: 0.005 })]).toEqual(['failed', 'passed'])
  })

  it('times are compared in seconds', () => {
    const judged = judge(
      row({ sunset_utc: '2015-01-02T23:47:43Z' }, { seconds: 90 }),
      'sunset_utc',
      '2015-01-02T23:48:43Z',
    )
    expect(judged).toMatchObject({ verdict: 'passed', difference: 60 })
  })
})

describe('a range', () => {
  it('bounds one value of ours between the two published', () => {
    const range = row({ draw_ratio_min: 0.7, draw_ratio_max: 1.4 }, 0)
    expect([
      judge(range, 'draw_ratio_min', 1).verdict,
      judge(range, 'draw_ratio_max', 1).verdict,
      judge(range, 'draw_ratio_max', 1.5).verdict,
    ]).toEqual(['passed', 'passed', 'failed'])
    // Minutes are not a minimum.
    expect(judge(row({ tau_min: 62.5 }, { rel: 0.005 }), 'tau_min', 70).verdict).toBe('failed')
  })
})

describe('a row that cannot be answered', () => {
  it('is skipped by name: no such area, no such quantity, a missing input', () => {
    expect(runRow({ ...row({ x: 1 }, 0), area: 'nowhere' })).toMatchObject({
      verdict: 'skipped',
      reason: 'no area nowhere',
    })
    expect(runRow({ ...row({ colour: 1 }, 0), area: 'safety', inputs: { topic: 'generator distance' } })).toMatchObject(
      { verdict: 'skipped', reason: expect.stringContaining('colour') },
    )
    expect(runRow({ ...row({ pmv: 1 }, 0), area: 'comfort.pmv', inputs: { ta_C: 20 } }).verdict).toBe('skipped')
  })

  it('is failed, never passed, where a value of ours is not a number', () => {
    expect(verdict(1, Number.NaN, { abs: 100 })).toBe('failed')
  })
})

describe('the command', () => {
  const folder = mkdtempSync(join(tmpdir(), 'kipstow-values-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  const run = (rows: readonly Row[]) => {
    writeFileSync(join(folder, 'rows.json'), JSON.stringify(rows))
    const main = fileURLToPath(new URL('../support/check-values/main.ts', import.meta.url))
    const tsx = fileURLToPath(new URL('../../node_modules/tsx/dist/cli.mjs', import.meta.url))
    // A file named as the caller stands, as npm passes it.
    return spawnSync(process.execPath, [tsx, main, 'rows.json'], {
      encoding: 'utf8',
      env: { ...process.env, INIT_CWD: folder },
    })
  }
  const other: Row = {
    id: 'N-1',
    area: 'hookup',
    inputs: { v_open: 231, loop_ohm: 0.45, amps: 13 },
    expected: { v_load: 225.15 },
    tolerance: { rel: 0.001 },
    source: 'Ohm',
  }

  it('prints a table and ends in one counting line', () => {
    const done = run([other])
    expect(done.stdout).toMatch(/N-1 +v_load +225\.15 +225\.15/)
    expect(done.stdout.trimEnd().split('\n').at(-1)).toBe('1 passed, 0 failed, 0 skipped')
    expect(done.status).toBe(0)
  })

  it('fails where a row fails, and names what it skipped', () => {
    const done = run([
      { ...other, expected: { v_load: 200 } },
      { ...other, id: 'N-2', expected: { colour: 'red' } },
    ])
    expect(done.stdout.trimEnd().split('\n').at(-1)).toBe('0 passed, 1 failed, 1 skipped')
    expect(done.stdout).toContain('N-2 (the engine has no colour')
    expect(done.status).toBe(1)
  })
})
