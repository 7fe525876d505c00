/** Files spoiled at random: each is read as a trip or refused with problems that have a sentence; nothing throws, nothing hangs. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseTrip, serializeTrip, validateTrip } from '../../shared/document/index.ts'
import { createText } from '../../shared/text/index.ts'
import { arbitraryTrip } from '../support/generators/arbitrary-trip.ts'
import { TIME_LIMIT_MS, runsOf } from '../support/generators/runs.ts'

const text = createText('en', 'metric')
const small = arbitraryTrip({ pieces: 2, bays: 1, nights: 1 })

/** Time of the processor: other work on the machine is no hang of ours. */
let slowestMs = 0
let files = 0
const HANG_MS = 1000

function expectVerdict(bytes: Uint8Array): boolean {
  const before = Uint8Array.from(bytes)
  const begun = process.cpuUsage()
  const read = parseTrip(bytes)
  const { user, system } = process.cpuUsage(begun)
  files += 1
  slowestMs = Math.max(slowestMs, (user + system) / 1000)
  expect(Buffer.compare(bytes, before)).toBe(0)
  const problems = read.ok ? [] : read.problem
  expect(read.ok || problems.length > 0).toBe(true)
  for (const problem of problems)
    expect(text.has(`problem.${problem.code}`) ? problem.code : `no sentence: ${problem.code}`).toBe(problem.code)
  // What is opened is a trip that can be written and opened again.
  expect(read.ok ? validateTrip(JSON.parse(serializeTrip(read.value))).ok : true).toBe(true)
  return read.ok
}

const encode = (value: string): Uint8Array => new TextEncoder().encode(value)

const TOKENS = [
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '"',
  '\\',
  'null',
  'true',
  '-',
  '0',
  '1e400',
  '-1',
  '0.5',
  '""',
  '{}',
  '[]',
  '\u0000',
  '\ufeff',
  '"__proto__"',
]

describe('a spoiled trip file', () => {
  it(
    'gets a verdict where bytes are changed, dropped or doubled',
    () => {
      let refused = 0
      fc.assert(
        fc.property(
          small,
          fc.array(fc.tuple(fc.nat(), fc.integer({ min: 0, max: 255 }), fc.constantFrom('set', 'drop', 'double')), {
            minLength: 1,
            maxLength: 4,
          }),
          (trip, spoils) => {
            const bytes = [...encode(serializeTrip(trip))]
            for (const [place, byte, how] of spoils) {
              const at = place % bytes.length
              if (how === 'set') bytes[at] = byte
              else if (how === 'drop') bytes.splice(at, 1)
              else bytes.splice(at, 0, bytes[at] ?? byte)
            }
            refused += expectVerdict(Uint8Array.from(bytes)) ? 0 : 1
          },
        ),
        runsOf(300, 40_000),
      )
      expect(refused).toBeGreaterThan(100)
    },
    TIME_LIMIT_MS,
  )

  it(
    'gets a verdict where a token is put in, or the file is cut',
    () => {
      let verdicts = 0
      fc.assert(
        fc.property(small, fc.nat(), fc.constantFrom(...TOKENS), fc.boolean(), (trip, place, token, cut) => {
          const written = serializeTrip(trip)
          const at = place % written.length
          expectVerdict(encode(cut ? written.slice(0, at) : written.slice(0, at) + token + written.slice(at)))
          verdicts += 1
        }),
        runsOf(300, 40_000),
      )
      expect(verdicts).toBeGreaterThanOrEqual(300)
    },
    TIME_LIMIT_MS,
  )

  it(
    'gets a verdict where it is any JSON at all, or any bytes',
    () => {
      fc.assert(
        fc.property(fc.oneof(fc.json().map(encode), fc.uint8Array({ maxLength: 400 })), (bytes) => {
          expect(expectVerdict(bytes)).toBe(false)
        }),
        runsOf(500, 20_000),
      )
    },
    TIME_LIMIT_MS,
  )

  it('is judged well within a second each, the slowest too', () => {
    console.log(`${files} spoiled files, the slowest in ${slowestMs.toFixed(1)} ms of processor`)
    expect(files).toBeGreaterThan(1000)
    expect(slowestMs).toBeLessThan(HANG_MS)
  })
})
