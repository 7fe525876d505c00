/** The one client of the host contract: the preload bridge in the desktop window, fetch in a browser. Nobody else sees `window.planner`. */
import {
  CALL_PATH,
  CODE_IN_FRAGMENT,
  EXCHANGE_PATH,
  OPERATION_NAMES,
  TOKEN_HEADER,
  TOKEN_STORAGE_KEY,
} from '../../shared/host/index.ts'
import type { HostClient, OperationInput, OperationName, OperationOutput } from '../../shared/host/index.ts'
import { fail, problem } from '../../shared/result/index.ts'
import type { Result } from '../../shared/result/index.ts'

type Bridge = { readonly [N in OperationName]: (input: OperationInput<N>) => Promise<Result<OperationOutput<N>>> }

const UNREACHABLE = fail(problem('host-gone'))

/** The preload's functions where the page runs in the desktop window, else null. */
function findBridge(): Bridge | null {
  const found: unknown = Reflect.get(globalThis, 'planner')
  if (typeof found !== 'object' || found === null) return null
  const complete = OPERATION_NAMES.every((name) => typeof Reflect.get(found, name) === 'function')
  return complete ? (found as Bridge) : null // every operation was just found to be a function
}

const isResult = (value: unknown): value is Result<never> =>
  typeof value === 'object' && value !== null && 'ok' in value && typeof value.ok === 'boolean'

async function post(path: string, body: unknown, headers: Readonly<Record<string, string>>): Promise<unknown> {
  const response = await fetch(path, {
    method: 'POST',
    headers: { 'content-type': 'application/json', ...headers },
    body: JSON.stringify(body),
  })
  if (!response.ok) return null
  return await response.json()
}

/** Trades the one-time code of the address for the token that each call carries; a reload finds it again. */
async function findToken(): Promise<string | null> {
  const { hash } = globalThis.location
  if (hash.startsWith(`#${CODE_IN_FRAGMENT}`)) {
    const code = hash.slice(1 + CODE_IN_FRAGMENT.length)
    globalThis.history.replaceState(null, '', globalThis.location.pathname)
    const answer = await post(EXCHANGE_PATH, { code }, {})
    const token: unknown = typeof answer === 'object' && answer !== null ? Reflect.get(answer, 'token') : null
    if (typeof token === 'string') {
      globalThis.sessionStorage.setItem(TOKEN_STORAGE_KEY, token)
      return token
    }
  }
  return globalThis.sessionStorage.getItem(TOKEN_STORAGE_KEY)
}

function bridgeClient(bridge: Bridge): HostClient {
  return { call: async (name, input) => await bridge[name](input) }
}

function loopbackClient(): HostClient {
  const token = findToken()
  return {
    call: async (name, input) => {
      try {
        const answer = await post(`${CALL_PATH}${name}`, input, { [TOKEN_HEADER]: (await token) ?? '' })
        return isResult(answer) ? answer : UNREACHABLE
      } catch (cause) {
        if (cause instanceof TypeError) return UNREACHABLE
        throw cause
      }
    },
  }
}

/** Picks the host that this page was opened by. */
export function connectHost(): HostClient {
  const bridge = findBridge()
  return bridge === null ? loopbackClient() : bridgeClient(bridge)
}
