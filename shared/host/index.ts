/** The host contract's door: names, shapes, handlers over ports. A page imports types and names; a host imports handlers. */
export { OPERATION_NAMES } from './operations.ts'
export type { OperationName } from './operations.ts'
export { CONTRACT } from './contract.ts'
export type {
  HostClient,
  HostEvent,
  HostInfo,
  MenuCommand,
  OpenedTrip,
  OpenFile,
  OperationInput,
  OperationOutput,
} from './contract.ts'
export { SHEET_NAMES } from './schema/sheets.ts'
export type { SheetName } from './schema/sheets.ts'
export { CALL_PATH, CODE_IN_FRAGMENT, EXCHANGE_PATH, TOKEN_HEADER, TOKEN_STORAGE_KEY } from './loopback.ts'
export { createHost } from './host.ts'
export type { Host } from './host.ts'
export type {
  BackupEntry,
  Backups,
  Caller,
  Clock,
  Desktop,
  Dialogs,
  Events,
  FileIdentity,
  FileRead,
  Files,
  FolderKey,
  HostFacts,
  HostPorts,
  Ids,
  Journal,
  JournalEntry,
  Lock,
  Locks,
  Log,
  Recent,
  Recents,
  Samples,
  SheetFile,
  Sheets,
} from './ports/index.ts'
export { CONTENT_SECURITY_POLICY, PAGE_HEADERS } from './page-policy.ts'
export { plainFileStem, tripFileName } from './file-name.ts'
export { ENDLESS_ITERATIONS, jsonSchemas, planTrip } from './plan-trip.ts'
export type { PlannedTrip, TripBudget } from './plan-trip.ts'
export type { Trip } from '../document/index.ts'
export { toICalendar } from '../plan/index.ts'
export type { CalendarEntry, Plan } from '../plan/index.ts'
