/** Takes the lock of a file, says whether it got it, and stays. `argv`: folder of the locks, file. */
import { NODE_CALLS } from '../../../electron/files/calls.ts'
import { createLocks } from '../../../electron/files/keep/locks.ts'

const [folder = '', file = ''] = process.argv.slice(2)
const taken = await createLocks({ calls: NODE_CALLS, folder }).take(file)
process.send?.(taken.ok ? 'held' : taken.problem.code)
setInterval(() => undefined, 1000)
