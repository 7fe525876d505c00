/** What the host is, its folders, its events, and its log. */
import { ok } from '../../result/index.ts'
import type { Context, Handlers } from './context.ts'
import { releaseCaller } from './open.ts'

/** The start of a host without windows of its own is every caller's. */
export const ANY_CALLER = ''

/** A frame of our own code, such as `scene/scene-view.ts:120:7`: nothing of the trip, nothing of the machine. */
const OWN_FRAME = /[A-Za-z0-9_-]+\.(?:ts|js|vue|mjs|cjs)(?::\d+){1,2}/

export function infoHandlers(
  context: Context,
): Pick<Handlers, 'readHostInfo' | 'nextEvent' | 'revealFolder' | 'noteCrash' | 'readDiagnostics'> {
  const { ports } = context
  return {
    readHostInfo: async (caller) => {
      await releaseCaller(context, caller)
      const start = context.startPaths.get(caller) ?? context.startPaths.get(ANY_CALLER)
      return ok({
        ...ports.facts,
        hasDialogs: ports.dialogs !== null,
        tripsFolder: ports.desktop.folders.trips,
        startToken: start === undefined ? null : context.paths.tokenOf(start),
      })
    },
    nextEvent: async (caller) => ok(await ports.events.next(caller)),
    revealFolder: async (_caller, { folder }) =>
      ok({ path: ports.desktop.folders[folder], shown: await ports.desktop.reveal(folder) }),
    noteCrash: (_caller, { where, errorName, frames }) => {
      const own = frames.map((frame) => OWN_FRAME.exec(frame)?.[0] ?? '').filter((frame) => frame !== '')
      const kind = /^[A-Za-z]{1,40}$/.test(errorName) ? errorName : 'Error'
      ports.log.write('page-crashed', { where, kind, frames: own.join(' ') })
      return Promise.resolve(ok({}))
    },
    readDiagnostics: async () => {
      const { kind, appVersion, platform, language } = ports.facts
      const head = [`kipstow ${appVersion}`, `host ${kind}`, `platform ${platform}`, `language ${language}`]
      return ok({ text: [...head, '', ...(await ports.log.recent())].join('\n') })
    },
  }
}
