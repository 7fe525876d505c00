/** `npm run build`: the page, the hosts and the preload script into `dist/`. */
import { spawn } from 'node:child_process'
import { createRequire } from 'node:module'
import { rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = join(dirname(fileURLToPath(import.meta.url)), '../..')
const vite = join(dirname(createRequire(import.meta.url).resolve('vite/package.json')), 'bin/vite.js')
const CONFIGS = [
  'renderer/vite.config.ts',
  'electron/package/vite.config.ts',
  'electron/package/vite.preload.config.ts',
]

function build(config: string): Promise<string | null> {
  return new Promise((resolve) => {
    const args = [vite, 'build', '--config', join(root, config), '--logLevel', 'error']
    const child = spawn(process.execPath, args, { cwd: root, stdio: 'inherit' })
    child.once('error', () => resolve(config))
    child.once('exit', (code) => resolve(code === 0 ? null : config))
  })
}

// What `npm start` remembers of its last whole build no longer holds.
rmSync(join(root, 'dist/stamp.txt'), { force: true })
const failed = (await Promise.all(CONFIGS.map(build))).filter((config) => config !== null)
if (failed.length > 0) {
  console.error(`Not built: ${failed.join(', ')}`)
  process.exitCode = 1
}
