/** The zod schema of the plan says what its types say. */
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import * as prettier from 'prettier'
import { describe, expect, expectTypeOf, it } from 'vitest'
import type { z } from 'zod'
import { planSchema } from '../../../shared/host/plan-schema/plan.ts'
import type { DeepReadonly } from '../../../shared/host/zod.ts'
import type { Plan } from '../../../shared/plan/index.ts'
import { generatePlanSchema } from '../../support/plan-schema/generate.ts'

const root = join(import.meta.dirname, '../../..')

describe('the schema of the plan', () => {
  it('is assignable from and to the type', () => {
    expectTypeOf<DeepReadonly<z.infer<typeof planSchema>>>().toExtend<Plan>()
    expectTypeOf<Plan>().toExtend<DeepReadonly<z.infer<typeof planSchema>>>()
    expect(Object.keys(planSchema.shape)).toContain('verdict')
  })

  it('is what the types say today; run `tsx test/support/plan-schema/main.ts` where it is not', async () => {
    const files = generatePlanSchema(root)
    expect(files.size).toBeGreaterThan(3)
    for (const [name, content] of files) {
      const path = join(root, 'shared/host/plan-schema', name)
      const options = await prettier.resolveConfig(path)
      expect(readFileSync(path, 'utf8'), name).toBe(
        await prettier.format(content, { ...options, parser: 'typescript' }),
      )
    }
  })
})
