/** Making folders on a real disk, and asking beforehand whether that can work. */
import { mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { NODE_CALLS } from '../../../electron/files/calls.ts'
import { checkFolder } from '../../../electron/files/check-folder.ts'

const base = mkdtempSync(join(tmpdir(), 'kipstow-folders-'))
afterAll(() => rmSync(base, { recursive: true, force: true }))
writeFileSync(join(base, 'file'), 'mine')

const codeOfMaking = (path: string): Promise<unknown> =>
  NODE_CALLS.mkdir(path).then(
    () => null,
    (cause: unknown) => (cause as NodeJS.ErrnoException).code,
  )

describe('making a folder', () => {
  it('makes those above it too, and is content with one that is there', async () => {
    for (const _ of ['first', 'again']) expect(await codeOfMaking(join(base, 'a/b/c'))).toBeNull()
    expect(statSync(join(base, 'a/b/c')).isDirectory()).toBe(true)
  })

  it('is refused where a file stands in the way, which stays', async () => {
    expect(await codeOfMaking(join(base, 'file'))).toBe('EEXIST')
    expect(await codeOfMaking(join(base, 'file/below'))).toBe('ENOTDIR')
    expect(statSync(join(base, 'file')).size).toBe(4)
  })

  it.runIf(process.platform === 'linux')('comes back where a folder refuses new ones as not found', async () => {
    expect(await codeOfMaking('/proc/kipstow/deeper')).toBe('ENOENT')
  })
})

describe('asking whether a folder can be written', () => {
  const ask = async (path: string, mayWrite = NODE_CALLS.mayWrite): Promise<string | null> => {
    const checked = await checkFolder({ ...NODE_CALLS, mayWrite }, path)
    return checked.ok ? null : `${checked.problem.code} ${String(checked.problem.params['path'])}`
  }

  it('answers for the nearest one that is there, and makes none', async () => {
    expect(await ask(join(base, 'x/y/z'))).toBeNull()
    expect(readdirSync(base)).not.toContain('x')
  })

  it('names the file that stands in the way', async () => {
    expect(await ask(join(base, 'file'))).toBe(`folder-is-file ${join(base, 'file')}`)
    expect(await ask(join(base, 'file/x/y'))).toBe(`folder-is-file ${join(base, 'file')}`)
  })

  it('names the folder that this user may not write', async () => {
    const refuse = (): Promise<void> => Promise.reject(Object.assign(new Error('no'), { code: 'EACCES' }))
    expect(await ask(join(base, 'x/y'), refuse)).toBe(`file-not-allowed ${base}`)
  })
})
