/** Real folders that refuse: read-only, gone, full. Each a clear problem, nothing lost. */
import { execFileSync, spawnSync } from 'node:child_process'
import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  readdirSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { saveAtomically, sha256Of } from '../../electron/files/atomic-save.ts'
import { NODE_CALLS } from '../../electron/files/calls.ts'
import { createNodeFiles } from '../../electron/files/node-files.ts'
import { bundleProgram } from '../support/files/bundle.ts'

const deep = process.env['KIPSTOW_DEEP'] !== undefined
const OLD = Buffer.from(JSON.stringify({ filler: 'o'.repeat(300_000) }))
const folder = mkdtempSync(join(tmpdir(), 'kipstow-real-'))
const files = createNodeFiles(NODE_CALLS, false, () => 0)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

const isRoot = process.getuid?.() === 0
/** `nobody` on every Linux. */
const NOBODY = 65_534

let program = ''
beforeAll(async () => {
  program = await bundleProgram(join(import.meta.dirname, '../support/files/save-once.ts'))
  chmodSync(join(program, '..'), 0o755)
})

/** Saves as a user without rights: root may write anywhere. */
function saveUnprivileged(path: string): { code: string; path: string } {
  const identity = isRoot ? { uid: NOBODY, gid: NOBODY } : {}
  const run = spawnSync(process.execPath, [program, path], { encoding: 'utf8', ...identity })
  expect(run.status, run.stderr).toBe(0)
  return JSON.parse(run.stdout)
}

function openFolder(name: string): string {
  const path = join(folder, name)
  mkdirSync(path)
  chmodSync(folder, 0o755)
  return path
}

describe('a folder or file that refuses', () => {
  it.skipIf(process.platform === 'win32')(
    'names the file where the folder is read-only, and leaves it as it was',
    () => {
      const place = openFolder('read-only')
      const path = join(place, 'a.trip.json')
      writeFileSync(path, OLD)
      chmodSync(path, 0o666)
      chmodSync(place, 0o555)
      const { code, path: named } = saveUnprivileged(path)
      expect([code, named]).toEqual(['file-not-allowed', path])
      expect(readFileSync(path).equals(OLD)).toBe(true)
      expect(readdirSync(place)).toEqual(['a.trip.json'])
    },
  )

  it.skipIf(process.platform === 'win32')(
    'refuses to replace a write-protected file in a folder that would allow it',
    () => {
      const place = openFolder('protected')
      chmodSync(place, 0o777)
      const path = join(place, 'a.trip.json')
      writeFileSync(path, OLD)
      chmodSync(path, 0o444)
      expect(saveUnprivileged(path).code).toBe('file-read-only')
      expect(readFileSync(path).equals(OLD)).toBe(true)
    },
  )

  it.skipIf(process.platform === 'win32')('says so where permission is lost while the trip is open', () => {
    const place = openFolder('lost')
    const path = join(place, 'a.trip.json')
    writeFileSync(path, OLD)
    chmodSync(place, 0o700)
    expect(saveUnprivileged(path).code).toMatch(/^file-(not-allowed|missing)$/)
    expect(readFileSync(path).equals(OLD)).toBe(true)
  })

  it('says so where the folder has vanished, and makes nothing', async () => {
    const path = join(folder, 'unplugged', 'a.trip.json')
    const saved = await files.save(path, OLD, sha256Of(OLD))
    expect(saved.ok ? '' : saved.problem.code).toBe('trip-changed-on-disk')
    const fresh = await files.save(path, OLD, null)
    expect(fresh.ok ? '' : fresh.problem.code).toBe('file-missing')
    expect(existsSync(join(folder, 'unplugged'))).toBe(false)
  })

  it('refuses a folder, a pipe, a loop of links, a name too long and a file too large, without hanging', async () => {
    const codeOf = async (path: string): Promise<string> => {
      const read = await files.read(path)
      return read.ok ? 'read' : read.problem.code
    }
    expect(await codeOf(folder)).toBe('file-is-folder')
    expect(await codeOf(join(folder, 'x'.repeat(300)))).toBe('file-name-too-long')
    expect(await codeOf(join(folder, 'nothing.json'))).toBe('file-missing')
    const large = join(folder, 'large.json')
    writeFileSync(large, Buffer.alloc(33 * 1024 * 1024))
    expect(await codeOf(large)).toBe('file-too-large')
    if (process.platform !== 'win32') {
      execFileSync('mkfifo', [join(folder, 'pipe')])
      expect(await codeOf(join(folder, 'pipe'))).toBe('file-unreadable')
      symlinkSync(join(folder, 'loop'), join(folder, 'loop'))
      expect(await codeOf(join(folder, 'loop'))).toBe('file-unreadable')
    }
  })
})

const mountPoint = join(folder, 'small-disk')
function mountSmallDisk(): boolean {
  if (process.platform !== 'linux') return false
  mkdirSync(mountPoint, { recursive: true })
  return spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', mountPoint]).status === 0
}
const mounted = mountSmallDisk()
if (!mounted) console.log('NOT RUN: a real full disk; a small tmpfs cannot be mounted here')
afterAll(() => {
  if (mounted) spawnSync('umount', [mountPoint])
})

describe.skipIf(!mounted)('a disk that is really full', () => {
  it('keeps the old document at every size around the limit, leaves no half-made file, and says so', async () => {
    const path = join(mountPoint, 'a.trip.json')
    const sizes = Array.from({ length: deep ? 200 : 50 }, (_, index) => 600_000 + index * (deep ? 5000 : 20_000))
    let full = 0
    for (const size of sizes) {
      writeFileSync(path, OLD)
      const bytes = Buffer.from(JSON.stringify({ filler: 'n'.repeat(size) }))
      const saved = await saveAtomically(NODE_CALLS, { path, bytes, expected: sha256Of(OLD), windows: false })
      const now = readFileSync(path)
      expect(now.equals(saved.ok ? bytes : OLD), `${size}`).toBe(true)
      if (!saved.ok) {
        full += 1
        expect(saved.problem.code).toBe('disk-full')
      }
      expect(readdirSync(mountPoint)).toEqual(['a.trip.json'])
    }
    expect(full).toBeGreaterThan(5)
    expect(full).toBeLessThan(sizes.length)
  })
})
