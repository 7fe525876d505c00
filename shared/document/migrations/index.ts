/** Every migration in order, and the walk from an older version to the current one. */
import { invariant } from '../../result/index.ts'
import { addAirAndPaper } from './0001-add-air-and-paper.ts'
import type { JsonRecord } from '../parse/json-value.ts'
import type { Migration } from './types.ts'

export type { Migration } from './types.ts'

export const MIGRATIONS: readonly Migration[] = [addAirAndPaper]

/** Takes content of version `from` to version `to`; content of version `to` comes back as it is. */
export function migrateTrip(content: JsonRecord, from: number, to: number): JsonRecord {
  let migrated = content
  for (let version = from + 1; version <= to; version++) {
    const step = MIGRATIONS.find((migration) => migration.to === version)
    invariant(step !== undefined, `no migration to version ${String(version)}`)
    migrated = { ...step.migrate(migrated), version }
  }
  return migrated
}
