/** The bridge: each operation's name becomes a function of one argument. No logic, and nothing of Electron goes through. */
import { contextBridge, ipcRenderer } from 'electron'
import { OPERATION_NAMES } from '../../shared/host/operations.ts'

contextBridge.exposeInMainWorld(
  'planner',
  Object.fromEntries(
    OPERATION_NAMES.map((name) => [
      name,
      (input: unknown): Promise<unknown> => ipcRenderer.invoke(`kipstow:${name}`, input),
    ]),
  ),
)
