/** The trip named on a command line, among the switches that Electron and the system put there. */

/** The last argument that names a trip file; null for none. */
export const tripAmong = (argv: readonly string[]): string | null =>
  argv.slice(1).findLast((argument) => !argument.startsWith('-') && /\.(json|kipstow)$/i.test(argument)) ?? null
