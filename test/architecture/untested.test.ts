/** What of the hosts no test runs, counted in lines: few, thin, and the number that DEVELOPERS.md states. */
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative } from 'node:path'
import { describe, expect, it } from 'vitest'

const root = join(import.meta.dirname, '../..')
/** Most that may be left to reading. */
const MOST_LINES = 150

const filesBelow = (folder: string): readonly string[] =>
  readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name).replaceAll('\\', '/'))
    .filter((name) => name.endsWith('.ts'))

const textOf = (file: string): string => readFileSync(join(root, file), 'utf8')

/** Files that this one imports as values, or starts as a program by its path. */
function reachedFrom(file: string): readonly string[] {
  const text = textOf(file)
  const imports = [...text.matchAll(/^(?:import|export)(?! type)[^'"]*? from '(\.[^']+)'|import\('(\.[^']+)'\)/gms)]
  // A test joins the path it starts; the build lists its configurations.
  const path = file.startsWith('test/') ? /join\(\w+, '(electron\/[\w/-]+\.ts)'\)/g : /'(electron\/[\w/.-]+\.ts)'/g
  const started = [...text.matchAll(path)]
  return [
    ...imports.map(([, fixed, dynamic]) => relative(root, join(root, dirname(file), fixed ?? dynamic ?? ''))),
    ...started.map(([, named]) => named ?? ''),
  ].map((path) => path.replaceAll('\\', '/'))
}

function reached(): ReadonlySet<string> {
  const seen = new Set<string>()
  const queue = [...filesBelow('test')]
  for (let file = queue.pop(); file !== undefined; file = queue.pop()) {
    // Some tests name files that are not there, to see them refused.
    if (seen.has(file) || !existsSync(join(root, file))) continue
    seen.add(file)
    if (/^(test|shared|electron)\/.*\.ts$/.test(file)) queue.push(...reachedFrom(file))
  }
  return seen
}

/** Lines that are neither empty nor only a comment. */
const linesOf = (file: string): number =>
  textOf(file)
    .split('\n')
    .filter((line) => line.trim() !== '' && !/^\s*(?:\/\/|\/?\*)/.test(line)).length

const typesOnly = (file: string): boolean =>
  !/^(?:export )?(?:const|let|function|class|await|default)/m.test(textOf(file))

describe('the hosts’ code that no test runs', () => {
  const tested = reached()
  const untested = filesBelow('electron').filter((file) => !tested.has(file) && !typesOnly(file))
  const counted = untested.map((file) => ({ file, lines: linesOf(file) }))

  it('is what DEVELOPERS.md lists, line by line', () => {
    const listed = [...textOf('DEVELOPERS.md').matchAll(/^\| `(electron\/[\w/.-]+)` +\| +(\d+) +\|/gm)]
    expect(listed.map(([, file, lines]) => ({ file, lines: Number(lines) }))).toEqual(counted)
  })

  it('is under 150 lines', () => {
    const lines = counted.reduce((sum, each) => sum + each.lines, 0)
    console.log(`untested: ${lines} lines in ${counted.map(({ file }) => file).join(', ')}`)
    expect(tested.size).toBeGreaterThan(200)
    expect(lines).toBeGreaterThan(0)
    expect(lines).toBeLessThan(MOST_LINES)
    expect(textOf('DEVELOPERS.md')).toContain(`${lines} lines`)
  })
})
