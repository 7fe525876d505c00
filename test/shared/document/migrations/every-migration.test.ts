/** The chain of migrations has no gap, and each link has its test and its frozen file. */
import { existsSync, readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { FORMAT_VERSION, MIGRATIONS, migrateTrip, parseTrip } from '../../../../shared/document/index.ts'

const folder = (path: string): string => fileURLToPath(new URL(`../../../${path}`, import.meta.url))
const sources = folder('../shared/document/migrations/')
const fixtures = folder('fixtures/files/')

describe('the migrations', () => {
  it('lead from version 0 to the current one without a gap', () => {
    expect(MIGRATIONS.map((migration) => migration.to)).toEqual(
      Array.from({ length: FORMAT_VERSION }, (_, index) => index + 1),
    )
  })

  it.each(MIGRATIONS.map((migration) => [migration.name, migration] as const))(
    'each have a file, a test and frozen trips: %s',
    (name, migration) => {
      const file = `${String(migration.to).padStart(4, '0')}-${name}`
      expect(existsSync(`${sources}${file}.ts`)).toBe(true)
      expect(existsSync(fileURLToPath(new URL(`./${file}.test.ts`, import.meta.url)))).toBe(true)
      expect(readdirSync(`${fixtures}v${String(migration.to - 1)}`).length).toBeGreaterThan(0)
      expect(readdirSync(`${fixtures}v${String(migration.to)}`).length).toBeGreaterThan(0)
    },
  )

  it('import no current schema, so that a later change cannot alter them', () => {
    const steps = readdirSync(sources).filter((file) => /^\d{4}-/.test(file))
    expect(steps.length).toBe(MIGRATIONS.length)
    for (const file of steps) expect(readFileSync(`${sources}${file}`, 'utf8')).not.toMatch(/from '.*schema/)
  })

  it('open every frozen file of every version', () => {
    const files = readdirSync(fixtures).flatMap((version) =>
      readdirSync(`${fixtures}${version}`).map((file) => `${fixtures}${version}/${file}`),
    )
    expect(files.length).toBeGreaterThanOrEqual(FORMAT_VERSION + 1)
    for (const file of files) {
      const read = parseTrip(readFileSync(file))
      expect(read.ok ? [] : [file, read.problem]).toEqual([])
    }
  })

  it('leave content of the current version alone', () => {
    const content = { version: FORMAT_VERSION, anything: [1, 2] }
    expect(migrateTrip(content, FORMAT_VERSION, FORMAT_VERSION)).toBe(content)
  })
})
