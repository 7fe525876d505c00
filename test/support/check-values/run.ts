/** Rows through the engine: a table of ours against published, and one closing line. */
import { AREAS } from './areas.ts'
import { judge } from './judge.ts'
import type { Judgement, Verdict } from './judge.ts'
import { MissingInput } from './rows.ts'
import type { Ours, Read, Row, Value } from './rows.ts'

export type RowResult = {
  readonly row: Row
  readonly judgements: readonly Judgement[]
  readonly verdict: Verdict
  readonly reason: string | null
}

/** What was read, judged: a spoiled row failed and a fact in words skipped, each with its reason. */
export function runRead(read: Read): RowResult {
  if (read.kind === 'row') return runRow(read.row)
  const base = { row: read.row, judgements: [] }
  return read.kind === 'spoiled'
    ? { ...base, verdict: 'failed', reason: `no such row: ${read.problem}` }
    : { ...base, verdict: 'skipped', reason: `a fact in words, nothing to compute (${read.row.area})` }
}

/** One row judged: failed where any quantity fails, skipped where the engine lacks one, else passed. */
export function runRow(row: Row): RowResult {
  const handler = AREAS[row.area]
  if (handler === undefined) return { row, judgements: [], verdict: 'skipped', reason: `no area ${row.area}` }
  const names = Object.keys(row.expected)
  let ours: Ours
  try {
    ours = handler(row.inputs, names)
  } catch (error) {
    // A value that the engine or a library refuses fails its own row; the rows after it are still judged.
    const reason = error instanceof Error ? error.message : String(error)
    return { row, judgements: [], verdict: error instanceof MissingInput ? 'skipped' : 'failed', reason }
  }
  const judgements = names.map((name) => judge(row, name, ours[name]))
  if (judgements.some((entry) => entry.verdict === 'failed'))
    return { row, judgements, verdict: 'failed', reason: endless(judgements) }
  const lacking = judgements.filter((entry) => entry.verdict === 'skipped').map((entry) => entry.name)
  if (lacking.length === 0)
    return {
      row,
      judgements,
      verdict: names.length === 0 ? 'skipped' : 'passed',
      reason: names.length === 0 ? 'nothing published' : null,
    }
  return { row, judgements, verdict: 'skipped', reason: `the engine has no ${lacking.join(', ')} for these inputs` }
}

/** Which of our values are no finite numbers, in words; null where all are. */
function endless(judgements: readonly Judgement[]): string | null {
  const names = judgements
    .filter(({ ours }) => typeof ours === 'number' && !Number.isFinite(ours))
    .map(({ name }) => name)
  return names.length === 0 ? null : `these inputs give no finite ${names.join(', ')}`
}

const shown = (value: Value | undefined): string => {
  if (value === undefined) return '-'
  if (typeof value === 'number') return String(Number(value.toPrecision(7)))
  if (Array.isArray(value)) return `[${value.map((entry: Value) => shown(entry)).join(', ')}]`
  return String(value)
}

const COLUMNS = [10, 30, 26, 26, 12, 8] as const

const line = (cells: readonly string[]): string =>
  cells
    .map((cell, index) => {
      const width = COLUMNS[index] ?? 0
      return (cell.length > width ? `${cell.slice(0, width - 1)}…` : cell).padEnd(width)
    })
    .join('  ')
    .trimEnd()

/** The table: id, quantity, ours, published, difference, verdict; each row is followed by its source. */
export function tableOf(results: readonly RowResult[]): string {
  const lines = [line(['id', 'quantity', 'ours', 'published', 'difference', 'verdict']) + '  source']
  for (const { row, judgements, verdict, reason } of results) {
    if (judgements.length === 0) lines.push(`${line([row.id, '', '-', '-', '', verdict])}  ${row.source}`)
    for (const entry of judgements) {
      const difference = entry.difference === null ? '' : shown(entry.difference)
      lines.push(
        `${line([row.id, entry.name, shown(entry.ours), shown(entry.published), difference, entry.verdict])}  ${row.source}`,
      )
    }
    if (reason !== null) lines.push(`           ${verdict}: ${reason}`)
  }
  return lines.join('\n')
}

export const count = (results: readonly RowResult[], verdict: Verdict): number =>
  results.filter((result) => result.verdict === verdict).length

export const closingLine = (results: readonly RowResult[]): string =>
  `${count(results, 'passed')} passed, ${count(results, 'failed')} failed, ${count(results, 'skipped')} skipped`
