/** Writes `shared/host/plan-schema/` anew from the types of the plan. Run it after changing one of them. */
import { mkdirSync, writeFileSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import * as prettier from 'prettier'
import { generatePlanSchema } from './generate.ts'

const root = join(dirname(fileURLToPath(import.meta.url)), '../../..')
const folder = join(root, 'shared/host/plan-schema')
mkdirSync(folder, { recursive: true })
const options = await prettier.resolveConfig(join(folder, 'plan.ts'))
for (const [name, content] of generatePlanSchema(root)) {
  writeFileSync(join(folder, name), await prettier.format(content, { ...options, parser: 'typescript' }))
}
