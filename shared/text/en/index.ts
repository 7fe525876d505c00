/** All English sentences, one flat catalogue. */
import { window } from './window.ts'
import { cards } from './cards.ts'
import { command } from './command.ts'
import { hosts } from './hosts.ts'
import { document } from './document.ts'
import { findings } from './findings.ts'
import { steps } from './steps.ts'
import { packing } from './packing.ts'
import { night } from './night.ts'
import { nightHow } from './night-how.ts'
import { units } from './units.ts'
import { whatIf } from './what-if.ts'

export const ENGLISH = {
  ...window,
  ...cards,
  ...command,
  ...hosts,
  ...document,
  ...findings,
  ...steps,
  ...packing,
  ...night,
  ...nightHow,
  ...units,
  ...whatIf,
} as const
