/** The one way in: checks the operation's name, parses the input, calls the handler. Every host registers this. */
import { fail, problem } from '../result/index.ts'
import type { Result } from '../result/index.ts'
import { CONTRACT } from './contract.ts'
import { createPathTokens, createTurns } from './handlers/context.ts'
import type { Context, Handlers } from './handlers/context.ts'
import { infoHandlers } from './handlers/info.ts'
import { forget, openHandlers } from './handlers/open.ts'
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
}

/** `startPath`: the trip named at the start, already absolute; null for none. */
export function createHost(ports: HostPorts, startPath: string | null): Host {
  const paths = createPathTokens(ports.ids.next)
  const context: Context = {
    ports,
    paths,
    open: new Map(),
    startToken: startPath === null ? null : paths.tokenOf(startPath),
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
      for (const open of context.open.values()) if (open.caller === caller) await forget(context, open)
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
