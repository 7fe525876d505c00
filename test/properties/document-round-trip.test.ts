/** Laws of the trip file: what is written is read back the same, and written the same again. */
import * as fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseTrip, serializeTrip, validateTrip } from '../../shared/document/index.ts'
import { arbitraryTrip } from '../support/generators/arbitrary-trip.ts'
import { TIME_LIMIT_MS, runsOf } from '../support/generators/runs.ts'

const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text)

describe('the trip file', () => {
  it(
    'accepts every trip that the generator makes',
    () => {
      fc.assert(
        fc.property(arbitraryTrip(), (trip) => {
          const checked = validateTrip(trip)
          expect(checked.ok ? [] : checked.problem).toEqual([])
        }),
        runsOf(100, 1000),
      )
    },
    TIME_LIMIT_MS,
  )

  it(
    'is read back as it was written, and its bytes are stable on the second save',
    () => {
      fc.assert(
        fc.property(arbitraryTrip(), (trip) => {
          const text = serializeTrip(trip)
          const read = parseTrip(bytesOf(text))
          expect(read).toEqual({ ok: true, value: trip })
          expect(read.ok && serializeTrip(read.value)).toBe(text)
        }),
        runsOf(1000, 10_000),
      )
    },
    TIME_LIMIT_MS,
  )
})
