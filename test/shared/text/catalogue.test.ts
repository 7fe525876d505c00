/** Both languages say the same things. */
import { describe, expect, it } from 'vitest'
import { ENGLISH, GERMAN } from '../../../shared/text/index.ts'

const english: Readonly<Record<string, string>> = ENGLISH
const german: Readonly<Record<string, string>> = GERMAN
const forms = (sentence: string): number => sentence.split(' | ').length
const placeholders = (sentence: string): readonly string[] =>
  [...new Set([...sentence.matchAll(/\{([A-Za-z][A-Za-z0-9]*)\}/g)].map((match) => match[1] ?? ''))].sort()

describe('the catalogues', () => {
  it('hold the same keys', () => {
    expect(Object.keys(german).sort()).toEqual(Object.keys(english).sort())
    expect(Object.keys(english).length).toBeGreaterThan(100)
  })

  it('use the same placeholders in both languages', () => {
    const different = Object.keys(english).filter(
      (key) => placeholders(english[key] ?? '').join() !== placeholders(german[key] ?? '').join(),
    )
    expect(different).toEqual([])
  })

  it('have the same plural forms, one or two, in both languages', () => {
    const odd = Object.keys(english).filter((key) => {
      const count = forms(english[key] ?? '')
      return count > 2 || count !== forms(german[key] ?? '')
    })
    expect(odd).toEqual([])
  })

  it('leave no sentence empty', () => {
    for (const catalogue of [english, german]) {
      expect(Object.keys(catalogue).filter((key) => (catalogue[key] ?? '').trim() === '')).toEqual([])
    }
  })

  it('have no unfinished braces', () => {
    for (const catalogue of [english, german]) {
      const bare = Object.entries(catalogue).filter(([, said]) =>
        /[{}]/.test(said.replaceAll(/\{[A-Za-z][A-Za-z0-9]*\}/g, '')),
      )
      expect(bare).toEqual([])
    }
  })

  it('never promise that anything is safe', () => {
    const promised = Object.entries(english).filter(([, said]) => /\bsafe(ly|ty)?\b/i.test(said))
    expect(promised).toEqual([])
    expect(Object.entries(german).filter(([, said]) => /\bsicher(heit)?\b/i.test(said))).toEqual([])
  })
})
