/** Turns what the operating system answers into problems that a traveller understands; anything unnamed is thrown on. */
import { fail, ok, problem } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'

const CODES: Readonly<Record<string, string>> = {
  ENOENT: 'file-missing',
  ENOTDIR: 'file-missing',
  EACCES: 'file-not-allowed',
  EPERM: 'file-not-allowed',
  EROFS: 'file-read-only',
  ENOSPC: 'disk-full',
  EDQUOT: 'disk-full',
  EFBIG: 'disk-full',
  EISDIR: 'file-is-folder',
  EEXIST: 'file-exists',
  ENAMETOOLONG: 'file-name-too-long',
  ELOOP: 'file-unreadable',
  EMFILE: 'too-many-files-open',
  ENFILE: 'too-many-files-open',
  EIO: 'device-failed',
  ENXIO: 'device-failed',
  ENODEV: 'device-failed',
  ESTALE: 'device-failed',
  EBUSY: 'file-busy',
  ETXTBSY: 'file-busy',
}

/** The system's own code of a failed call; null for anything that is not one. */
export function systemCode(cause: unknown): string | null {
  if (typeof cause !== 'object' || cause === null || !('code' in cause)) return null
  return typeof cause.code === 'string' ? cause.code : null
}

/** Node's own argument errors (`ERR_...`) are programming errors. */
const isSystemError = (code: string): boolean => !code.startsWith('ERR_') || code === 'ERR_FS_FILE_TOO_LARGE'

/** Runs calls; a refusal of the system becomes a problem with the path, a programming error goes on upwards. */
export async function attempt<T>(path: string, job: () => Promise<T>): Promise<Result<T>> {
  try {
    return ok(await job())
  } catch (cause) {
    const code = systemCode(cause)
    if (code === null || !isSystemError(code)) throw cause
    return fail(problem(CODES[code] ?? 'file-failed', [], { path, system: code }))
  }
}
