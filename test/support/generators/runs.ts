/** How many cases a property tries: a tenth on each change, all of them in the deep run. Seeds can be set to repeat a failure. */

const seedText = process.env['KIPSTOW_SEED']

export const isDeep = process.env['KIPSTOW_DEEP'] === '1'

/** fast-check prints seed and path of a failure; a fixed seed keeps the usual run the same on every machine. */
export const runsOf = (usual: number, deep: number): { readonly numRuns: number; readonly seed: number } => ({
  numRuns: isDeep ? deep : usual,
  seed: seedText === undefined ? 20_271_008 : Number(seedText),
})

/** A deep property may take half an hour on a slow machine; a usual one two minutes. */
export const TIME_LIMIT_MS = isDeep ? 1_800_000 : 120_000
