/** Every published row against the engine, by source, with the table printed. */
import { readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { afterAll, describe, expect, it } from 'vitest'
import { parseRows } from '../support/check-values/rows.ts'
import { closingLine, runRow, tableOf } from '../support/check-values/run.ts'
import type { RowResult } from '../support/check-values/run.ts'

const FOLDER = new URL('./rows/', import.meta.url)

/** How many rows each file carries: a file emptied or cut short fails here. */
const COUNTS: Readonly<Record<string, number>> = {
  'air-co2': 17,
  'air-condensation': 8,
  'air-moisture': 6,
  'air-psychro': 28,
  /** Read by us beyond the 349 rows: the rest of three validation tables. */
  also: 17,
  'cabin-heat': 27,
  'cabin-hvac': 7,
  'cabin-solar': 10,
  charge: 31,
  'comfort-cold': 11,
  'comfort-insulation': 23,
  'comfort-local': 13,
  'comfort-operative': 4,
  'comfort-pmv': 28,
  'comfort-set': 20,
  'comfort-sleep': 9,
  drive: 19,
  hookup: 37,
  night: 7,
  safety: 13,
  sun: 16,
  weather: 15,
}

/** Rows that the engine has no quantity for, each named; none. */
const SKIPPED: readonly string[] = []

const results: RowResult[] = []

const rowsOf = (area: string): readonly RowResult[] =>
  parseRows(readFileSync(fileURLToPath(new URL(`${area}.json`, FOLDER)), 'utf8')).map(runRow)

describe('published values', () => {
  it('are all of the files in the folder, and no file is missing', () => {
    const files = readdirSync(fileURLToPath(FOLDER)).map((name) => name.replace(/\.json$/, ''))
    expect(files.toSorted()).toEqual(Object.keys(COUNTS).toSorted())
  })

  for (const [area, rows] of Object.entries(COUNTS)) {
    it(`of ${area} agree with the engine in all ${rows} rows, each within its tolerance`, () => {
      const judged = rowsOf(area)
      results.push(...judged)
      expect(judged).toHaveLength(rows)
      expect(new Set(judged.map((result) => result.row.id)).size).toBe(rows)
      const failed = judged.filter((result) => result.verdict === 'failed')
      expect(failed.length === 0 ? '' : tableOf(failed)).toBe('')
      expect(judged.filter((result) => result.verdict === 'skipped').map((result) => result.row.id)).toEqual(
        SKIPPED.filter((id) => judged.some((result) => result.row.id === id)),
      )
      for (const result of judged) expect(result.row.source, `${result.row.id} names its source`).not.toBe('not stated')
    })
  }

  afterAll(() => {
    console.log(`${tableOf(results)}\n\npublished values: ${closingLine(results)}`)
  })
})
