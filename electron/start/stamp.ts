/** A fingerprint of everything that the built files depend on: names, sizes and times. */
import { createHash } from 'node:crypto'
import { existsSync, readFileSync, readdirSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'

const SOURCES = ['renderer', 'shared', 'electron', 'assets/fonts', 'package-lock.json', 'tsconfig.json']

export function stampOfSources(root: string): string {
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
export function isBuilt(root: string): boolean {
  const stamp = join(root, 'dist/stamp.txt')
  return existsSync(stamp) && readFileSync(stamp, 'utf8') === stampOfSources(root)
}

/** Remembers what the build that has just ended was made from; `stamp` was taken before it began. */
export const rememberBuild = (root: string, stamp: string): void => writeFileSync(join(root, 'dist/stamp.txt'), stamp)
