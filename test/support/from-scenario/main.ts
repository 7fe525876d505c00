/** `npm run -s from-scenario -- FILE OUT`: writes a trip made from a test scenario. */
import { readFileSync, writeFileSync } from 'node:fs'
import { resolve } from 'node:path'
import { serializeTrip, validateTrip } from '../../../shared/document/index.ts'
import { createText } from '../../../shared/text/index.ts'
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
  const checked = validateTrip(tripFromScenario(scenario))
  if (!checked.ok) {
    const { problem: say } = createText('en', 'metric')
    for (const problem of checked.problem)
      process.stderr.write(`${say(problem)}
`)
    return 2
  }
  const trip = checked.value
  writeFileSync(resolve(folder, to), serializeTrip(trip))
  process.stdout.write(
    `${trip.title}: ${String(trip.kit.pieces.length)} pieces, ${String(trip.vehicle.bays.length)} bays, ${String(trip.nights.length)} nights\n`,
  )
  return 0
}

process.exitCode = main(process.argv.slice(2))
