/**
 * A file system in memory that forgets what was not synced, to cut the power on.
 * Data of a file lasts once its handle was synced; names last once their folder was synced.
 */
import type { FileCalls, FileStat } from '../../../electron/files/calls.ts'

/** What becomes of unsynced bytes and of unsynced names when the power goes. */
export type Outage = { readonly data: 'kept' | 'lost' | 'half'; readonly names: 'kept' | 'lost' }

type Inode = { current: Uint8Array; durable: Uint8Array | null; mode: number; mtimeMs: number; readOnly: boolean }
type Folder = { current: Map<string, Inode>; durable: Map<string, Inode> }

export class SystemError extends Error {
  readonly code: string
  constructor(code: string) {
    super(`${code}: injected`)
    this.code = code
  }
}

export class MemoryDisk {
  private readonly folders = new Map<string, Folder>()
  private readonly links = new Map<string, string>()

  addFolder(path: string): void {
    if (!this.folders.has(path)) this.folders.set(path, { current: new Map(), durable: new Map() })
  }

  /** A name that stands for another path, as a symbolic link does. */
  addLink(from: string, to: string): void {
    this.links.set(from, to)
  }

  put(path: string, bytes: Uint8Array, readOnly = false): void {
    const [folder, name] = this.split(path)
    const inode = { current: bytes, durable: bytes, mode: 0o644, mtimeMs: 0, readOnly }
    folder.current.set(name, inode)
    folder.durable.set(name, inode)
  }

  get(path: string): Uint8Array | null {
    const [folder, name] = this.split(path)
    return folder.current.get(name)?.current ?? null
  }

  names(path: string): readonly string[] {
    return [...(this.folders.get(path)?.current.keys() ?? [])]
  }

  /** The same disk after the power came back. */
  afterOutage(outage: Outage): MemoryDisk {
    const disk = new MemoryDisk()
    for (const [path, folder] of this.folders) {
      disk.addFolder(path)
      for (const [name, inode] of outage.names === 'kept' ? folder.current : folder.durable) {
        disk.put(`${path}/${name}`, remains(inode, outage.data))
      }
    }
    return disk
  }

  calls(): FileCalls {
    return {
      open: (path, flags, mode) => this.open(path, flags, mode),
      readFile: async (path) => this.inode(path).current,
      stat: async (path) => this.stat(path),
      rename: async (from, to) => {
        const [source, sourceName] = this.split(from)
        const [target, targetName] = this.split(to)
        target.current.set(targetName, this.inode(from))
        source.current.delete(sourceName)
      },
      link: async (from, to) => {
        const [target, name] = this.split(to)
        if (target.current.has(name)) throw new SystemError('EEXIST')
        target.current.set(name, this.inode(from))
      },
      unlink: async (path) => {
        this.inode(path)
        const [folder, name] = this.split(path)
        folder.current.delete(name)
      },
      readdir: async (path) => {
        if (!this.folders.has(path)) throw new SystemError('ENOENT')
        return this.names(path)
      },
      mkdir: async (path) => this.addFolder(path),
      realpath: async (path) => {
        const real = this.links.get(path) ?? path
        this.stat(real)
        return real
      },
      mayWrite: async (path) => {
        if (this.folders.has(path)) return
        if (this.inode(path).readOnly) throw new SystemError('EACCES')
      },
    }
  }

  private async open(path: string, flags: 'r' | 'wx', mode?: number): ReturnType<FileCalls['open']> {
    const folder = this.folders.get(path)
    if (folder !== undefined) return folderHandle(folder)
    if (flags === 'wx') {
      const [parent, name] = this.split(path)
      if (parent.current.has(name)) throw new SystemError('EEXIST')
      parent.current.set(name, {
        current: new Uint8Array(),
        durable: null,
        mode: mode ?? 0o644,
        mtimeMs: 0,
        readOnly: false,
      })
    }
    const inode = this.inode(path)
    return {
      writeFile: async (bytes) => {
        inode.current = bytes.slice()
      },
      readFile: async () => inode.current,
      sync: async () => {
        inode.durable = inode.current
      },
      close: async () => undefined,
    }
  }

  private stat(path: string): FileStat {
    const isDirectory = this.folders.has(path)
    if (isDirectory) return { size: 0, mode: 0o755, mtimeMs: 0, isFile: false, isDirectory }
    const { current, mode, mtimeMs } = this.inode(path)
    return { size: current.length, mode, mtimeMs, isFile: true, isDirectory }
  }

  private inode(path: string): Inode {
    const [folder, name] = this.split(path)
    const inode = folder.current.get(name)
    if (inode === undefined) throw new SystemError('ENOENT')
    return inode
  }

  private split(path: string): [Folder, string] {
    const cut = path.lastIndexOf('/')
    const folder = this.folders.get(path.slice(0, cut))
    if (folder === undefined) throw new SystemError('ENOENT')
    return [folder, path.slice(cut + 1)]
  }
}

function folderHandle(folder: Folder): Awaited<ReturnType<FileCalls['open']>> {
  return {
    writeFile: async () => {
      throw new SystemError('EISDIR')
    },
    readFile: async () => {
      throw new SystemError('EISDIR')
    },
    sync: async () => {
      folder.durable = new Map(folder.current)
    },
    close: async () => undefined,
  }
}

function remains({ current, durable }: Inode, data: Outage['data']): Uint8Array {
  if (data === 'kept') return current
  if (durable !== null && Buffer.compare(durable, current) === 0) return current
  if (data === 'lost') return durable ?? new Uint8Array()
  return current.slice(0, Math.floor(current.length / 2))
}
