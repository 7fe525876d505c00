import { describe, expect, test } from 'vitest'
import { schedule } from '../../../shared/checklist/schedule.ts'
import type { Schedule } from '../../../shared/checklist/schedule.ts'
import type { Task } from '../../../shared/checklist/task.ts'
import { hasCircle, leastLateness, mustPrecede, randomTasks, stream } from './brute-force.ts'

const SEED = 20270212

const task = (key: string, parts: Partial<Task> = {}): Task => ({
  key,
  rank: 0,
  durationS: 60,
  releaseS: null,
  dueS: null,
  after: [],
  ...parts,
})

/** What is wrong with an order: phases, links, two things at once, a start before the release. */
function orderFaults(tasks: readonly Task[], found: Schedule): readonly string[] {
  const byKey = new Map(tasks.map((one) => [one.key, one]))
  const keys = found.tasks.map((one) => one.key)
  const faults =
    keys.toSorted().join() ===
    tasks
      .map((one) => one.key)
      .toSorted()
      .join()
      ? []
      : ['tasks differ']
  let now = -Infinity
  const done: Task[] = []
  for (const { key, startS } of found.tasks) {
    const one = byKey.get(key) ?? task('?')
    if (done.some((earlier) => mustPrecede(tasks, one, earlier))) faults.push(`${key} too late in the order`)
    done.push(one)
    if (startS === null) continue
    if (startS < Math.max(now, one.releaseS ?? -Infinity)) faults.push(`${key} starts too early`)
    now = startS + one.durationS
  }
  return faults
}

/** The latest start is the last instant from which the rest, in this order, still meets its deadlines. */
function latestStartFaults(tasks: readonly Task[], found: Schedule): readonly string[] {
  const byKey = new Map(tasks.map((one) => [one.key, one]))
  return found.tasks.flatMap(({ key, startS, latestStartS }, place) => {
    const rest = found.tasks.slice(place).flatMap((one) => byKey.get(one.key) ?? [])
    const meets = (fromS: number): boolean => {
      let now = fromS
      return rest.every((one) => {
        now += one.durationS
        return one.dueS === null || now <= one.dueS
      })
    }
    if (latestStartS === null) return rest.every((one) => one.dueS === null) ? [] : [`${key} has no latest start`]
    const right = meets(latestStartS) && !meets(latestStartS + 1) && startS !== null && startS <= latestStartS
    return right ? [] : [`${key} latest start`]
  })
}

describe('schedule', () => {
  test('1,000 random step graphs agree with a search through every order', () => {
    const next = stream(SEED)
    const faults: string[] = []
    let impossible = 0
    for (let round = 0; round < 1000; round++) {
      const size = 1 + Math.floor(next() * 7)
      const tasks = randomTasks(next, { tasks: size, ranks: 1 + (round % 3), links: 0.2, tight: 0.4 })
      const found = schedule(tasks)
      const late = leastLateness(tasks, tasks) > 0
      impossible += late ? 1 : 0
      const here = [
        ...orderFaults(tasks, found),
        ...(found.circles.length > 0 ? ['circle'] : []),
        ...(found.impossible.length > 0 === late ? [] : ['conflict']),
        ...(late ? [] : latestStartFaults(tasks, found)),
      ]
      faults.push(...here.map((fault) => `seed ${SEED} round ${round}: ${fault}`))
    }
    expect(faults).toEqual([])
    // Both kinds must occur often, or the test would show nothing.
    expect(impossible).toBeGreaterThan(200)
    expect(impossible).toBeLessThan(800)
  }, 120_000)

  test('150 larger graphs stay legal', () => {
    const next = stream(SEED + 1)
    const faults: string[] = []
    for (let round = 0; round < 150; round++) {
      const tasks = randomTasks(next, { tasks: 30, ranks: 6, links: 0.06, tight: 0.03 })
      faults.push(...orderFaults(tasks, schedule(tasks)).map((fault) => `seed ${SEED + 1} round ${round}: ${fault}`))
    }
    expect(faults).toEqual([])
  }, 120_000)

  test('200 impossible windows are named by sets that are impossible and minimal', () => {
    const next = stream(SEED + 2)
    const faults: string[] = []
    let named = 0
    for (let round = 0; named < 200 && round < 2000; round++) {
      const tasks = randomTasks(next, { tasks: 7, ranks: 1 + (round % 2), links: 0.25, tight: 0.6 })
      const [first] = schedule(tasks).impossible
      if (first === undefined) continue
      named++
      const members = tasks.filter((one) => first.keys.includes(one.key))
      const missed = new Set(members.map((one) => one.dueS))
      const only = tasks.map((one) => (missed.has(one.dueS) ? one : { ...one, dueS: null }))
      const without = members.map((left) => members.filter((one) => one !== left))
      const right =
        first.lateByS === leastLateness(only, only) &&
        leastLateness(tasks, members) > 0 &&
        without.every((rest) => leastLateness(tasks, rest) <= 0)
      if (!right) faults.push(`seed ${SEED + 2} round ${round}: ${first.keys.join(' ')}`)
    }
    expect(faults).toEqual([])
    expect(named).toBe(200)
  }, 120_000)

  test('circles are found exactly where links and phases contradict each other', () => {
    const next = stream(SEED + 3)
    const faults: string[] = []
    let circular = 0
    for (let round = 0; round < 500; round++) {
      const tasks = randomTasks(next, { tasks: 6, ranks: 2, links: 0.08, tight: 0 }, true)
      const found = schedule(tasks)
      circular += found.circles.length > 0 ? 1 : 0
      const right =
        found.circles.length > 0 === hasCircle(tasks) &&
        found.tasks.length === tasks.length &&
        found.circles.every((ring) => isRing(tasks, ring))
      if (!right) faults.push(`seed ${SEED + 3} round ${round}`)
    }
    expect(faults).toEqual([])
    expect(circular).toBeGreaterThan(100)
    expect(circular).toBeLessThan(450)
  })

  test('a circle of two is named rather than the long one through it', () => {
    const found = schedule([task('a', { after: ['c', 'b'] }), task('b', { after: ['a'] }), task('c', { after: ['b'] })])
    expect(found.circles[0]?.toSorted()).toEqual(['a', 'b'])
  })

  test('a step that waits for one of a later phase is a circle with the phases', () => {
    const found = schedule([task('bed', { rank: 1, after: ['wake'] }), task('wake', { rank: 2 })])
    expect(found.circles).toEqual([['bed', 'wake']])
    expect(found.tasks.map((one) => one.key)).toEqual(['bed', 'wake'])
  })

  test('three steps that fill more than their window are named, the fourth is not', () => {
    const found = schedule([
      task('dress', { releaseS: 0, dueS: 1800, durationS: 720 }),
      task('glass', { releaseS: 0, dueS: 1800, durationS: 720 }),
      task('bed', { releaseS: 0, dueS: 1800, durationS: 720 }),
      task('note', { releaseS: 0, dueS: 18_000, durationS: 300 }),
    ])
    expect(found.impossible).toEqual([{ keys: ['dress', 'glass', 'bed'], lateByS: 360 }])
  })

  test('two separate impossible windows are both named', () => {
    const found = schedule([
      task('late', { releaseS: 100, dueS: 120, durationS: 60 }),
      task('later', { rank: 1, releaseS: 1000, dueS: 1010, durationS: 60 }),
    ])
    expect(found.impossible.map((one) => one.keys)).toEqual([['late'], ['later']])
  })

  test('what nothing holds back starts as late as its deadline allows', () => {
    const found = schedule([task('pack', { dueS: 1000, durationS: 100 }), task('look', { dueS: 1000, durationS: 50 })])
    expect(found.tasks).toEqual([
      { key: 'pack', startS: 850, latestStartS: 850 },
      { key: 'look', startS: 950, latestStartS: 950 },
    ])
  })

  test('without windows the given order stays and no time is invented', () => {
    const found = schedule([task('one'), task('two'), task('three', { after: ['one'] })])
    expect(found.tasks.map((one) => [one.key, one.startS, one.latestStartS])).toEqual([
      ['one', null, null],
      ['two', null, null],
      ['three', null, null],
    ])
  })

  test('while waiting for the hour, what can be done is done first', () => {
    const found = schedule([task('feel the plug', { releaseS: 600 }), task('cook', { releaseS: 0, durationS: 300 })])
    expect(found.tasks.map((one) => [one.key, one.startS])).toEqual([
      ['cook', 0],
      ['feel the plug', 600],
    ])
  })

  test('an urgent step goes before a given one only where the given order would be late', () => {
    const relaxed = [task('tidy', { releaseS: 0 }), task('gate', { releaseS: 0, dueS: 300 })]
    expect(schedule(relaxed).tasks.map((one) => one.key)).toEqual(['tidy', 'gate'])
    const tight = [task('tidy', { releaseS: 0 }), task('gate', { releaseS: 0, dueS: 60 })]
    expect(schedule(tight).tasks.map((one) => one.key)).toEqual(['gate', 'tidy'])
  })
})

/** Each waits for the one before it, by a link or because its phase is later. */
const isRing = (tasks: readonly Task[], ring: readonly string[]): boolean =>
  ring.every((key, place) => {
    const first = tasks.find((one) => one.key === key)
    const second = tasks.find((one) => one.key === ring[(place + 1) % ring.length])
    if (first === undefined || second === undefined) return false
    return second.after.includes(first.key) || first.rank < second.rank
  })
