/** `npm run -s check-values -- FILE`: any file of published rows, compared with the engine. */
import { readFileSync } from 'node:fs'
import { basename, resolve } from 'node:path'
import { gridRows } from './grid-rows.ts'
import { readRows } from './rows.ts'
import { closingLine, count, runRead, runRow, tableOf } from './run.ts'

/** The file's text and rows, or what is wrong with the file itself. */
function resultsOf(file: string) {
  try {
    const text = readFileSync(resolve(process.env['INIT_CWD'] ?? process.cwd(), file), 'utf8')
    return gridRows(text, basename(file))?.map(runRow) ?? readRows(text).map(runRead)
  } catch (error) {
    console.error(`${file}: ${error instanceof Error ? error.message : String(error)}`)
    return process.exit(2)
  }
}

const file = process.argv[2]
if (file === undefined) {
  console.error('usage: npm run -s check-values -- FILE')
  process.exit(2)
}
const results = resultsOf(file)
console.log(tableOf(results))
const skipped = results.filter((result) => result.verdict === 'skipped')
if (skipped.length > 0)
  console.log(`\nskipped: ${skipped.map((result) => `${result.row.id} (${result.reason ?? 'no reason'})`).join('; ')}`)
console.log(`\n${closingLine(results)}`)
if (count(results, 'failed') > 0 || results.length === 0) process.exitCode = 1
