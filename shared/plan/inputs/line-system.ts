/** Whether a two-pole post stands on a split phase (240 V) or on two phases of three (208 V): read, else asked, else not known. */
import { hasTwoHotPoles, lineSystem } from '../../climate/index.ts'
import type { Hookup } from '../../document/index.ts'

/** Volts between the poles of both systems (ANSI C84.1 nominal). */
const NOMINAL_V = { 'split-phase-240': 240, 'two-of-three-208': 208 } as const

/** The system where it can be told; null where the connector has no two poles and the question does not arise. */
export function lineSystemOf(hookup: Hookup): NonNullable<Hookup['lineSystem']> | null {
  if (!hasTwoHotPoles(hookup.connector)) return null
  const { lineToLineV, lineToNeutralV } = hookup
  if (lineToLineV !== undefined && lineToNeutralV !== undefined && lineToNeutralV > 0) {
    const read = lineSystem(lineToLineV, lineToNeutralV)
    if (read !== 'not-known') return read
  }
  return hookup.lineSystem ?? 'not-known'
}

/** Nominal volts of the supply: those of its system where it is told, else as stated. */
export function nominalOf(hookup: Hookup): number {
  const system = lineSystemOf(hookup)
  return system === null || system === 'not-known' ? hookup.nominalV : NOMINAL_V[system]
}
