/** The figures that are proofs and no speeds (small cases against exhaustive search, random loads before the oracle): run as the tests that they are. */
import { spawnSync } from 'node:child_process'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'

const PROOFS = [
  ['200 small containers as full as an exhaustive search fills them', 'test/shared/packing/small-containers.test.ts'],
  ['200 small changeovers as short as an exhaustive search finds', 'test/shared/packing/changeover.test.ts'],
  ['units of class night: nothing to move in the bed layout', 'test/shared/packing/night-reach.test.ts'],
  ['20,000 random loads: no fault before the oracle', 'test/properties/packing-oracle.test.ts'],
] as const

export type Proof = { readonly what: string; readonly met: boolean }

/** One after the other. */
export function* proofs(): Generator<Proof> {
  const vitest = join(dirname(createRequire(import.meta.url).resolve('vitest/package.json')), 'vitest.mjs')
  const env = { ...process.env, KIPSTOW_DEEP: '1' }
  for (const [what, file] of PROOFS) {
    const { status } = spawnSync(process.execPath, [vitest, 'run', file], { env })
    yield { what: `${what} (${file})`, met: status === 0 }
  }
}
