/** What every handler works on: the ports, the trips that windows hold open, and the tokens that stand for paths. */
import type { Trip } from '../../document/index.ts'
import { parseTrip, serializeTrip } from '../../document/index.ts'
import { fail, invariant, ok, problem } from '../../result/index.ts'
import type { Result } from '../../result/index.ts'
import type { OpenFile, OperationInput, OperationOutput } from '../contract.ts'
import type { OperationName } from '../operations.ts'
import type { Caller, HostPorts, Lock } from '../ports/index.ts'

export type Handler<N extends OperationName> = (
  caller: Caller,
  input: OperationInput<N>,
) => Promise<Result<OperationOutput<N>>>

export type Handlers = { readonly [N in OperationName]: Handler<N> }

/** One trip in one window. `path` is null while it has never been saved. */
export type OpenTrip = {
  readonly token: string
  readonly caller: Caller
  name: string
  folder: string | null
  path: string | null
  writable: boolean
  /** What stood in the file when it was last read or saved. */
  sha256: string | null
  lock: Lock | null
  /** The recovery copy's id, kept over a crash. */
  journalId: string
}

export type Context = {
  readonly ports: HostPorts
  readonly open: Map<string, OpenTrip>
  readonly paths: PathTokens
  /** Path that each window was opened for; the empty caller's is everyone's. */
  readonly startPaths: Map<Caller, string>
  /** Runs the jobs of one key one after the other. */
  readonly inTurn: <T>(key: string, job: () => Promise<T>) => Promise<T>
}

export type PathTokens = {
  readonly tokenOf: (path: string) => string
  readonly pathOf: (token: string) => string | null
}

export function createPathTokens(nextId: () => string): PathTokens {
  const byPath = new Map<string, string>()
  const byToken = new Map<string, string>()
  return {
    tokenOf: (path) => {
      const known = byPath.get(path)
      if (known !== undefined) return known
      const token = nextId()
      byPath.set(path, token)
      byToken.set(token, path)
      return token
    },
    pathOf: (token) => byToken.get(token) ?? null,
  }
}

/** Queues by key; a job that fails does not stop the next one. */
export function createTurns(): Context['inTurn'] {
  const last = new Map<string, Promise<unknown>>()
  return (key, job) => {
    const before = last.get(key) ?? Promise.resolve()
    const run = before.then(job, job)
    const settled = run.then(
      () => undefined,
      () => undefined,
    )
    last.set(key, settled)
    void settled.then(() => (last.get(key) === settled ? last.delete(key) : false))
    return run
  }
}

/** A window may use only the tokens it was given. */
export function findOpen(context: Context, caller: Caller, token: string): Result<OpenTrip> {
  const open = context.open.get(token)
  if (open === undefined || open.caller !== caller) return fail(problem('trip-token-unknown'))
  return ok(open)
}

export const describeOpen = (open: OpenTrip): OpenFile => ({
  token: open.token,
  name: open.name,
  folder: open.folder,
  writable: open.writable,
})

export function addOpen(context: Context, open: Omit<OpenTrip, 'token' | 'journalId'>, journalId?: string): OpenTrip {
  const token = context.ports.ids.next()
  const added: OpenTrip = { ...open, token, journalId: journalId ?? context.ports.ids.next() }
  context.open.set(token, added)
  return added
}

/** A trip of this window without a file. */
export const addUntitled = (context: Context, caller: Caller, name: string, journalId?: string): OpenTrip =>
  addOpen(context, { caller, name, folder: null, path: null, writable: true, sha256: null, lock: null }, journalId)

/** A trip as the page will edit it; the first problem of a file that is none. */
export function readTrip(bytes: Uint8Array): Result<Trip> {
  const parsed = parseTrip(bytes)
  if (parsed.ok) return parsed
  const [first] = parsed.problem
  invariant(first !== undefined, 'a refused trip says why')
  return fail(first)
}

export const writeTrip = (context: Context, trip: Trip): Uint8Array => context.ports.encode(serializeTrip(trip))
