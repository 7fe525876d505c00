/** A fingerprint of everything that the built files depend on: names, sizes and times. */
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const SOURCES = ['renderer', 'shared', 'electron', 'assets/fonts', 'package-lock.json', 'tsconfig.json']

function stampOfSources(root: string): string {
  const hash = createHash('sha256')
  for (const source of SOURCES) add(hash, join(root, source), source)
  return hash.digest('hex')
}

function add(hash: ReturnType<typeof createHash>, path: string, name: string): void {
  if (!existsSync(path)) return
  const stat = statSync(path)
  if (!stat.isDirectory()) {
    hash.update(`${name} ${stat.size} ${stat.mtimeMs}\n`)
    return
  }
  for (const entry of readdirSync(path).sort()) add(hash, join(path, entry), `${name}/${entry}`)
}

/** True where nothing has changed since the last build. */
function isBuilt(root: string): boolean {
  const stamp = join(root, 'dist/stamp.txt')
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === stampOfSources(root)
}

/** True where everything is built. The stamp is taken before the build, so that what changes meanwhile is built next time. */
export function buildIfStale(root: string, build: () => boolean): boolean {
  if (isBuilt(root)) return true
  const stamp = stampOfSources(root)
  if (!build()) return false
  writeFileSync(join(root, 'dist/stamp.txt'), stamp)
  return true
}
