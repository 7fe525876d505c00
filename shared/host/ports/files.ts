/** Whole files by path: read with a fingerprint, replaced atomically or not at all. */
import type { Result } from '../../result/index.ts'

export type FileRead = { readonly bytes: Uint8Array; readonly sha256: string }

/** One real file, however it was named: links and letter case resolved. */
export type FileIdentity = {
  readonly realPath: string
  readonly name: string
  readonly folder: string
  readonly writable: boolean
}

export type Files = {
  /** Problems `file-missing`, `file-too-large`, `file-unreadable`, `file-is-folder`. */
  readonly read: (path: string) => Promise<Result<FileRead>>
  /**
   * Replaces the file whole and durably. `expected`: SHA-256 that must still stand there, or null where nothing may stand there;
   * problem `trip-changed-on-disk` or `file-exists` otherwise. The old bytes stay on any problem.
   */
  readonly save: (
    path: string,
    bytes: Uint8Array,
    expected: string | null,
  ) => Promise<Result<{ readonly sha256: string }>>
  /** SHA-256 of the file as it is; null where it is missing. */
  readonly fingerprint: (path: string) => Promise<Result<string | null>>
  readonly identify: (path: string) => Promise<Result<FileIdentity>>
  /** The path of a name in a folder that no file has yet: `name`, else `name (2)` and so on. Makes the folder. */
  readonly freePath: (folder: string, name: string) => Promise<Result<string>>
}
