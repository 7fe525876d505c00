/** The built app on its loopback host, for the journeys: started in a home of its own, stopped after. */
import { spawn } from 'node:child_process'
import type { ChildProcess } from 'node:child_process'
import { mkdtemp, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

export type RunningHost = { readonly address: () => Promise<string>; readonly stop: () => void; readonly home: string }

const START_LIMIT_MS = 20_000

/** `root`: the project's folder, built. `trip`: text of a trip to begin with. Each call of `address` gives an address that opens once. The host ends with its last window. */
export async function startHost(root: string, trip: string | null = null): Promise<RunningHost> {
  const home = await mkdtemp(join(tmpdir(), 'kipstow-home-'))
  const file = join(home, 'first.trip.json')
  if (trip !== null) await writeFile(file, trip)
  const child = spawn(process.execPath, [join(root, 'dist/electron/web.js'), root, ...(trip === null ? [] : [file])], {
    stdio: ['ignore', 'inherit', 'inherit', 'ipc'],
    env: {
      ...process.env,
      HOME: home,
      XDG_CONFIG_HOME: join(home, 'config'),
      XDG_DATA_HOME: join(home, 'data'),
      USERPROFILE: home,
      APPDATA: join(home, 'appdata'),
    },
  })
  let first: string | null = await nextAddress(child)
  return {
    home,
    address: async () => {
      if (first !== null) {
        const address = first
        first = null
        return address
      }
      const answer = nextAddress(child)
      child.send('new-address')
      return await answer
    },
    stop: () => void child.kill('SIGTERM'),
  }
}

async function nextAddress(child: ChildProcess): Promise<string> {
  return await new Promise((resolve, reject) => {
    const limit = setTimeout(() => reject(new Error('the host said no address')), START_LIMIT_MS)
    child.once('message', (message: unknown) => {
      clearTimeout(limit)
      const address: unknown = typeof message === 'object' && message !== null ? Reflect.get(message, 'address') : null
      if (typeof address === 'string') resolve(address)
      else reject(new Error('the host said something else than an address'))
    })
    child.once('exit', (code) => reject(new Error(`the host ended with ${code}`)))
  })
}
