/** Version 0 to 1: closed windows, the paper of the unit system, the share kept free under its new name. */
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { migrateTrip, parseTrip, serializeTrip } from '../../../../shared/document/index.ts'

const fixture = (version: string): Buffer =>
  readFileSync(new URL(`../../../fixtures/files/${version}/reservoir.trip.json`, import.meta.url))

describe('a trip of version 0', () => {
  it('opens as the frozen trip of version 1, byte for byte', () => {
    const read = parseTrip(fixture('v0'))
    expect(read.ok ? [] : read.problem).toEqual([])
    expect(read.ok && serializeTrip(read.value)).toBe(fixture('v1').toString('utf8'))
  })

  it('has its windows closed, and letter paper where it counts in feet', () => {
    const content = {
      format: 'kipstow-trip',
      version: 0,
      nights: [{ id: 'a' }],
      preferences: { units: 'us' },
      kit: { slack01: 0.2 },
    }
    expect(migrateTrip(content, 0, 1)).toEqual({
      format: 'kipstow-trip',
      version: 1,
      nights: [{ id: 'a', ventilation: { gapMm: 0, sides: 0 } }],
      preferences: { units: 'us', paper: 'letter' },
      kit: { freeShare01: 0.2 },
    })
  })

  it('keeps what it already says, and leaves nonsense for the validation to name', () => {
    const content = { version: 0, nights: 'none', preferences: null, kit: [1] }
    expect(migrateTrip(content, 0, 1)).toEqual({ version: 1, nights: 'none', preferences: null, kit: [1] })
    const paper = { version: 0, preferences: { units: 'metric', paper: 'letter' } }
    expect(migrateTrip(paper, 0, 1)).toEqual({ version: 1, preferences: { units: 'metric', paper: 'letter' } })
  })

  it('counts in metres on A4, keeps a window that is open, and a kit and a night that it does not understand', () => {
    const content = {
      version: 0,
      nights: ['soon', { id: 'a', ventilation: { gapMm: 30, sides: 1 } }],
      preferences: { units: 'metric' },
      kit: { freeShare01: 0.1 },
    }
    expect(migrateTrip(content, 0, 1)).toEqual({
      version: 1,
      nights: ['soon', { id: 'a', ventilation: { gapMm: 30, sides: 1 } }],
      preferences: { units: 'metric', paper: 'a4' },
      kit: { freeShare01: 0.1 },
    })
  })
})
