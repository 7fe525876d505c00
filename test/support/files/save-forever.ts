/** A program to be killed: saves one file again and again and says each save that is done. `argv`: file, bytes, `atomic` or `plain`. */
import { writeSync } from 'node:fs'
import { readFile, writeFile } from 'node:fs/promises'
import { saveAtomically, sha256Of } from '../../../electron/files/atomic-save.ts'
import { NODE_CALLS } from '../../../electron/files/calls.ts'

const [path = '', size = '0', way = 'atomic'] = process.argv.slice(2)
const filler = Buffer.from('x'.repeat(Number(size)))
/** Put together without work, so that most of the time is spent in saving. */
const content = (number: number): Buffer =>
  Buffer.concat([Buffer.from(`{"number":${number},"filler":"`), filler, Buffer.from(`","end":${number}}`)])

let expected = sha256Of(await readFile(path))
const first = Number(JSON.parse(await readFile(path, 'utf8')).number)
for (let number = first + 1; ; number += 1) {
  if (way === 'plain') {
    await writeFile(path, content(number))
  } else {
    const saved = await saveAtomically(NODE_CALLS, { path, bytes: content(number), expected, windows: false })
    if (!saved.ok) throw new Error(JSON.stringify(saved.problem))
    expected = saved.value.sha256
  }
  writeSync(1, `${number}\n`)
}
