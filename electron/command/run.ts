/** Reads a trip, plans it, says how it stands, writes its files. Exit 0: nothing falls short; 1: something does; 2: refused or not written; 3: our own fault. */
import { basename, resolve } from 'node:path'
import { performance } from 'node:perf_hooks'
import { ENDLESS_ITERATIONS, jsonSchemas, planTrip } from '../../shared/host/index.ts'
import type { PlannedTrip, TripBudget } from '../../shared/host/index.ts'
import { fail } from '../../shared/result/index.ts'
import type { Problem, Result } from '../../shared/result/index.ts'
import { createText } from '../../shared/text/index.ts'
import type { Text } from '../../shared/text/index.ts'
import { checkFolder, createNodeFiles, NODE_CALLS, systemLanguage } from '../files/index.ts'
import { parseArguments } from './arguments.ts'
import type { Arguments } from './arguments.ts'
import { progressLine } from './progress.ts'
import { summary, verdictLine } from './summary.ts'
import { writeSheets } from './write-sheets.ts'

const EXIT = { holds: 0, fallsShort: 1, refused: 2, crashed: 3 } as const
const MS_PER_S = 1000
/** Problems of a refused trip that are listed; the rest is counted. */
const MOST_LISTED = 30

type PlanArguments = Extract<Arguments, { kind: 'plan' }>

export type Terminal = {
  /** Where the user stands: paths resolve from here. */
  readonly folder: string
  readonly say: (text: string) => void
  readonly complain: (text: string) => void
  /** Rewrites one line; null where there is no terminal to rewrite. */
  readonly progress: ((line: string) => void) | null
}

export async function runCommand(given: readonly string[], terminal: Terminal): Promise<number> {
  const own = createText(systemLanguage(), 'metric')
  const wanted = parseArguments(given)
  if (!wanted.ok) {
    terminal.complain(`${own.problem(wanted.problem)}\n\n${own.t('command.usage')}`)
    return EXIT.refused
  }
  switch (wanted.value.kind) {
    case 'schema':
      terminal.say(JSON.stringify(jsonSchemas(), null, 2))
      return EXIT.holds
    case 'help':
      terminal.say(`${own.t('command.usage')}\n\n${own.t('command.help')}`)
      return EXIT.holds
    case 'plan':
      return planOrConfess(wanted.value, terminal, own)
  }
}

/** A fault of ours must not end like a plan that falls short: it has a number of its own, and says whose fault it is. */
async function planOrConfess(wanted: PlanArguments, terminal: Terminal, own: Text): Promise<number> {
  try {
    return await plan(wanted, terminal, own)
  } catch (cause) {
    const { name, message, stack } = cause instanceof Error ? cause : new Error(String(cause))
    terminal.complain(`${own.t('command.crashed', { cause: `${name}: ${message}` })}\n\n${stack ?? ''}`)
    return EXIT.crashed
  }
}

async function plan(wanted: PlanArguments, terminal: Terminal, own: Text): Promise<number> {
  const path = resolve(terminal.folder, wanted.trip)
  const stem = basename(path).replace(/((\.trip)?\.json|\.kipstow)$/i, '')
  const out = resolve(terminal.folder, wanted.out ?? `${stem}.plan`)
  const folder = await checkFolder(NODE_CALLS, out)
  if (!folder.ok) return refuse(terminal, own, path, [folder.problem])
  const planned = await readAndPlan(path, wanted, terminal, own)
  if (!planned.ok) return refuse(terminal, own, path, planned.problem)
  const { language, units } = planned.value.trip.preferences
  const text = createText(language, units)
  terminal.say(wanted.quiet ? verdictLine(planned.value, text) : summary(planned.value, text))
  const written = await writeSheets(planned.value, out, path)
  if (!written.ok) {
    terminal.complain(`\n${text.t('command.notWritten', { folder: out })}\n  ${text.problem(written.problem)}`)
    return EXIT.refused
  }
  if (!wanted.quiet) terminal.say(`\n${text.t('command.written', { folder: out, files: written.value.join(', ') })}`)
  return planned.value.plan.verdict.holds ? EXIT.holds : EXIT.fallsShort
}

async function readAndPlan(
  path: string,
  wanted: PlanArguments,
  terminal: Terminal,
  own: Text,
): Promise<Result<PlannedTrip, readonly Problem[]>> {
  const files = createNodeFiles(NODE_CALLS, process.platform === 'win32', () => Date.now())
  const read = await files.read(path)
  if (!read.ok) return fail([read.problem])
  const progress = wanted.quiet ? null : terminal.progress
  const planned = planTrip(read.value.bytes, budgetOf(wanted, progress === null ? null : progressLine(progress, own)))
  progress?.('')
  return planned
}

function budgetOf({ seed, seconds }: PlanArguments, onProgress: TripBudget['onProgress'] | null): TripBudget {
  const heard = onProgress === null || onProgress === undefined ? {} : { onProgress }
  if (seconds === null) return { seed, iterations: null, remedies: true, ...heard }
  const untilMs = performance.now() + seconds * MS_PER_S
  const enoughSearched = (): boolean => performance.now() >= untilMs
  return { seed, iterations: ENDLESS_ITERATIONS, enoughSearched, remedies: true, ...heard }
}

function refuse(terminal: Terminal, text: Text, path: string, problems: readonly Problem[]): number {
  const lines = problems.slice(0, MOST_LISTED).map((problem) => `  ${text.problem(problem)}`)
  const more = problems.length - lines.length
  if (more > 0) lines.push(`  ${text.t('command.refusedMore', { count: more })}`)
  terminal.complain([text.t('command.refused', { file: path }), ...lines].join('\n'))
  return EXIT.refused
}
