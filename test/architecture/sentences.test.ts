/** Each sentence has one home: a key that two areas define would silently show the later one, with the other's values missing. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'

const text = join(import.meta.dirname, '../../shared/text')

describe.each(['en', 'de'])('the sentences in %s', (language) => {
  it('are each defined in one file, once', () => {
    const homes = new Map<string, string[]>()
    const files = readdirSync(join(text, language)).filter((name) => name !== 'index.ts')
    for (const file of files)
      for (const [, key = ''] of readFileSync(join(text, language, file), 'utf8').matchAll(/^ {2}'?([\w.-]+)'?:/gm))
        homes.set(key, [...(homes.get(key) ?? []), file])
    expect(files.length).toBeGreaterThan(5)
    expect(homes.size).toBeGreaterThan(500)
    expect([...homes].filter(([, where]) => where.length > 1)).toEqual([])
  })
})
