/** What the host is, what it can do, and what it has to tell. */
import { z } from '../zod.ts'
import { nothingSchema, tokenSchema } from './values.ts'

/** The first call of a page, and only the first: it gives up what an earlier page of the same window held open. */
export const readHostInfo = {
  input: nothingSchema,
  output: z.strictObject({
    kind: z.enum(['electron', 'loopback', 'command']),
    appVersion: z.string(),
    platform: z.enum(['linux', 'mac', 'windows', 'other']),
    /** Language of the system, for a first start. */
    language: z.enum(['en', 'de']),
    /** False: no file dialogs; open by a file input in the page, save into `tripsFolder` by name. */
    hasDialogs: z.boolean(),
    tripsFolder: z.string(),
    /** Trip named on the command line or double-clicked; open it with `openTrip {from: {kind: 'token'}}`. */
    startToken: tokenSchema.nullable(),
  }),
}

export const menuCommandSchema = z.enum([
  'new',
  'open',
  'save',
  'save-as',
  'export',
  'undo',
  'redo',
  'preferences',
  'theme-light',
  'theme-dark',
  'theme-night-red',
  'about',
  'diagnostics',
])

/** Waits up to 20 s. `quiet`: nothing happened, ask again. An open wait also tells the loopback host that the window stands. */
export const nextEvent = {
  input: nothingSchema,
  output: z.discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('quiet') }),
    z.strictObject({ kind: z.literal('menu'), command: menuCommandSchema }),
    z.strictObject({ kind: z.literal('open-requested'), token: tokenSchema, name: z.string() }),
  ]),
}

/** Tells the host whether closing the window would lose an edit. */
export const markUnsaved = {
  input: z.strictObject({ token: tokenSchema, unsaved: z.boolean() }),
  output: nothingSchema,
}

/** Folders are named by key; the host knows where they are. Where it cannot show one, it says where it is. */
export const revealFolder = {
  input: z.strictObject({ folder: z.enum(['trips', 'sheets', 'backups', 'log']) }),
  output: z.strictObject({ path: z.string(), shown: z.boolean() }),
}

/** A crash of the page: names and places in our own code, never what the trip says. */
export const noteCrash = {
  input: z.strictObject({
    where: z.enum(['view', 'worker', 'promise', 'policy']),
    errorName: z.string().max(80),
    /** Own file and line of each frame; the host strips everything else. */
    frames: z.array(z.string().max(200)).max(30).readonly(),
  }),
  output: nothingSchema,
}

/** Text that the user reads before sharing it. */
export const readDiagnostics = {
  input: nothingSchema,
  output: z.strictObject({ text: z.string() }),
}
