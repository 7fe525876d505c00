/** Opening, saving and closing trips. */
import { z } from '../zod.ts'
import {
  fileNameSchema,
  nothingSchema,
  openFileSchema,
  openedSchema,
  sha256Schema,
  tokenSchema,
  utcSchema,
  tripSchema,
} from './values.ts'

export const listSamples = {
  input: nothingSchema,
  output: z.strictObject({
    samples: z.array(z.strictObject({ id: z.string(), title: z.string(), units: z.enum(['metric', 'us']) })).readonly(),
  }),
}

/** Opens a copy of a sample, to be saved under a name of its own. */
export const openSample = {
  input: z.strictObject({ id: z.string().max(80) }),
  output: openedSchema,
}

export const recentTrips = {
  input: nothingSchema,
  output: z.strictObject({
    trips: z
      .array(
        z.strictObject({
          token: tokenSchema,
          name: z.string(),
          folder: z.string(),
          openedAtUtc: utcSchema,
          missing: z.boolean(),
        }),
      )
      .readonly(),
  }),
}

export const forgetRecent = { input: z.strictObject({ token: tokenSchema }), output: nothingSchema }

/**
 * Opens a trip: by dialog (Electron), by a token from the recent list, the start or an event, again from disk (`theirs`),
 * or from bytes that a file input or a drop gave the page (a copy without a path).
 * Null: the user closed the dialog.
 */
export const openTrip = {
  input: z.strictObject({
    from: z.discriminatedUnion('kind', [
      z.strictObject({ kind: z.literal('dialog') }),
      z.strictObject({ kind: z.literal('token'), token: tokenSchema }),
      z.strictObject({ kind: z.literal('theirs'), token: tokenSchema }),
      z.strictObject({ kind: z.literal('bytes'), name: fileNameSchema, base64: z.string().max(46_000_000) }),
    ]),
    /** Open without the lock, as an unsaved copy: for a trip that another window or program holds. */
    asCopy: z.boolean(),
  }),
  output: openedSchema.nullable(),
}

/** Gives a trip made in the page (a new one) a file token, so that it can be kept and saved. */
export const adoptTrip = {
  input: z.strictObject({ name: fileNameSchema, trip: tripSchema }),
  output: openFileSchema,
}

/** Gives up the token, its lock and its recovery copy. */
export const closeTrip = { input: z.strictObject({ token: tokenSchema }), output: nothingSchema }

/**
 * Saves to where the trip was opened. Problem `trip-changed-on-disk` (or `trip-file-missing`) where the file is no longer what was read: then ask the user
 * (keep mine: `replacing` = the `sha256` of `checkDisk`, or 'missing' where it is gone; take theirs: `openTrip {from: {kind: 'theirs'}}`; or `saveTripAs`).
 * Problem `trip-has-no-file` where it has never been saved: use `saveTripAs`.
 */
export const saveTrip = {
  input: z.strictObject({
    token: tokenSchema,
    trip: tripSchema,
    replacing: z.union([sha256Schema, z.literal('missing')]).nullable(),
  }),
  output: z.strictObject({ file: openFileSchema, savedAtUtc: utcSchema }),
}

/**
 * Saves under a new name: with a dialog where the host has one, else by `name` in the trips folder, never over another file.
 * The token stays the same and now stands for the new file. Null: the user closed the dialog.
 */
export const saveTripAs = {
  input: z.strictObject({ token: tokenSchema, trip: tripSchema, name: fileNameSchema }),
  output: z.strictObject({ file: openFileSchema, savedAtUtc: utcSchema }).nullable(),
}

/** Compares the file with what was read or last saved, by SHA-256. `sha256` is that of the file as it is now; null where it is missing. */
export const checkDisk = {
  input: z.strictObject({ token: tokenSchema }),
  output: z.strictObject({
    state: z.enum(['same', 'changed', 'missing', 'never-saved']),
    sha256: sha256Schema.nullable(),
  }),
}

export const listBackups = {
  input: z.strictObject({ token: tokenSchema }),
  output: z.strictObject({
    backups: z.array(z.strictObject({ id: z.string(), savedAtUtc: utcSchema, bytes: z.int().min(0) })).readonly(),
  }),
}

/** Reads an earlier version into the page as an unsaved change of the same file. */
export const openBackup = {
  input: z.strictObject({ token: tokenSchema, id: z.string().max(40) }),
  output: openedSchema,
}
