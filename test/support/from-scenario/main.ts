/** `npm run -s from-scenario -- FILE OUT`: writes a trip made from a test scenario. */
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { tripSchema } from '../../../shared/document/index.ts'
import { tripFromScenario } from './convert.ts'

function main(args: readonly string[]): number {
  const [from, to] = args
  if (from === undefined || to === undefined) {
    process.stderr.write('usage: npm run -s from-scenario -- FILE OUT\n')
    return 2
  }
  // npm changes the folder: paths count from where the user stands.
  const folder = process.env['INIT_CWD'] ?? process.cwd()
  const scenario: unknown = JSON.parse(readFileSync(resolve(folder, from), 'utf8'))
  const trip = tripFromScenario(scenario)
  const checked = tripSchema.safeParse(trip)
  if (!checked.success) {
    for (const issue of checked.error.issues) process.stderr.write(`${issue.path.join('.')}: ${issue.message}\n`)
    return 2
  }
  writeFileSync(resolve(folder, to), `${JSON.stringify(trip, null, 2)}\n`)
  process.stdout.write(
    `${trip.title}: ${String(trip.kit.pieces.length)} pieces, ${String(trip.vehicle.bays.length)} bays, ${String(trip.nights.length)} nights\n`,
  )
  return 0
}

process.exitCode = main(process.argv.slice(2))
