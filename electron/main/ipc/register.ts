/** The one loop that gives each operation its channel: check the caller, hand on, answer with a `Result`. */
import type { IpcMain, IpcMainInvokeEvent } from 'electron'
import { OPERATION_NAMES } from '../../../shared/host/index.ts'
import type { Host } from '../../../shared/host/index.ts'
import { fail, problem } from '../../../shared/result/index.ts'
import type { Result } from '../../../shared/result/index.ts'

export type Gate = {
  /** Null for a sender that is not one of our pages. */
  readonly callerOf: (event: IpcMainInvokeEvent) => string | null
  readonly onRefused: (operation: string) => void
  /** A handler threw: a programming error, told without the trip's content. */
  readonly onCrash: (operation: string, cause: unknown) => void
}

export function registerOperations(ipcMain: Pick<IpcMain, 'handle'>, host: Host, gate: Gate): void {
  for (const name of OPERATION_NAMES) {
    ipcMain.handle(`kipstow:${name}`, async (event, input: unknown): Promise<Result<unknown>> => {
      const caller = gate.callerOf(event)
      if (caller === null) {
        gate.onRefused(name)
        return fail(problem('host-sender-refused'))
      }
      try {
        return await host.handle(caller, name, input)
      } catch (cause) {
        gate.onCrash(name, cause)
        return fail(problem('host-crashed', [], { operation: name }))
      }
    })
  }
}
