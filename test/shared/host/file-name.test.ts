/** File names that every system takes. */
import { describe, expect, it } from 'vitest'
import { plainFileStem, tripFileName } from '../../../shared/host/file-name.ts'

describe('a file name', () => {
  it.each([
    ['Bats by the quarry', 'Bats by the quarry'],
    ['bats.trip.json', 'bats'],
    ['Bats.TRIP.JSON', 'Bats'],
    ['bats.json', 'bats'],
    ['bats.trip', 'bats.trip'],
    ['bats.json.old', 'bats.json.old'],
    ['icon', 'icon'],
    ['a/b\\c:d*e?f"g<h>i|j', 'a b c d e f g h i j'],
    ['../../etc/passwd', 'etc passwd'],
    ['  ..hidden', 'hidden'],
    ['ends with dots. . .', 'ends with dots'],
    ['two   spaces\tand\nlines', 'two spaces and lines'],
    ['turned\u202eround', 'turned round'],
    ['nothing\u0000here\u007f', 'nothing here'],
    ['lone \ud800 half', 'lone half'],
    ['Cafe\u0301', 'Caf\u00e9'],
    ['', 'trip'],
    [' . ', 'trip'],
    ['///', 'trip'],
    ['con', 'trip con'],
    ['LPT1', 'trip LPT1'],
    ['nul.txt', 'trip nul.txt'],
    ['com1.a.b', 'trip com1.a.b'],
    ['console', 'console'],
    ['com10', 'com10'],
    ['a con', 'a con'],
  ])('made of %j is %j', (name, stem) => {
    expect(plainFileStem(name)).toBe(stem)
  })

  it('is cut at fifty characters, a pair of surrogates counting as one, and never ends in a space', () => {
    expect(plainFileStem('x'.repeat(60))).toBe('x'.repeat(50))
    expect(Array.from(plainFileStem('\u{1f987}'.repeat(60)))).toHaveLength(50)
    expect(plainFileStem(`${'x'.repeat(49)} y`)).toBe('x'.repeat(49))
  })

  it('of a trip bears its ending once', () => {
    expect(tripFileName('bats.trip.json')).toBe('bats.trip.json')
    expect(tripFileName('')).toBe('trip.trip.json')
  })
})
