/** The JSON Schema that ships is the one the zod schemas make. Write it anew with `npx tsx test/support/write-schema/main.ts`. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { tripJsonSchema } from '../../../shared/document/index.ts'

const file = new URL('../../../assets/schema/trip.schema.json', import.meta.url)

describe('the JSON Schema of a trip', () => {
  it('is up to date', () => {
    const shipped: unknown = JSON.parse(readFileSync(file, 'utf8'))
    const made: unknown = JSON.parse(JSON.stringify(tripJsonSchema()))
    expect(shipped).toEqual(made)
  })

  it('knows the format name and the version', () => {
    expect(JSON.stringify(tripJsonSchema())).toContain('"const":"kipstow-trip"')
  })
})
