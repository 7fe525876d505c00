/** Saves one file once, as whoever runs this, and prints the outcome as JSON. */
import { readFile } from 'node:fs/promises'
import { saveAtomically, sha256Of } from '../../../electron/files/atomic-save.ts'
import { NODE_CALLS } from '../../../electron/files/calls.ts'

const path = process.argv[2] ?? ''
const now = await readFile(path).then(sha256Of, () => sha256Of(Buffer.from('unreadable')))
const saved = await saveAtomically(NODE_CALLS, {
  path,
  bytes: Buffer.from('{"new":true}'),
  expected: now,
  windows: false,
})
console.log(
  JSON.stringify(saved.ok ? { code: 'saved', path } : { code: saved.problem.code, path: saved.problem.params['path'] }),
)
