/** The table of who may import whom, enforced, and proof that the check bites and looks at enough files. */
import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { cruise } from 'dependency-cruiser'
import type { ICruiseResult } from 'dependency-cruiser'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

const root = join(dirname(fileURLToPath(import.meta.url)), '../..')
const rules = createRequire(import.meta.url)('../../.dependency-cruiser.cjs')
/** Well under today's count, well over what a misconfigured run would see. */
const FEWEST_MODULES = 100

async function violations(baseDir: string): Promise<ICruiseResult> {
  const { output } = await cruise(['shared', 'renderer', 'electron'], {
    ...rules.options,
    ruleSet: { forbidden: rules.forbidden },
    validate: true,
    baseDir,
  })
  if (typeof output === 'string') throw new Error('dependency-cruiser answered with text')
  return output
}

describe('the layers of the tree', () => {
  it('import only what the table allows, over all files', async () => {
    const { summary, modules } = await violations(root)
    const own = modules.filter((module) => !module.source.includes('node_modules') && module.coreModule !== true)
    expect(own.length).toBeGreaterThanOrEqual(FEWEST_MODULES)
    expect(summary.violations.map(({ rule, from, to }) => `${rule.name}: ${from} -> ${to}`)).toEqual([])
  })
})

describe('a wrong import', () => {
  const plants: { file: string; imports: string; breaks: string }[] = [
    { file: 'shared/packing/bad.ts', imports: 'vue', breaks: 'layer:packing' },
    { file: 'shared/packing/bad.ts', imports: '../climate/index.ts', breaks: 'layer:packing' },
    { file: 'shared/climate/bad.ts', imports: '../checklist/index.ts', breaks: 'layer:climate' },
    { file: 'shared/checklist/bad.ts', imports: '../document/index.ts', breaks: 'layer:checklist' },
    { file: 'shared/document/bad.ts', imports: '../plan/index.ts', breaks: 'layer:document' },
    { file: 'shared/plan/bad.ts', imports: '../packing/inner.ts', breaks: 'layer:plan' },
    { file: 'shared/text/bad.ts', imports: '../plan/index.ts', breaks: 'layer:text' },
    { file: 'shared/units/bad.ts', imports: 'node:fs', breaks: 'node-only-in-hosts' },
    { file: 'renderer/features/load/bad.ts', imports: '../night/index.ts', breaks: 'layer:renderer-features' },
    { file: 'renderer/ui/bad.ts', imports: '../../shared/plan/index.ts', breaks: 'layer:renderer-ui' },
    { file: 'electron/preload/bad.ts', imports: '../../shared/plan/index.ts', breaks: 'layer:electron-preload' },
    { file: 'electron/web/bad.ts', imports: 'electron', breaks: 'layer:electron-web' },
    { file: 'electron/command/bad.ts', imports: '../web/index.ts', breaks: 'layer:electron-command' },
    { file: 'shared/lost/bad.ts', imports: '../units/index.ts', breaks: 'every-file-has-a-layer' },
    { file: 'shared/plan/bad.ts', imports: '../../test/help.ts', breaks: 'tests-are-leaves' },
  ]
  let planted = ''
  let found = new Set<string>()

  beforeAll(async () => {
    planted = mkdtempSync(join(tmpdir(), 'kipstow-plant-'))
    symlinkSync(join(root, 'node_modules'), join(planted, 'node_modules'), 'junction')
    const write = (file: string, text: string): void => {
      mkdirSync(dirname(join(planted, file)), { recursive: true })
      writeFileSync(join(planted, file), text)
    }
    write(
      'tsconfig.json',
      '{"compilerOptions":{"allowImportingTsExtensions":true,"moduleResolution":"bundler","module":"esnext"}}',
    )
    for (const target of ['units', 'climate', 'checklist', 'document', 'plan'])
      write(`shared/${target}/index.ts`, 'export const x = 1\n')
    write('shared/packing/inner.ts', 'export const x = 1\n')
    for (const file of ['renderer/features/night/index.ts', 'electron/web/index.ts', 'test/help.ts'])
      write(file, 'export const x = 1\n')
    plants.forEach((plant, at) =>
      write(plant.file.replace('bad', `bad-${at}`), `import * as x from '${plant.imports}'\nexport const y = x\n`),
    )
    const { summary } = await violations(planted)
    found = new Set(summary.violations.map(({ rule, from }) => `${rule.name} ${from}`))
  })
  afterAll(() => rmSync(planted, { recursive: true, force: true }))

  it.each(plants.map((plant, at) => ({ ...plant, at })))(
    '$file importing $imports breaks $breaks',
    ({ file, breaks, at }) => {
      expect([...found]).toContain(`${breaks} ${file.replace('bad', `bad-${at}`)}`)
    },
  )
})
