/** File calls that fail at the chosen one: once, or from there on for ever. */
import type { FileCalls, OpenHandle } from '../../../electron/files/calls.ts'
import { SystemError } from './memory-calls.ts'

export type Failure = { readonly atCall: number; readonly code: string; readonly forEver: boolean }

export class PowerCut extends Error {}

export type FailingCalls = { readonly calls: FileCalls; readonly count: () => number }

/** `failure` null: only counts. A failing write leaves half of its bytes behind, as a full disk does. */
export function failingCalls(inner: FileCalls, failure: Failure | null): FailingCalls {
  let count = 0
  const step = async <T>(job: () => Promise<T>, halfway?: () => Promise<unknown>): Promise<T> => {
    count += 1
    const fails = failure !== null && (count === failure.atCall || (failure.forEver && count > failure.atCall))
    if (!fails) return job()
    await halfway?.()
    if (failure.code === 'POWER') throw new PowerCut('the power went')
    throw new SystemError(failure.code)
  }
  const handle = (opened: OpenHandle): OpenHandle => ({
    writeFile: (bytes) =>
      step(
        () => opened.writeFile(bytes),
        () => opened.writeFile(bytes.slice(0, Math.floor(bytes.length / 2))),
      ),
    readFile: () => step(() => opened.readFile()),
    sync: () => step(() => opened.sync()),
    close: () => step(() => opened.close()),
  })
  return {
    count: () => count,
    calls: {
      open: (path, flags, mode) => step(async () => handle(await inner.open(path, flags, mode))),
      readFile: (path) => step(() => inner.readFile(path)),
      stat: (path) => step(() => inner.stat(path)),
      rename: (from, to) => step(() => inner.rename(from, to)),
      link: (from, to) => step(() => inner.link(from, to)),
      unlink: (path) => step(() => inner.unlink(path)),
      readdir: (path) => step(() => inner.readdir(path)),
      mkdir: (path) => step(() => inner.mkdir(path)),
      realpath: (path) => step(() => inner.realpath(path)),
      mayWrite: (path) => step(() => inner.mayWrite(path)),
    },
  }
}
