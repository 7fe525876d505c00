/** What the window does with its host from the first moment: opens a trip, and heeds what the host has to tell. */
import type { HostClient } from '../../shared/host/index.ts'
import type { Language } from '../../shared/text/index.ts'
import type { Files } from '../stores/files.ts'

export type FirstTrip = {
  readonly files: Files
  readonly isOpen: () => boolean
  readonly say: (language: Language) => void
  /** Something unsaved was found: the window asks what to do with it. */
  readonly offerKept: () => void
}

/** The trip named at the start, else the first sample, so that nobody begins before an empty sheet. */
export async function openFirst({ files, isOpen, say, offerKept }: FirstTrip): Promise<void> {
  const info = await files.info()
  if (info !== null) say(info.language)
  const token = info?.startToken ?? null
  if (token !== null && (await files.open({ kind: 'token', token }))) return
  const [kept, samples] = await Promise.all([files.recoveries(), files.samples()])
  if (kept.length > 0) offerKept()
  const first = samples[0]
  if (first !== undefined && !isOpen()) await files.openSample(first.id)
}

export type Heeds = {
  readonly command: (name: string) => void
  readonly open: (token: string) => Promise<boolean>
}

const PATIENCE_MS = 15_000
const FIRST_PAUSE_MS = 250

/** Waits for what the host has to tell. A wait that breaks is begun again, at growing intervals: a busy machine is no reason to be forgotten. */
export async function listen(host: HostClient, heeds: Heeds): Promise<void> {
  let pauseMs = FIRST_PAUSE_MS
  for (;;) {
    const event = await host.call('nextEvent', {})
    if (event.ok) {
      pauseMs = FIRST_PAUSE_MS
      if (event.value.kind === 'menu') heeds.command(event.value.command)
      if (event.value.kind === 'open-requested') await heeds.open(event.value.token)
    } else {
      if (pauseMs > PATIENCE_MS) return
      await new Promise((resolve) => setTimeout(resolve, pauseMs))
      pauseMs *= 2
    }
  }
}
