/** The process is killed at random moments of saving: nothing acknowledged is lost, nothing is torn, nothing is left lying about. */
import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { beforeAll, describe, expect, it } from 'vitest'
import { NODE_CALLS } from '../../electron/files/calls.ts'
import { sweepFolder } from '../../electron/files/sweep.ts'
import { bundleProgram } from '../support/files/bundle.ts'

const deep = process.env['KIPSTOW_DEEP'] !== undefined
const KILLS = deep ? 1000 : 100
/** A plain write is caught by chance, in about one kill of ten to thirty: as many kills as it takes, up to this. */
const PLAIN_KILLS = 400
const PLAIN_SIZE = 2_000_000
const SIZES = [2000, 200_000, 2_000_000] as const
const LATEST_KILL_MS = 40
/** On a busy machine a writer hardly gets on within a few ms: the plain one is given longer. */
const LATEST_PLAIN_KILL_MS = 200
/** A kill takes 0.2 s on an idle machine and ten times that on a busy one. */
const LIMIT_MS = KILLS * 3600
const SEED = Number(process.env['KIPSTOW_SEED'] ?? 20_261_125)

let program = ''
beforeAll(async () => {
  program = await bundleProgram(join(import.meta.dirname, '../support/files/save-forever.ts'))
  console.log(`kill harness: seed ${SEED}, ${KILLS} kills`)
})

function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return state / 2 ** 32
  }
}

type Round = { readonly torn: boolean; readonly lost: boolean; readonly strays: number }

async function killOnce(path: string, size: number, way: 'atomic' | 'plain', afterMs: number): Promise<Round> {
  const child = spawn(process.execPath, [program, path, String(size), way], { stdio: ['ignore', 'pipe', 'inherit'] })
  let said = ''
  const begun = new Promise<void>((resolve) => {
    child.stdout.on('data', (chunk: Buffer) => {
      said += chunk.toString('latin1')
      resolve()
    })
  })
  const gone = new Promise<void>((resolve) => child.once('exit', () => resolve()))
  const closed = new Promise<void>((resolve) => child.once('close', () => resolve()))
  await Promise.race([begun, gone])
  await wait(afterMs)
  child.kill('SIGKILL')
  await Promise.all([gone, closed])
  const acknowledged = Number(said.trimEnd().split('\n').at(-1) ?? 0)
  const found = readWhole(path)
  await sweepFolder(NODE_CALLS, join(path, '..'), 0)
  const strays = readdirSync(join(path, '..')).length - 1
  return { torn: found === null, lost: found !== null && found < acknowledged, strays }
}

/** The number of the save that stands there; null where it is not whole. */
function readWhole(path: string): number | null {
  try {
    const { number, end } = JSON.parse(readFileSync(path, 'utf8'))
    return number === end ? Number(number) : null
  } catch (cause) {
    if (cause instanceof SyntaxError) return null
    throw cause
  }
}

async function killMany(
  times: number,
  way: 'atomic' | 'plain',
  sizes: readonly number[],
  enough: (round: Round) => boolean = () => false,
): Promise<readonly Round[]> {
  const random = randomFrom(SEED)
  const folder = mkdtempSync(join(tmpdir(), 'kipstow-kill-'))
  const path = join(folder, 'trip.json')
  const rounds: Round[] = []
  for (let round = 0; round < times; round += 1) {
    const size = sizes[round % sizes.length] ?? 0
    writeFileSync(path, JSON.stringify({ number: 0, filler: '', end: 0 }))
    const killed = await killOnce(
      path,
      size,
      way,
      Math.floor(random() * (way === 'plain' ? LATEST_PLAIN_KILL_MS : LATEST_KILL_MS)),
    )
    rounds.push(killed)
    if (rounds.length % 100 === 0) console.log(`${rounds.length} kills`)
    if (enough(killed)) break
  }
  rmSync(folder, { recursive: true })
  return rounds
}

describe('a process killed while saving', () => {
  it(
    `loses no acknowledged save and tears no file in ${KILLS} kills, and leaves no half-made file after the next start`,
    { timeout: LIMIT_MS },
    async () => {
      const rounds = await killMany(KILLS, 'atomic', SIZES)
      const count = (bad: (round: Round) => boolean): number => rounds.filter(bad).length
      console.log(`${rounds.length} kills: ${count(({ torn }) => torn)} torn, ${count(({ lost }) => lost)} lost`)
      expect(rounds.length).toBe(KILLS)
      expect(rounds.filter(({ torn }) => torn).length).toBe(0)
      expect(rounds.filter(({ lost }) => lost).length).toBe(0)
      expect(rounds.reduce((sum, { strays }) => sum + strays, 0)).toBe(0)
    },
  )

  it('would be caught by this harness if it wrote plainly', { timeout: 600_000 }, async () => {
    const rounds = await killMany(PLAIN_KILLS, 'plain', [PLAIN_SIZE], ({ torn, lost }) => torn || lost)
    console.log(`a plain write was caught within ${rounds.length} kills`)
    expect(rounds.filter(({ torn, lost }) => torn || lost).length).toBeGreaterThan(0)
  })
})
