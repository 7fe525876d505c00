/** One line that is rewritten while planning: part and share done. */
import { performance } from 'node:perf_hooks'
import type { TripBudget } from '../../shared/host/index.ts'
import type { Text } from '../../shared/text/index.ts'

/** Rewriting more often than this only costs time, ms. */
const LEAST_PAUSE_MS = 100

export function progressLine(write: (line: string) => void, text: Text): NonNullable<TripBudget['onProgress']> {
  let saidMs = Number.NEGATIVE_INFINITY
  return (done01, note) => {
    const nowMs = performance.now()
    if (nowMs - saidMs < LEAST_PAUSE_MS) return
    saidMs = nowMs
    write(text.t('command.progress', { part: text.t(`command.part.${note}`), done01 }))
  }
}
