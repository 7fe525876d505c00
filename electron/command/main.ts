/** The headless command: `npm run -s plan -- TRIP.json [--out DIR] [--seed N] [--seconds S] [--quiet]`, `--schema`. */
import { runCommand } from './run.ts'

process.exitCode = await runCommand(process.argv.slice(2), {
  folder: process.env['INIT_CWD'] ?? process.cwd(),
  say: (text) => process.stdout.write(`${text}\n`),
  complain: (text) => process.stderr.write(`${text}\n`),
  progress: process.stderr.isTTY ? (line) => process.stderr.write(`\r\u001b[2K${line}`) : null,
})
