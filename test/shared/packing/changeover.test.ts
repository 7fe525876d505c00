/** The moves between two layouts, against a search of every state there is. */
import { describe, expect, it } from 'vitest'
import { searchBothWays } from '../../../shared/packing/changeover/search.ts'
import { drawnCase, drawnTask } from '../../support/generators/move-case.ts'
import { fewestMoves } from '../../support/oracle/fewest-moves.ts'

const CASES = 200

describe('the moves between two layouts', () => {
  it(`are as few as a search of every state finds, in all of ${CASES} small cases that have a way, and none where none is`, () => {
    let solved = 0
    let waiting = 0
    let tried = 0
    for (let seed = 1; solved < CASES; seed++) {
      tried = seed
      const one = drawnCase(seed)
      const fewest = fewestMoves(one)
      const { there, back } = searchBothWays(drawnTask(one))
      const label = `case ${seed}`
      expect({ label, complete: there.complete }).toEqual({ label, complete: fewest !== null })
      if (fewest === null) continue
      solved++
      const moving = one.units.filter(({ from, to }) => from.bay !== to.bay || from.at.join() !== to.at.join()).length
      if (fewest > moving) waiting++
      expect({ label, moves: there.steps.length, optimal: there.optimal }).toEqual({
        label,
        moves: fewest,
        optimal: true,
      })
      expect({ label, back: back.complete, moves: back.steps.length }).toEqual({ label, back: true, moves: fewest })
    }
    console.log(`${solved} of ${tried} can be brought over; ${waiting} of them only with waiting`)
    expect(waiting).toBeGreaterThan(CASES / 5)
    expect(tried).toBeGreaterThan(solved)
  })
})
