/** `npx tsx test/support/write-schema/main.ts`: writes the trip's JSON Schema from the zod schemas. */
import { writeFileSync } from 'node:fs'
import { tripJsonSchema } from '../../../shared/document/index.ts'

const file = new URL('../../../assets/schema/trip.schema.json', import.meta.url)

writeFileSync(file, `${JSON.stringify(tripJsonSchema(), null, 2)}\n`)
