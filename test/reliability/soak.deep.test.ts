/** A day of editing, compressed: an edit every five seconds, undo and redo, a plan every few minutes, copies and saves. Memory stays flat. */
import { setFlagsFromString } from 'node:v8'
import { runInNewContext } from 'node:vm'
import { describe, expect, it } from 'vitest'
import { applyEdit, createHistory, parseTrip, record, redo, undo } from '../../shared/document/index.ts'
import type { Trip } from '../../shared/document/index.ts'
import { createHost } from '../../shared/host/index.ts'
import { derivePlan } from '../../shared/plan/index.ts'
import { ask, value } from '../support/files/ask.ts'
import { emptyDisk, hostDouble } from '../support/files/host-ports.ts'
import { smallTrip } from '../support/small-trip.ts'

const HOURS = 24
const EDITS_AN_HOUR = 720
const PLAN_EACH = 60
const SAVE_EACH = 180
/** Hours after which caches and the undo list are full. */
const WARM_HOURS = 4
const MOST_GROWTH_01 = 0.1
const SEED = Number(process.env['KIPSTOW_SEED'] ?? 20_261_125)

setFlagsFromString('--expose-gc')
const collect = runInNewContext('gc') as () => void

function heapNow(): number {
  collect()
  collect()
  return process.memoryUsage().heapUsed
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0

describe('twenty-four hours of editing', () => {
  it('leave the heap within ten per cent of what it was after four', { timeout: 3_600_000 }, async () => {
    console.log(`soak: seed ${SEED}`)
    const disk = emptyDisk()
    disk.put('/trips/day.trip.json', new TextEncoder().encode(smallTrip()))
    const host = createHost(hostDouble({ disk }).ports, '/trips/day.trip.json')
    const { startToken } = value(await ask(host, 'a', 'readHostInfo', {}))
    const opened = value(
      await ask(host, 'a', 'openTrip', { from: { kind: 'token', token: startToken ?? '' }, asCopy: false }),
    )
    if (opened === null) throw new Error('not opened')
    const { token } = opened.file
    let trip: Trip = opened.trip
    let history = createHistory()
    let plan = derivePlan(trip, { seed: 1, iterations: 0, remedies: false })
    let state = SEED >>> 0
    const random = (below: number): number => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
      return Math.floor((state / 2 ** 32) * below)
    }
    const heaps: number[] = []
    let edits = 0
    for (let hour = 0; hour < HOURS; hour += 1) {
      for (let edit = 1; edit <= EDITS_AN_HOUR; edit += 1) {
        const turn = random(10)
        const step = turn === 0 ? undo(history, trip) : turn === 1 ? redo(history, trip) : null
        if (step !== null) {
          trip = step.trip
          history = step.history
        } else {
          const at = random(trip.kit.pieces.length)
          const after = applyEdit(trip, {
            kind: 'set-value',
            path: ['kit', 'pieces', at, 'massG'],
            value: 100 + random(900),
          })
          if (!after.ok) throw new Error(after.problem.code)
          history = record(history, trip, after.value, { name: 'mass', gesture: random(2) === 0 ? 'drag' : null })
          trip = after.value
        }
        edits += 1
        if (edit % PLAN_EACH === 0) plan = derivePlan(trip, { seed: 1, iterations: 0, remedies: false, previous: plan })
        if (edit % PLAN_EACH === 1) value(await ask(host, 'a', 'keepRecovery', { token, trip }))
        if (edit % SAVE_EACH === 0) value(await ask(host, 'a', 'saveTrip', { token, trip, replacing: null }))
      }
      heaps.push(heapNow())
    }
    const last = parseTrip(disk.get('/trips/day.trip.json') ?? new Uint8Array())
    expect(last.ok && last.value.kit.pieces.length).toBe(trip.kit.pieces.length)
    expect(plan.nights).toHaveLength(1)
    const mib = heaps.map((bytes) => Math.round(bytes / 1_048_576))
    console.log(`${edits} edits; heap by the hour, MiB: ${mib.join(' ')}`)
    const early = median(heaps.slice(WARM_HOURS, WARM_HOURS + 6))
    const late = median(heaps.slice(-6))
    expect(edits).toBe(HOURS * EDITS_AN_HOUR)
    expect(late / early - 1).toBeLessThan(MOST_GROWTH_01)
  })
})
