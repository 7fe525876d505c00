/** Open waits of pages for the next event: answered by an event, or as quiet after a while. */
import type { Caller, Events, HostEvent } from '../../shared/host/index.ts'

/** An open wait is answered after this long at the latest, ms. */
const QUIET_AFTER_MS = 20_000
/** Events kept for a page that is not waiting just now. */
const MOST_KEPT = 32

export type Waits = Events & {
  readonly emit: (caller: Caller, event: HostEvent) => void
  readonly callers: () => readonly Caller[]
  readonly forget: (caller: Caller) => void
}

type Line = { readonly kept: HostEvent[]; answer: ((event: HostEvent) => void) | null }

export function createWaits(quietAfterMs: number = QUIET_AFTER_MS): Waits {
  const lines = new Map<Caller, Line>()
  const lineOf = (caller: Caller): Line => {
    const line = lines.get(caller) ?? { kept: [], answer: null }
    lines.set(caller, line)
    return line
  }
  return {
    next: (caller) => {
      const line = lineOf(caller)
      // A page that asks again has given up its earlier wait.
      line.answer?.({ kind: 'quiet' })
      const kept = line.kept.shift()
      if (kept !== undefined) return Promise.resolve(kept)
      return wait(line, quietAfterMs)
    },
    emit: (caller, event) => {
      const line = lineOf(caller)
      if (line.answer !== null) line.answer(event)
      else if (line.kept.length < MOST_KEPT) line.kept.push(event)
    },
    callers: () => [...lines.keys()],
    forget: (caller) => {
      lines.get(caller)?.answer?.({ kind: 'quiet' })
      lines.delete(caller)
    },
  }
}

function wait(line: Line, quietAfterMs: number): Promise<HostEvent> {
  return new Promise((resolve) => {
    const finish = (event: HostEvent): void => {
      clearTimeout(timer)
      line.answer = null
      resolve(event)
    }
    const timer = setTimeout(() => finish({ kind: 'quiet' }), quietAfterMs)
    timer.unref()
    line.answer = finish
  })
}
