/** The contract: for each operation the shape of what a page sends and of what it gets. */
import type { Result } from '../result/index.ts'
import type { OperationName } from './operations.ts'
import * as info from './schema/info.ts'
import * as recovery from './schema/recovery.ts'
import * as sheets from './schema/sheets.ts'
import * as trips from './schema/trips.ts'
import type { z } from './zod.ts'

export const CONTRACT = {
  readHostInfo: info.readHostInfo,
  nextEvent: info.nextEvent,
  listSamples: trips.listSamples,
  openSample: trips.openSample,
  recentTrips: trips.recentTrips,
  forgetRecent: trips.forgetRecent,
  openTrip: trips.openTrip,
  adoptTrip: trips.adoptTrip,
  closeTrip: trips.closeTrip,
  saveTrip: trips.saveTrip,
  saveTripAs: trips.saveTripAs,
  checkDisk: trips.checkDisk,
  markUnsaved: info.markUnsaved,
  keepRecovery: recovery.keepRecovery,
  listRecoveries: recovery.listRecoveries,
  openRecovery: recovery.openRecovery,
  dropRecovery: recovery.dropRecovery,
  listBackups: trips.listBackups,
  openBackup: trips.openBackup,
  exportSheets: sheets.exportSheets,
  revealFolder: info.revealFolder,
  noteCrash: info.noteCrash,
  readDiagnostics: info.readDiagnostics,
} as const satisfies Record<OperationName, { readonly input: z.ZodType; readonly output: z.ZodType }>

type Contract = typeof CONTRACT
export type OperationInput<N extends OperationName> = z.infer<Contract[N]['input']>
export type OperationOutput<N extends OperationName> = z.infer<Contract[N]['output']>

/** What a page sees of its host, whichever it is. The renderer's one client implements it. */
export type HostClient = {
  readonly call: <N extends OperationName>(name: N, input: OperationInput<N>) => Promise<Result<OperationOutput<N>>>
}

export type HostEvent = OperationOutput<'nextEvent'>
export type HostInfo = OperationOutput<'readHostInfo'>
export type OpenFile = OperationOutput<'adoptTrip'>
export type OpenedTrip = OperationOutput<'openSample'>
export type MenuCommand = Extract<HostEvent, { readonly kind: 'menu' }>['command']
