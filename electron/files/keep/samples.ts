/** The sample trips that come with the planner. */
import { join } from 'node:path'
import type { Samples } from '../../../shared/host/index.ts'
import { ok } from '../../../shared/result/index.ts'
import type { FileCalls } from '../calls.ts'
import { attempt } from '../cause.ts'
import { readWithinLimit } from '../node-files.ts'

const ENDING = '.trip.json'

export function createSamples(calls: FileCalls, folder: string): Samples {
  return {
    list: async () => {
      const names = await attempt(folder, () => calls.readdir(folder))
      if (!names.ok) return names
      const samples = []
      for (const name of [...names.value].sort().filter((each) => each.endsWith(ENDING))) {
        const bytes = await readWithinLimit(calls, join(folder, name))
        if (!bytes.ok) return bytes
        samples.push({ id: name.slice(0, -ENDING.length), bytes: bytes.value })
      }
      return ok(samples)
    },
  }
}
