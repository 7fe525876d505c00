/** One-time codes become tokens; a token is one window; a window that asks for nothing any more is gone. */
import { randomBytes } from 'node:crypto'
import { sameSecret } from './door.ts'

/** A code is good for this long, s. */
const CODE_LIFE_S = 60
/** Wrong codes after which the code in force is given up. */
const WRONG_CODES = 5
/** A window counts as closed when it has had no open wait for this long, s: a reload takes less, and a busy page may be slow to ask again. */
const GONE_AFTER_S = 30

type Session = { waiting: number; lastSeenS: number }

export type Sessions = {
  /** A new code; the one before it, if unused, is void. */
  readonly newCode: () => string
  /** Null where the code is wrong, used or too old. */
  readonly exchange: (code: string) => string | null
  readonly has: (token: string) => boolean
  /** A request of this window has begun or ended. */
  readonly began: (token: string) => void
  readonly ended: (token: string) => void
  /** Windows gone since the last look; they are forgotten. */
  readonly sweep: () => readonly string[]
  readonly count: () => number
  readonly everOpened: () => boolean
}

/** `nowS`: a clock that only goes forward. */
export function createSessions(nowS: () => number): Sessions {
  const sessions = new Map<string, Session>()
  let code: { readonly text: string; readonly untilS: number } | null = null
  let wrong = 0
  let opened = false
  return {
    newCode: () => {
      code = { text: randomBytes(24).toString('base64url'), untilS: nowS() + CODE_LIFE_S }
      wrong = 0
      return code.text
    },
    exchange: (given) => {
      if (code === null || nowS() > code.untilS) return null
      if (!sameSecret(given, code.text)) {
        wrong += 1
        if (wrong >= WRONG_CODES) code = null
        return null
      }
      code = null
      opened = true
      const token = randomBytes(32).toString('base64url')
      sessions.set(token, { waiting: 0, lastSeenS: nowS() })
      return token
    },
    has: (given) => {
      let found = false
      for (const token of sessions.keys()) if (sameSecret(given, token)) found = true
      return found
    },
    began: (token) => {
      const session = sessions.get(token)
      if (session !== undefined) session.waiting += 1
    },
    ended: (token) => {
      const session = sessions.get(token)
      if (session === undefined) return
      session.waiting -= 1
      session.lastSeenS = nowS()
    },
    sweep: () => {
      const gone = [...sessions].filter(
        ([, { waiting, lastSeenS }]) => waiting <= 0 && nowS() - lastSeenS > GONE_AFTER_S,
      )
      for (const [token] of gone) sessions.delete(token)
      return gone.map(([token]) => token)
    },
    count: () => sessions.size,
    everOpened: () => opened,
  }
}
