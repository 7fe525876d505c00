/** Names of everything a page may ask of its host. Names only: the preload script imports nothing else. */
export const OPERATION_NAMES = [
  'readHostInfo',
  'nextEvent',
  'listSamples',
  'openSample',
  'recentTrips',
  'forgetRecent',
  'openTrip',
  'adoptTrip',
  'closeTrip',
  'saveTrip',
  'saveTripAs',
  'checkDisk',
  'markUnsaved',
  'keepRecovery',
  'listRecoveries',
  'openRecovery',
  'dropRecovery',
  'listBackups',
  'openBackup',
  'exportSheets',
  'revealFolder',
  'noteCrash',
  'readDiagnostics',
] as const

export type OperationName = (typeof OPERATION_NAMES)[number]
