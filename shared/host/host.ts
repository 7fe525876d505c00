/** The one way in: checks the operation's name, parses the input, calls the handler. Every host registers this. */
import { fail, problem } from '../result/index.ts'
import type { Result } from '../result/index.ts'
import { CONTRACT } from './contract.ts'
import { createPathTokens, createTurns } from './handlers/context.ts'
import type { Context, Handlers } from './handlers/context.ts'
import { ANY_CALLER, infoHandlers } from './handlers/info.ts'
import { openHandlers, releaseCaller } from './handlers/open.ts'
import { recoveryHandlers } from './handlers/recovery.ts'
import { saveHandlers } from './handlers/save.ts'
import { sheetHandlers } from './handlers/sheets.ts'
import { OPERATION_NAMES } from './operations.ts'
import type { OperationName } from './operations.ts'
import type { Caller, HostPorts } from './ports/index.ts'

export type Host = {
  readonly handle: (caller: Caller, name: string, input: unknown) => Promise<Result<unknown>>
  /** A window is gone: its locks are given up, its recovery copies stay. */
  readonly release: (caller: Caller) => Promise<void>
  /** A token for a path that the host itself was given: command line, double click, second start. */
  readonly offerPath: (path: string) => string
  /** The path that a window is opened for; its page asks with `readHostInfo`. */
  readonly startAt: (caller: Caller, path: string) => void
  /** The window that has this file open. */
  readonly whoHas: (path: string) => Promise<Caller | null>
}

/** `startPath`: the trip named at the start, already absolute; null for none. */
export function createHost(ports: HostPorts, startPath: string | null): Host {
  const paths = createPathTokens(ports.ids.next)
  const context: Context = {
    ports,
    paths,
    open: new Map(),
    startPaths: new Map(startPath === null ? [] : [[ANY_CALLER, startPath]]),
    inTurn: createTurns(),
  }
  const handlers: Handlers = {
    ...infoHandlers(context),
    ...openHandlers(context),
    ...saveHandlers(context),
    ...recoveryHandlers(context),
    ...sheetHandlers(context),
  }
  return {
    handle: (caller, name, input) => handle(handlers, caller, name, input),
    release: async (caller) => {
      context.startPaths.delete(caller)
      await releaseCaller(context, caller)
    },
    startAt: (caller, path) => context.startPaths.set(caller, path),
    whoHas: async (path) => {
      const identity = await ports.files.identify(path)
      if (!identity.ok) return null
      return [...context.open.values()].find((open) => open.path === identity.value.realPath)?.caller ?? null
    },
    offerPath: paths.tokenOf,
  }
}

const isOperationName = (name: string): name is OperationName => OPERATION_NAMES.some((known) => known === name)

async function handle(handlers: Handlers, caller: Caller, name: string, input: unknown): Promise<Result<unknown>> {
  if (!isOperationName(name)) return fail(problem('host-operation-unknown'))
  const parsed = CONTRACT[name].input.safeParse(input)
  if (!parsed.success) {
    const issue = parsed.error.issues[0]
    const where = issue?.path.map((part) => (typeof part === 'number' ? part : String(part))) ?? []
    return fail(problem('host-input-refused', where, { operation: name }))
  }
  // The name chose both the schema that has just passed and the handler; the compiler cannot pair them.
  const handler = handlers[name] as (caller: Caller, input: unknown) => Promise<Result<unknown>>
  return handler(caller, parsed.data)
}
