/** `npm run bench`: every bench after the other, with its own defaults. */
import { spawnSync } from 'node:child_process'
import { createRequire } from 'node:module'
import { fileURLToPath } from 'node:url'

const tsx = createRequire(import.meta.url).resolve('tsx/cli')
for (const name of ['packing', 'climate', 'plan']) {
  console.log(`${name}:`)
  const program = fileURLToPath(new URL(`${name}/main.ts`, import.meta.url))
  const run = spawnSync(process.execPath, [tsx, program, ...process.argv.slice(2)], { stdio: 'inherit' })
  if (run.status !== 0) process.exitCode = 1
}
