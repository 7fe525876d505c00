/** The judge of published values: tolerances by name, printed digits, words, bounds, and rows that it cannot answer. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { gridRows } from '../support/check-values/grid-rows.ts'
import { allowedFor, halfLastDigit, judge } from '../support/check-values/judge.ts'
import { readRows } from '../support/check-values/rows.ts'
import type { Row, Value } from '../support/check-values/rows.ts'
import { runRead, runRow } from '../support/check-values/run.ts'

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

  it('a number printed with a zero behind its point is no whole number', () => {
    const printed = (expected: string): string => {
      const [read] = readRows(
        `[{"id": "T", "area": "hookup", "inputs": {"v_open": 100, "loop_ohm": 0.01, "amps": 3}, "expected": {"v_load": ${expected}}}]`,
      )
      return read === undefined ? 'none' : runRead(read).verdict
    }
    expect([printed('100.0'), printed('99.9'), printed('100')]).toEqual(['passed', 'failed', 'failed'])
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
    expect(allowedFor({ elev: 0.05, az: 0.1 }, 'apparent_elevation_deg')).toEqual({ absolute: 0.05, relative: 0 })
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
    // 80 % of 6 A is 4.800000000000001 in binary.
    expect(judge(row({ amps_max: 4.8 }, 0), 'amps_max', 0.8 * 6).verdict).toBe('passed')
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

/** One published row of each shape: an area and the names of its inputs. */
const SHAPES: readonly Row[] = (() => {
  const folder = fileURLToPath(new URL('./rows/', import.meta.url))
  const rows = readdirSync(folder).flatMap((name) => readRows(readFileSync(join(folder, name), 'utf8')))
  const byShape = new Map<string, Row>()
  for (const { row } of rows) {
    const shape = `${row.area} ${Object.keys(row.inputs).toSorted().join(' ')}`
    if (!byShape.has(shape)) byShape.set(shape, row)
  }
  return [...byShape.values()]
})()

describe('inputs without sense', () => {
  const senseless: readonly Value[] = [0, -1, -1000, 1e9, 'warm', '', null, [], true]

  it('never stop the run and never pass as no number: each row of every shape, each input in turn', () => {
    expect(SHAPES.length).toBeGreaterThan(70)
    for (const shape of SHAPES) {
      for (const key of Object.keys(shape.inputs)) {
        for (const value of senseless) {
          const result = runRow({ ...shape, inputs: { ...shape.inputs, [key]: value } })
          const endless = result.judgements.some(({ ours }) => typeof ours === 'number' && !Number.isFinite(ours))
          expect(endless && result.verdict !== 'failed', `${shape.id} ${key}=${String(value)}`).toBe(false)
          if (result.verdict !== 'passed' && result.judgements.length === 0) expect(result.reason).toMatch(/\w/)
        }
      }
    }
  })

  it.each<[string, Row['inputs'], RegExp]>([
    ['air.psychro', { t_C: 20, rh: 0.5, p_Pa: 0 }, /p_Pa is 0/],
    ['air.psychro', { t_C: 110, rh: 0.9, p_Pa: 101_325 }, /p_Pa is 101325, less than the vapour/],
    ['air.psychro', { t_C: 20, twb_C: 25, p_Pa: 101_325 }, /twb_C is 25/],
    ['air.psychro', { t_C: 'warm', rh: 0.5 }, /t_C is "warm", no number/],
    ['air.co2', { G_L_s: 0.0066, volume_m3: 0, ach: 1, hours: 1 }, /volume_m3 is 0/],
    ['air.co2', { G_L_s: 0.0066, max_delta_ppm: 0 }, /max_delta_ppm is 0/],
    ['cabin.heat', { UA_W_K: 0, C_kJ_K: 125, t0_C: 18, t_out_C: 0, hours: 1 }, /UA_W_K is 0/],
    ['hookup', { sites_30A: 0, VA_30A: 3600 }, /sites_30A .* no site at all/],
    ['drive', { v_kmh: 0, mass_kg: 1500, CdA_m2: 0.7, crr: 0.01, rho: 1.2, drivetrain_eff: 0.9 }, /v_kmh is 0/],
    ['night', { UA_W_K: 34, C_kJ_K: 140, t_in_set_C: 18, t_out_by_hour: [] }, /t_out_by_hour is \[\], no list/],
    ['sun', { lat: 52, lon: 5, local_date: '2024-02-30' }, /local_date is 2024-02-30/],
    ['comfort.local', { kind: 'colour of the ceiling', delta_tpr_K: 5 }, /kind is “colour of the ceiling”/],
    ['weather', { Tmax: 3, Tmin: 8, hour: 2, sunrise: 7, sunset: 17, a: 1.86, b: 2.2, c: -0.17 }, /Tmin is 8/],
  ])('of %s %o fail with the name of the input', (area, inputs, named) => {
    const result = runRow({ ...row({ x: 1 }, 0), area, inputs })
    expect(result.verdict).toBe('failed')
    expect(result.reason).toMatch(named)
  })

  it('air without water is answered: no ratio, a wet bulb, and no dew point', () => {
    const inputs = { t_C: 20, rh: 0, p_Pa: 101_325 }
    // Wet bulb of dry air at 20 °C: 5.84 °C, psychrolib 1.1.1.
    const answered = { ...row({ w_kgkg: 0, twb_C: 5.84 }, { twb_C: 0.01 }), area: 'air.psychro', inputs }
    expect(runRow(answered).verdict).toBe('passed')
    expect(runRow({ ...answered, expected: { t_dew_C: -100 } })).toMatchObject({
      verdict: 'skipped',
      reason: expect.stringContaining('t_dew_C'),
    })
  })

  it('saturated air at any temperature has its wet bulb and dew point at that temperature', () => {
    for (let tempC = -30; tempC <= 45; tempC += 2.5) {
      const inputs = { t_C: tempC, rh: 1, p_Pa: 101_325 }
      const expected = { twb_C: tempC, t_dew_C: tempC }
      expect(runRow({ ...row(expected, { abs: 0.01 }), area: 'air.psychro', inputs }).verdict).toBe('passed')
    }
  })
})

describe('a file from outside', () => {
  const verdicts = (text: string): readonly string[] => readRows(text).map((read) => runRead(read).verdict)
  const good =
    '{"id": "G", "area": "charge", "inputs": {"duty_pct": 25}, "expected": {"amps": 15}, "tolerance": {"amps": 0.1}}'

  it('may hold spoiled rows: each fails alone, with what is wrong', () => {
    const text = `[${good}, {"id": "B", "area": "charge", "inputs": "none", "expected": {}}, 7, null, ${good}]`
    expect(verdicts(text)).toEqual(['passed', 'failed', 'failed', 'failed', 'passed'])
    expect(readRows(text).map((read) => runRead(read).row.id)).toEqual(['G', 'B', 'row 3', 'row 4', 'G'])
  })

  it('may hold facts in words, which are skipped by name', () => {
    const text = '[{"area": "hookup", "topic": "adapters", "value": "no overload protection", "source": "read"}]'
    expect(verdicts(text)).toEqual(['skipped'])
    expect(readRows(text).map((read) => runRead(read).reason)).toEqual([expect.stringContaining('adapters')])
  })

  it('may wrap its rows in an object, begin with a byte order mark, and put figures in quotes', () => {
    expect(verdicts(`{"rows": [${good}]}`)).toEqual(['passed'])
    expect(verdicts(`\uFEFF[${good.replace('25', '"25"')}]`)).toEqual(['passed'])
  })
})

describe('a grid of a library’s outputs', () => {
  const carried = [
    ['pmv-ppd', 1943],
    ['set', 1727],
    ['psychrolib', 320],
    ['ireq', 61],
    ['sleep-minutes', 38],
    ['sleep-published-hours', 38],
    ['solar-position', 53],
    ['sunrise-sunset', 26],
  ] as const
  it.each(carried)('%s runs as rows of its area, all %d passed', (name, lines) => {
    const file = fileURLToPath(new URL(`./grids/${name}.csv`, import.meta.url))
    const results = (gridRows(readFileSync(file, 'utf8'), name) ?? []).map(runRow)
    expect(results).toHaveLength(lines)
    expect(results.filter(({ verdict: told }) => told !== 'passed').map(({ row: failed }) => failed)).toEqual([])
  })

  it('of columns that nobody knows is no grid', () => {
    expect(gridRows('colour,taste\nred,sweet', 'x.csv')).toBeNull()
    expect(gridRows('[{"id": "T"}]', 'x.json')).toBeNull()
  })
})

describe('the command', () => {
  const folder = mkdtempSync(join(tmpdir(), 'kipstow-values-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))

  const run = (rows: readonly Row[] | null) => {
    if (rows !== null) writeFileSync(join(folder, 'rows.json'), JSON.stringify(rows))
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

  it('says what is wrong with a file that it cannot read', () => {
    writeFileSync(join(folder, 'rows.json'), '{"rows": ')
    const done = run(null)
    expect(done.stderr).toMatch(/^rows\.json: /)
    expect(done.status).toBe(2)
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
