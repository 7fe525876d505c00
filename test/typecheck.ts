/** Compiles each layer with the library it may see: `shared` knows no DOM and no Node, the window no Node, the hosts no DOM. */
import { spawnSync } from 'node:child_process'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(dirname(fileURLToPath(import.meta.url)), '..')
const require = createRequire(import.meta.url)
const compilers = {
  tsc: join(dirname(require.resolve('typescript/package.json')), 'bin/tsc'),
  vueTsc: join(dirname(require.resolve('vue-tsc/package.json')), 'bin/vue-tsc.js'),
}

const LAYERS = [
  { folder: 'shared', compiler: compilers.tsc },
  { folder: 'renderer', compiler: compilers.vueTsc },
  { folder: 'electron', compiler: compilers.tsc },
  { folder: 'electron/preload', compiler: compilers.tsc },
  { folder: 'test', compiler: compilers.vueTsc },
]

let failed = 0
for (const { folder, compiler } of LAYERS) {
  const run = spawnSync(process.execPath, [compiler, '-p', join(root, folder)], { cwd: root, encoding: 'utf8' })
  if (run.status !== 0) {
    failed += 1
    console.log(`${folder}:\n${run.stdout}${run.stderr}`)
  }
}
console.log(`types: ${LAYERS.length - failed} of ${LAYERS.length} layers compile`)
process.exitCode = failed === 0 ? 0 : 1
