/** When a piece leaves its bin for the night, and comes back: after how many moves the bin first stands free. */
import { describe, expect, it } from 'vitest'
import { binMovesOf } from '../../../../shared/packing/changeover/bin-moves.ts'
import type { Spot, Step } from '../../../../shared/packing/changeover/moves.ts'
import { unitsOf } from '../../../../shared/packing/units.ts'
import type { NightState, PackBin, PackNight } from '../../../../shared/packing/index.ts'
import { plainBin, plainInput, plainNight, plainPiece } from '../../../support/generators/planted-load.ts'
import { away, cellBay, spot, startOf, taskOf } from '../../../support/generators/small-change.ts'

const crate: PackBin = plainBin('crate', [100, 100, 100], [90, 90, 90], { massG: 100 })
const nightOf = (id: string, states: Readonly<Record<string, NightState>>): PackNight => plainNight(id, { states })
const pieces = [
  plainPiece('lamp', [10, 10, 10], { binId: 'crate' }),
  plainPiece('rope', [10, 10, 10], { binId: 'crate' }),
  plainPiece('board', [100, 100, 100]),
]
const units = unitsOf(plainInput([], pieces, { bins: [crate] }))
/** The crate stands at the far end of a tunnel behind the board. */
const tunnel = cellBay('tunnel', [2, 1, 1], ['x-'])
const task = taskOf(
  [tunnel],
  [
    [spot(0, [1, 0, 0]), spot(0, [1, 0, 0])],
    [spot(0, [0, 0, 0]), away('bed')],
  ],
)
const boardOut: Step = { mover: 1, from: spot(0, [0, 0, 0]), to: away('bed'), window: 0 }
const boardIn: Step = { mover: 1, from: away('bed'), to: spot(0, [0, 0, 0]), window: 0 }

const out = (
  states: Readonly<Record<string, NightState>>,
  steps: readonly Step[] = [boardOut],
  start: readonly Spot[] = startOf(task),
  others: readonly PackNight[] = [],
) => {
  const night = nightOf('night', states)
  return binMovesOf(task, units, { all: [night, ...others], night }, { start, steps })
}

describe('pieces out of their bin', () => {
  it('leave it after the move that frees it, each with its state', () => {
    expect(out({ lamp: 'in-use', rope: 'outside', board: 'bed' })).toEqual([
      { pieceId: 'lamp', binId: 'crate', state: 'in-use', afterMoves: 1 },
      { pieceId: 'rope', binId: 'crate', state: 'outside', afterMoves: 1 },
    ])
  })

  it('leave it at once where it stands free', () => {
    const free = [spot(0, [1, 0, 0]), away('bed')]
    expect(out({ lamp: 'bed' }, [boardIn], free)).toEqual([
      { pieceId: 'lamp', binId: 'crate', state: 'bed', afterMoves: 0 },
    ])
  })

  it('never leave it where it never stands free', () => {
    expect(out({ lamp: 'in-use' }, [])).toEqual([
      { pieceId: 'lamp', binId: 'crate', state: 'in-use', afterMoves: null },
    ])
  })

  it('are only those that are elsewhere that night, and never a loose thing', () => {
    expect(out({ board: 'bed' })).toEqual([])
    expect(out({ lamp: 'stored', board: 'bed' })).toEqual([])
  })

  it('are none that stay at home on every night, for those never travel', () => {
    expect(out({ lamp: 'left-behind' })).toEqual([])
    expect(out({ lamp: 'left-behind' }, [boardOut], startOf(task), [nightOf('next', { lamp: 'left-behind' })])).toEqual(
      [],
    )
    expect(out({ lamp: 'left-behind' }, [boardOut], startOf(task), [nightOf('next', {})])).toEqual([
      { pieceId: 'lamp', binId: 'crate', state: 'left-behind', afterMoves: 1 },
    ])
  })
})
