/** The sample trips: valid, written as the program writes, and as rich as the README says. */
import { readFileSync, readdirSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { parseTrip, serializeTrip } from '../../../shared/document/index.ts'
import { derivePlan } from '../../../shared/plan/index.ts'

const folder = new URL('../../../assets/samples/', import.meta.url)
const files = readdirSync(folder).filter((file) => file.endsWith('.trip.json'))

describe('the sample trips', () => {
  it('are one metric and one US', () => {
    const units = files.map((file) => {
      const read = parseTrip(readFileSync(new URL(file, folder)))
      return read.ok ? read.value.preferences.units : 'unreadable'
    })
    expect(units.toSorted()).toEqual(['metric', 'us'])
  })

  it.each(files)('opens and is written back byte for byte: %s', (file) => {
    const bytes = readFileSync(new URL(file, folder))
    const read = parseTrip(bytes)
    expect(read.ok ? [] : read.problem).toEqual([])
    expect(read.ok && serializeTrip(read.value)).toBe(bytes.toString('utf8'))
  })

  it.each(files)('carries a whole load over two nights with different hookups: %s', (file) => {
    const read = parseTrip(readFileSync(new URL(file, folder)))
    if (!read.ok) throw new Error(file)
    const trip = read.value
    expect(trip.kit.pieces.length).toBeGreaterThanOrEqual(40)
    expect(trip.nights.map((night) => night.hookup?.connector).length).toBe(2)
    expect(new Set(trip.nights.map((night) => night.hookup?.connector)).size).toBe(2)
    expect(trip.kit.pieces.some((piece) => piece.spare && piece.bedding !== undefined)).toBe(true)
  })

  it.each(files)('holds: nothing falls short on either night: %s', (file) => {
    const read = parseTrip(readFileSync(new URL(file, folder)))
    if (!read.ok) throw new Error(file)
    const plan = derivePlan(read.value, { seed: 1, iterations: 60, remedies: false })
    const short = plan.findings.filter((finding) => finding.severity === 'shortfall').map((finding) => finding.problem)
    expect(short).toEqual([])
  })
})
