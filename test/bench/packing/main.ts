/**
 * `npm run bench:packing`: the container core on the open benchmark beside an open library, then the vehicle's own figures; single thread, each result judged by the oracle.
 * Options: --classes BR1,BR7  --instances 101-105 or 1,11,21  --seconds 10  --json (one line an instance)  --cpu (seconds of processor time, for a busy machine)  --no-vehicle.
 */
import { packContainer } from '../../../shared/packing/index.ts'
import { containerFaults } from '../../support/oracle/container.ts'
import { cpuSeconds, wallSeconds } from './clock.ts'
import { CLASSES, instance } from './instances.ts'
import { byLibrary, LIBRARY } from './library.ts'
import type { LibraryResult } from './library.ts'
import { vehicleLines } from './vehicle.ts'

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
const clock = process.argv.includes('--cpu') ? cpuSeconds : wallSeconds

function run(name: string, number: number): Row {
  const input = instance(name, number)
  const began = clock()
  const elapsed = (): number => clock() - began
  const packing = packContainer(input, { completions: Infinity, shouldStop: () => elapsed() >= seconds })
  const took = elapsed()
  const violations = containerFaults(input, packing).length
  return { class: name, instance: number, volumePercent: packing.filled01 * 100, seconds: took, violations }
}

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length

type ClassMeans = { readonly name: string; readonly ours: number; readonly library: number }

function runClass(name: string): ClassMeans & { readonly violations: number } {
  const rows = instances.map((number) => {
    const row = run(name, number)
    if (json) console.log(JSON.stringify(row))
    return row
  })
  const violations = rows.reduce((sum, row) => sum + row.violations, 0)
  const ours = mean(rows.map((row) => row.volumePercent))
  if (json) return { name, ours, library: Number.NaN, violations }
  const theirs = instances.map((number): LibraryResult => byLibrary(instance(name, number)))
  const library = mean(theirs.map((each) => each.volumePercent))
  const illegal = theirs.reduce((sum, each) => sum + each.illegal, 0)
  const hanging = mean(theirs.map((each) => each.hanging01)) * 100
  const slow = mean(theirs.map((each) => each.seconds))
  console.log(
    `| ${name} | ${ours.toFixed(2)} | ${violations} | ${library.toFixed(2)} | ${(ours - library).toFixed(2)} | ${illegal} | ${hanging.toFixed(0)} % | ${slow.toFixed(2)} s |`,
  )
  return { name, ours, library, violations }
}

if (!json) {
  console.log(`${instances.length} instances a class, ${seconds} s each; reference ${LIBRARY}, best of three orders`)
  console.log(
    '| class | ours, % | violations | library, % | points above | its illegal pairs | its hanging boxes | its time |',
  )
  console.log('|---|---|---|---|---|---|---|---|')
}
const means = classes.map(runClass)
const violations = means.reduce((sum, row) => sum + row.violations, 0)

function groupLine(label: string, from: number, to: number): void {
  const group = means.filter(({ name }) => Number(name.slice(2)) >= from && Number(name.slice(2)) <= to)
  if (group.length === 0) return
  const [ours, library] = [mean(group.map((row) => row.ours)), mean(group.map((row) => row.library))]
  console.log(
    `${label}: ours ${ours.toFixed(2)} %, library ${library.toFixed(2)} %, ${(ours - library).toFixed(2)} points above`,
  )
}

let missed = 0
if (!json) {
  groupLine('BR1 to BR7', 1, 7)
  groupLine('BR8 to BR15', 8, 15)
  console.log(`${violations} violations`)
  if (!process.argv.includes('--no-vehicle')) {
    for (const { measure, ours, wanted, met } of vehicleLines()) {
      if (!met) missed++
      console.log(`${met ? 'met   ' : 'missed'} ${measure}: ${ours} (wanted ${wanted})`)
    }
  }
}
if (missed > 0) console.log(`${missed} figures missed`)
process.exitCode = violations > 0 ? 1 : 0
