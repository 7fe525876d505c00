/** The headless command: `npm run -s plan -- TRIP.json [--out DIR] [--seed N] [--seconds S] [--quiet]`, `--schema`. */
import { runCommand } from './run.ts'

// A reader that has seen enough (`| head`) closes the pipe; the files are still written and the number still holds.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (cause: NodeJS.ErrnoException) => {
    if (cause.code !== 'EPIPE') throw cause
  })
}

process.exitCode = await runCommand(process.argv.slice(2), {
  folder: process.env['INIT_CWD'] ?? process.cwd(),
  say: (text) => process.stdout.write(`${text}\n`),
  complain: (text) => process.stderr.write(`${text}\n`),
  progress: process.stderr.isTTY ? (line) => process.stderr.write(`\r\u001b[2K${line}`) : null,
})
