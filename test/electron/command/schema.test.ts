/** What `--schema` prints, judged by a validator that is not ours. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { beforeAll, describe, expect, it } from 'vitest'
import { runCommand } from '../../../electron/command/run.ts'
import { planTrip } from '../../../shared/host/index.ts'
import { smallTrip } from '../../support/small-trip.ts'

const samples = join(import.meta.dirname, '../../../assets/samples')
const ajv = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true })

let ended = -1
let printed: { trip: object; plan: object } = { trip: {}, plan: {} }
beforeAll(async () => {
  const said: string[] = []
  ended = await runCommand(['--schema'], {
    folder: '.',
    say: (text) => said.push(text),
    complain: () => undefined,
    progress: null,
  })
  printed = JSON.parse(said.join('\n'))
})

describe('the printed schemas', () => {
  it('are JSON Schemas, draft 2020-12, of a trip and of a plan', () => {
    expect(ended).toBe(0)
    expect(Object.keys(printed)).toEqual(['trip', 'plan'])
    for (const schema of Object.values(printed)) {
      expect(schema).toMatchObject({ $schema: 'https://json-schema.org/draft/2020-12/schema', type: 'object' })
      expect(ajv.validateSchema(schema)).toBe(true)
    }
  })

  it('the trip’s lets every sample in, and keeps a spoilt one out by its field', () => {
    const valid = ajv.compile(printed.trip)
    const names = readdirSync(samples)
    expect(names.length).toBeGreaterThan(1)
    for (const name of names) {
      expect(
        valid(JSON.parse(readFileSync(join(samples, name), 'utf8'))),
        `${name} ${JSON.stringify(valid.errors)}`,
      ).toBe(true)
    }
    expect(valid(JSON.parse(smallTrip((trip) => (trip.title = 7 as unknown as string))))).toBe(false)
    expect(valid.errors?.map(({ instancePath }) => instancePath)).toContain('/title')
  })

  it('the plan’s lets a real plan in as it stands in its file, and keeps out one without a verdict', () => {
    const valid = ajv.compile(printed.plan)
    const planned = planTrip(Buffer.from(smallTrip()), { seed: 1, iterations: 12, remedies: false })
    if (!planned.ok) throw new Error(JSON.stringify(planned.problem))
    const plan: unknown = JSON.parse(JSON.stringify(planned.value.plan))
    expect(valid(plan), JSON.stringify(valid.errors)).toBe(true)
    const { verdict: _, ...without } = planned.value.plan
    expect(valid(JSON.parse(JSON.stringify(without)))).toBe(false)
  })
})
