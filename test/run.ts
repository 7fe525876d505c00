/** `npm test`: every check there is, one after the other, and one plain closing line that counts them all. */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

type Count = { passed: number; failed: number; skipped: number }
type Check = { name: string; run: () => Count }

const root = join(dirname(fileURLToPath(import.meta.url)), '..')
const deep = process.argv.includes('--deep')
const scratch = mkdtempSync(join(tmpdir(), 'kipstow-test-'))

/** What a check says that this machine cannot run: told again at the end, so that nobody misses it. */
const notRun = new Set<string>()

const CLOSING_LINE = /^(\d+) passed, (\d+) failed(?:, (\d+) skipped)?$/m

/** A package's own command, found in its folder since not every package lets its manifest be imported; run by this Node: no shell, so it works the same on every system. */
function binary(packageName: string, command: string): string {
  const manifest = join(root, 'node_modules', packageName, 'package.json')
  const bin: unknown = JSON.parse(readFileSync(manifest, 'utf8')).bin
  const relative = typeof bin === 'string' ? bin : (bin as Record<string, string>)[command]
  if (relative === undefined) throw new Error(`${packageName} has no command ${command}`)
  return join(dirname(manifest), relative)
}

function node(script: string, args: string[], env: Record<string, string> = {}): { ok: boolean; output: string } {
  const run = spawnSync(process.execPath, [script, ...args], {
    cwd: root,
    encoding: 'utf8',
    env: { ...process.env, ...env },
    maxBuffer: 256 * 1024 * 1024,
  })
  const output = `${run.stdout ?? ''}${run.stderr ?? ''}`
  for (const [line] of output.matchAll(/NOT RUN: [^\n]*/g)) notRun.add(line)
  return { ok: run.status === 0, output }
}

const tsx = (): string => binary('tsx', 'tsx')

function single(run: { ok: boolean; output: string }): Count {
  if (!run.ok) console.log(run.output)
  return { passed: run.ok ? 1 : 0, failed: run.ok ? 0 : 1, skipped: 0 }
}

/** A script of ours that ends in the plain closing line; one that says nothing has failed. */
function counted(run: { ok: boolean; output: string }): Count {
  console.log(run.output.trimEnd())
  const lines = [...run.output.matchAll(new RegExp(CLOSING_LINE, 'gm'))]
  const last = lines.at(-1)
  if (last === undefined) return { passed: 0, failed: 1, skipped: 0 }
  const count = { passed: Number(last[1]), failed: Number(last[2]), skipped: Number(last[3] ?? 0) }
  return run.ok || count.failed > 0 ? count : { ...count, failed: 1 }
}

function vitest(): Count {
  const report = join(scratch, 'vitest.json')
  const args = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`]
  const run = node(binary('vitest', 'vitest'), args, deep ? { KIPSTOW_DEEP: '1' } : {})
  console.log(run.output.trimEnd())
  try {
    const json: unknown = JSON.parse(readFileSync(report, 'utf8'))
    const { numPassedTests, numFailedTests, numPendingTests } = json as Record<string, number>
    // A file that does not load has no test to count; the run's own exit then tells of it.
    const failed = numFailedTests ?? 0
    const passed = numPassedTests ?? 0
    return {
      passed,
      failed: passed === 0 || (!run.ok && failed === 0) ? Math.max(1, failed) : failed,
      skipped: numPendingTests ?? 0,
    }
  } catch (cause) {
    console.log(`vitest left no report: ${String(cause)}`)
    return { passed: 0, failed: 1, skipped: 0 }
  }
}

const CHECKS: Check[] = [
  { name: 'format', run: () => single(node(binary('prettier', 'prettier'), ['--check', '--log-level', 'warn', '.'])) },
  { name: 'lint', run: () => single(node(binary('oxlint', 'oxlint'), [])) },
  { name: 'types', run: () => single(node(tsx(), [join(root, 'test/typecheck.ts')])) },
  { name: 'unused code', run: () => single(node(binary('knip', 'knip'), ['--no-progress'])) },
  { name: 'build', run: () => single(node(tsx(), [join(root, 'electron/package/build.ts')])) },
  { name: 'tests', run: vitest },
  {
    name: 'Electron',
    run: () => counted(node(tsx(), [join(root, 'test/electron/app/main.ts')])),
  },
  {
    name: 'journeys',
    run: () =>
      counted(
        node(tsx(), [
          join(root, 'test/journeys/main.ts'),
          ...(deep
            ? ['--deep']
            : ['car', 'cold-night', 'heater', 'morning', 'named', 'dials', 'the start', 'drawing of']),
        ]),
      ),
  },
]

const total: Count = { passed: 0, failed: 0, skipped: 0 }
const failures: string[] = []
for (const check of CHECKS) {
  const began = performance.now()
  const count = check.run()
  total.passed += count.passed
  total.failed += count.failed
  total.skipped += count.skipped
  if (count.failed > 0) failures.push(check.name)
  const seconds = ((performance.now() - began) / 1000).toFixed(1)
  console.log(
    `${count.failed === 0 ? 'ok  ' : 'FAIL'} ${check.name}: ${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped (${seconds} s)`,
  )
}
rmSync(scratch, { recursive: true, force: true })

for (const line of notRun) console.log(line)
if (total.skipped > 0) console.log(`${total.skipped} did not run on this machine; each is named above with its reason`)
// A continuous integration run may not pass by leaving things out.
const strict = process.env['KIPSTOW_CI'] !== undefined && total.skipped > 0
if (failures.length > 0) console.log(`failed: ${failures.join(', ')}`)
if (strict) console.log('failed: skipped checks are not accepted here')
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`)
process.exitCode = total.failed > 0 || strict ? 1 : 0
