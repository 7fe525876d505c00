/** Where this system keeps an application's own data, and where the user's trips go. */
import { existsSync } from 'node:fs'
import { homedir } from 'node:os'
import { join } from 'node:path'

export type AppFolders = {
  readonly data: string
  readonly backups: string
  readonly journal: string
  readonly locks: string
  readonly log: string
  readonly trips: string
  readonly sheets: string
}

type Environment = Readonly<Record<string, string | undefined>>

/** `KIPSTOW_DATA` and `KIPSTOW_TRIPS` name other folders, for tests and for people who want them elsewhere. */
export function appFolders(platform: string, environment: Environment, home: string = homedir()): AppFolders {
  const data = environment['KIPSTOW_DATA'] ?? dataFolder(platform, environment, home)
  const documents = join(home, 'Documents')
  const trips = environment['KIPSTOW_TRIPS'] ?? join(existsSync(documents) ? documents : home, 'Kipstow')
  return {
    data,
    backups: join(data, 'backups'),
    journal: join(data, 'journal'),
    locks: join(data, 'locks'),
    log: join(data, 'log'),
    trips,
    sheets: join(trips, 'Sheets'),
  }
}

function dataFolder(platform: string, environment: Environment, home: string): string {
  switch (platform) {
    case 'darwin':
      return join(home, 'Library', 'Application Support', 'Kipstow')
    case 'win32':
      return join(environment['APPDATA'] ?? join(home, 'AppData', 'Roaming'), 'Kipstow')
    default:
      return join(environment['XDG_DATA_HOME'] ?? join(home, '.local', 'share'), 'kipstow')
  }
}
