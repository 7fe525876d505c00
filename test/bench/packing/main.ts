/**
 * `npm run bench:packing`: the container core on the open benchmark, single thread, each result judged by the oracle.
 * Options: --classes BR1,BR7  --instances 101-105 or 1,11,21  --seconds 10  --json (one line an instance).
 */
import { packContainer } from '../../../shared/packing/index.ts'
import { containerFaults } from '../../support/oracle/container.ts'
import { CLASSES, instance } from './instances.ts'

type Row = { class: string; instance: number; volumePercent: number; seconds: number; violations: number }

const option = (name: string): string | undefined => {
  const at = process.argv.indexOf(`--${name}`)
  return at < 0 ? undefined : process.argv[at + 1]
}

/** `101-105`, `1,11,21` or both. */
const numbersOf = (text: string): readonly number[] =>
  text.split(',').flatMap((part) => {
    const [from = 1, to = from] = part.split('-').map(Number)
    return Array.from({ length: to - from + 1 }, (_, at) => from + at)
  })

const classes = option('classes')?.split(',') ?? CLASSES.slice(1)
const instances = numbersOf(option('instances') ?? '1,11,21,31,41,51,61,71,81,91')
const seconds = Number(option('seconds') ?? 10)
const json = process.argv.includes('--json')

function run(name: string, number: number): Row {
  const input = instance(name, number)
  const began = performance.now()
  const elapsed = (): number => (performance.now() - began) / 1000
  const packing = packContainer(input, { completions: Infinity, shouldStop: () => elapsed() >= seconds })
  const took = elapsed()
  const violations = containerFaults(input, packing).length
  return { class: name, instance: number, volumePercent: packing.filled01 * 100, seconds: took, violations }
}

let violations = 0
for (const name of classes) {
  const rows = instances.map((number) => {
    const row = run(name, number)
    if (json) console.log(JSON.stringify(row))
    return row
  })
  violations += rows.reduce((sum, row) => sum + row.violations, 0)
  const mean = rows.reduce((sum, row) => sum + row.volumePercent, 0) / rows.length
  if (!json)
    console.log(`${name.padEnd(5)} ${mean.toFixed(2)} % of the volume, ${rows.length} instances, ${seconds} s each`)
}
if (!json) console.log(`${violations} violations`)
process.exitCode = violations > 0 ? 1 : 0
