/** `npm start [-- TRIP.json]`: hands the real parts to the launch. */
import { fork, spawn, spawnSync } from 'node:child_process'
import { mkdirSync } from 'node:fs'
import { createRequire } from 'node:module'
import { performance } from 'node:perf_hooks'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { fetchElectron, findElectron, realSurroundings } from './find-electron.ts'
import { launch } from './launch.ts'
import { buildIfStale } from './stamp.ts'
import { tripAmongArguments } from './trip-argument.ts'

const root = join(dirname(fileURLToPath(import.meta.url)), '../..')
const say = (line: string): void => console.log(line)

function build(): boolean {
  say('Building …')
  const tsx = createRequire(import.meta.url).resolve('tsx/cli')
  const script = join(root, 'electron/package/build.ts')
  return spawnSync(process.execPath, [tsx, script], { cwd: root, stdio: 'inherit' }).status === 0
}

await launch({
  root,
  trip: tripAmongArguments(process.argv.slice(2), process.env['INIT_CWD'] ?? process.cwd()),
  surroundings: realSurroundings(),
  say,
  build: () => buildIfStale(root, build),
  findElectron: () => findElectron(),
  fetchElectron: (report) => fetchElectron(report),
  open: (program, args, output) => spawn(program, [...args], { stdio: output }),
  serve: (script, args) => fork(script, [...args], { stdio: 'inherit' }),
  makeFolder: (path) => mkdirSync(path, { recursive: true }),
  nowMs: () => performance.now(),
  exit: (code) => process.exit(code),
  onSignal: (signal, heard) => process.on(signal, heard),
  onEnter: process.stdin.isTTY ? (pressed) => process.stdin.on('data', pressed) : null,
})
