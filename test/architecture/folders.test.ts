/** Each folder that holds code has its line in the contributor's table, and each line its folder. */
import { readdirSync, readFileSync, statSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../..', import.meta.url))
const TOPS = ['shared', 'renderer', 'electron', 'assets'] as const

/** Folders with a file in them, and those that only hold folders. */
function folders(of: string): string[] {
  return readdirSync(join(root, of))
    .filter((name) => statSync(join(root, of, name)).isDirectory())
    .flatMap((name) => [`${of}/${name}/`, ...folders(`${of}/${name}`)])
}

const listed = [...readFileSync(join(root, 'DEVELOPERS.md'), 'utf8').matchAll(/^\| `([a-z/-]+\/)`\s*\|/gm)].flatMap(
  ([, folder]) => folder ?? [],
)

describe('the table of folders', () => {
  it('has a line for each folder of the product, and for each kind of test', () => {
    const found = [
      ...TOPS.flatMap(folders),
      ...readdirSync(join(root, 'test'))
        .filter((name) => statSync(join(root, 'test', name)).isDirectory())
        .map((name) => `test/${name}/`),
    ]
    expect(found.toSorted()).toEqual(listed.toSorted())
  })

  it('names only the agreed folders and files at the top', () => {
    const allowed = new Set([
      'README.md',
      'DEVELOPERS.md',
      'CHANGELOG.md',
      'LICENSE',
      'package.json',
      'package-lock.json',
      'shared',
      'electron',
      'renderer',
      'test',
      'assets',
    ])
    /** What tools insist on: each reads its configuration from the top. */
    const tools = new Set([
      'tsconfig.json',
      'vitest.config.ts',
      'knip.json',
      '.oxlintrc.json',
      '.prettierrc.json',
      '.prettierignore',
      '.dependency-cruiser.cjs',
      '.gitignore',
      '.gitattributes',
      '.npmrc',
      '.ci',
      '.git',
      'node_modules',
      'dist',
    ])
    expect(readdirSync(root).filter((name) => !allowed.has(name) && !tools.has(name))).toEqual([])
  })
})
