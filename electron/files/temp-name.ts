/** Names of half-made files: who made them can be told, so that only those of the dead are swept. */
import { createHash, randomBytes } from 'node:crypto'
import { hostname } from 'node:os'

const machine = createHash('sha256').update(hostname()).digest('hex').slice(0, 8)
const SHAPE = /^\.kipstow-([0-9a-f]{8})-(\d{1,10})-[0-9a-f]{16}\.tmp$/

/** Short and independent of the file's own name, which may be as long as the system allows. */
export const tempName = (): string => `.kipstow-${machine}-${process.pid}-${randomBytes(8).toString('hex')}.tmp`

/** Who made a half-made file; null for any other name. */
export function readTempName(name: string): { readonly sameMachine: boolean; readonly pid: number } | null {
  const match = SHAPE.exec(name)
  return match === null ? null : { sameMachine: match[1] === machine, pid: Number(match[2]) }
}

/** True while a process of this number runs on this machine. */
export function isAlive(pid: number): boolean {
  if (!Number.isInteger(pid) || pid <= 0) return false
  try {
    process.kill(pid, 0)
    return true
  } catch (cause) {
    return typeof cause === 'object' && cause !== null && 'code' in cause && cause.code === 'EPERM'
  }
}
