/** The file-system calls that saving needs, as a value: tests put in one that fails, or that forgets what was not synced. */
import { constants, promises } from 'node:fs'
import { dirname } from 'node:path'
import { systemCode } from './cause.ts'

export type OpenHandle = {
  readonly writeFile: (bytes: Uint8Array) => Promise<void>
  readonly readFile: () => Promise<Uint8Array>
  readonly sync: () => Promise<void>
  readonly close: () => Promise<void>
}

export type FileStat = {
  readonly size: number
  readonly mode: number
  readonly mtimeMs: number
  readonly isFile: boolean
  readonly isDirectory: boolean
}

export type FileCalls = {
  readonly open: (path: string, flags: 'r' | 'wx', mode?: number) => Promise<OpenHandle>
  readonly readFile: (path: string) => Promise<Uint8Array>
  readonly stat: (path: string) => Promise<FileStat>
  readonly rename: (from: string, to: string) => Promise<void>
  readonly link: (from: string, to: string) => Promise<void>
  readonly unlink: (path: string) => Promise<void>
  readonly readdir: (path: string) => Promise<readonly string[]>
  readonly mkdir: (path: string) => Promise<void>
  readonly realpath: (path: string) => Promise<string>
  /** Rejects where this user may not write. */
  readonly mayWrite: (path: string) => Promise<void>
}

export const NODE_CALLS: FileCalls = {
  open: (path, flags, mode) => promises.open(path, flags, mode),
  readFile: (path) => promises.readFile(path),
  stat: async (path) => {
    const stat = await promises.stat(path)
    const { size, mode, mtimeMs } = stat
    return { size, mode, mtimeMs, isFile: stat.isFile(), isDirectory: stat.isDirectory() }
  },
  rename: promises.rename,
  link: promises.link,
  unlink: promises.unlink,
  readdir: (path) => promises.readdir(path),
  mkdir: makeFolder,
  realpath: (path) => promises.realpath(path),
  mayWrite: (path) => promises.access(path, constants.W_OK),
}

/**
 * The folder and those above it. Node's own recursive call never returns where a folder that is there
 * refuses new ones as "not found" (Linux: `/proc`); this one goes up once and comes down once.
 */
async function makeFolder(path: string): Promise<void> {
  try {
    await makeOne(path)
  } catch (cause) {
    if (systemCode(cause) !== 'ENOENT' || dirname(path) === path) throw cause
    await makeFolder(dirname(path))
    await makeOne(path)
  }
}

/** One that is there already is as good as made; a file of that name is not. */
async function makeOne(path: string): Promise<void> {
  try {
    await promises.mkdir(path)
  } catch (cause) {
    const stat = await promises.stat(path).catch(() => null)
    if (stat === null || !stat.isDirectory()) throw cause
  }
}
