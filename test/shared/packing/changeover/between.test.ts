/** The moves told between two layouts written down by hand: who goes by which door, who waits where, and who is stuck. */
import { describe, expect, it } from 'vitest'
import { changeoversBetween } from '../../../../shared/packing/changeover/between.ts'
import { packModelOf } from '../../../../shared/packing/scene.ts'
import type {
  AwayPlace,
  Layout,
  Move,
  PackBin,
  PackBay,
  PackNight,
  PackPiece,
  Placement,
  Vec3,
} from '../../../../shared/packing/index.ts'
import { plainBin, plainInput, plainNight, plainPiece } from '../../../support/generators/planted-load.ts'
import { cellBay } from '../../../support/generators/small-change.ts'

const night: PackNight = plainNight('night')
const cube: Vec3 = [100, 100, 100]
const box = (id: string, change: Partial<PackPiece> = {}, sizeMm: Vec3 = cube): PackPiece =>
  plainPiece(id, sizeMm, { uprightEdges: [2], ...change })

const at = (unitId: string, bayId: string, cells: Vec3, sizeMm: Vec3 = cube): Placement => ({
  unitId,
  bayId,
  atMm: [cells[0] * 100, cells[1] * 100, cells[2] * 100],
  sizeMm,
  edges: [0, 1, 2],
})
const gone = (unitId: string, state: AwayPlace['state']): AwayPlace => ({ unitId, state })
const layout = (...places: readonly (Placement | AwayPlace)[]): Layout => ({
  placements: places.filter((place) => 'bayId' in place),
  away: places.filter((place) => 'state' in place),
})

type Asked = {
  readonly bays: readonly PackBay[]
  readonly pieces: readonly PackPiece[]
  readonly from: Layout
  readonly to: Layout
  readonly night?: PackNight
}
const between = ({ bays, pieces, from, to, night: own = night }: Asked) =>
  changeoversBetween({
    model: packModelOf(plainInput(bays, pieces, { nights: [own] })),
    from,
    to,
    night: own,
    massG: (unitId) => pieces.find(({ id }) => id === unitId)?.massG ?? 0,
    shouldStop: () => false,
  })
const move = (from: Move['from'], to: Move['to'], door: string | null, waits = false): Move => ({
  unitId: from.unitId,
  from,
  to,
  waits,
  door,
})

const pit = cellBay('pit', [4, 1, 2], ['z+'])
const tunnel = cellBay('tunnel', [3, 1, 1], ['x-', 'x+'], { originCells: [50, 0, 0] })

describe('moves between two layouts', () => {
  it('are told with both places and the door of the opening used, and backwards for the way back', () => {
    const [a, b, c] = [at('a', 'tunnel', [0, 0, 0]), at('b', 'tunnel', [1, 0, 0]), at('c', 'tunnel', [2, 0, 0])]
    const [a2, c2] = [at('a', 'pit', [1, 0, 0]), gone('c', 'bed')]
    const { there, back } = between({
      bays: [pit, tunnel],
      pieces: [box('c'), box('b'), box('a')],
      from: layout(a, b, c),
      to: layout(a2, b, c2),
    })
    // What becomes the bed goes last.
    expect(there).toEqual({
      moves: [move(a, a2, 'door tunnel x-'), move(c, c2, 'door tunnel x+')],
      binMoves: [],
      lowerBound: 2,
      optimal: true,
      stuckUnitIds: [],
    })
    expect(back.moves).toEqual([move(c2, c, 'door tunnel x+'), move(a2, a, 'door pit z+')])
    expect(back).toMatchObject({ lowerBound: 2, optimal: true, stuckUnitIds: [] })
  })

  it('leave what becomes part of the bed to the last, and only that', () => {
    const asked = (ids: readonly string[], state: (id: string) => AwayPlace['state']) =>
      between({
        bays: [pit],
        pieces: ids.map((id) => box(id)),
        from: layout(...ids.map((id, x) => at(id, 'pit', [x, 0, 0]))),
        to: layout(...ids.map((id) => gone(id, state(id)))),
      }).there.moves.map(({ unitId }) => unitId)
    const bed = (id: string): AwayPlace['state'] => (id.startsWith('quilt') ? 'bed' : 'outside')
    expect(asked(['quilt', 'pan', 'quilt too', 'pot'], bed)).toEqual(['pan', 'pot', 'quilt', 'quilt too'])
    expect(asked(['pan', 'quilt'], () => 'in-use')).toEqual(['pan', 'quilt'])
  })

  it('are none for what stays, and pass no door from one place away to another', () => {
    const [a, b, b2] = [at('a', 'pit', [0, 0, 0]), gone('b', 'in-use'), gone('b', 'outside')]
    const stay = between({ bays: [pit], pieces: [box('a'), box('b')], from: layout(a, b), to: layout(a, b) })
    expect([stay.there.moves, stay.back.moves]).toEqual([[], []])
    const { there } = between({ bays: [pit], pieces: [box('a'), box('b')], from: layout(a, b), to: layout(a, b2) })
    expect(there.moves).toEqual([move(b, b2, null)])
  })

  it('leave aside what the first layout does not hold', () => {
    const [a, a2] = [at('a', 'pit', [0, 0, 0]), at('a', 'pit', [2, 0, 0])]
    const { there } = between({
      bays: [pit],
      pieces: [box('late'), box('a')],
      from: layout(a),
      to: layout(a2, at('late', 'pit', [0, 0, 0])),
    })
    expect(there.moves).toEqual([move(a, a2, 'door pit z+')])
    expect(there.stuckUnitIds).toEqual([])
  })
})

describe('two that trade places', () => {
  const narrow = cellBay('pit', [2, 1, 1], ['z+'])
  const [a, b] = [at('a', 'pit', [0, 0, 0]), at('b', 'pit', [1, 0, 0])]
  const [a2, b2] = [at('a', 'pit', [1, 0, 0]), at('b', 'pit', [0, 0, 0])]
  const trade = (
    bays: readonly PackBay[],
    change: {
      readonly piece?: Partial<PackPiece>
      readonly night?: Partial<PackNight>
      readonly also?: readonly [PackPiece, Placement][]
    } = {},
  ) => {
    const also = change.also ?? []
    return between({
      bays,
      pieces: [box('a', change.piece), box('b', change.piece), ...also.map(([piece]) => piece)],
      from: layout(a, b, ...also.map(([, place]) => place)),
      to: layout(a2, b2, ...also.map(([, place]) => place)),
      night: { ...night, ...change.night },
    })
  }
  /** Where one waits: the only move that waits, of three. */
  const waitsAt = (found: ReturnType<typeof between>): Move['to'] | null => {
    for (const way of [found.there, found.back]) {
      if (way.moves.length === 0) continue
      expect(way.stuckUnitIds).toEqual([])
      expect(way.moves.map(({ waits }) => waits).toSorted()).toEqual([false, false, true])
    }
    return found.there.moves.find(({ waits }) => waits)?.to ?? null
  }

  it('are stuck, and said to be, where nothing may wait', () => {
    const { there, back } = trade([narrow])
    expect(there).toMatchObject({ moves: [], optimal: false, stuckUnitIds: ['a', 'b'] })
    expect(back).toMatchObject({ moves: [], optimal: false, stuckUnitIds: ['a', 'b'] })
  })

  it('take turns outside where the site allows it', () => {
    const { there, back } = trade([narrow], { night: { outsideStorage: true } })
    expect(there).toMatchObject({ lowerBound: 3, optimal: true, stuckUnitIds: [] })
    const [first, second, third] = there.moves
    expect([first?.waits, second?.waits, third?.waits]).toEqual([true, false, false])
    expect(first?.to).toEqual({ unitId: first?.unitId, state: 'outside' })
    expect(third?.from).toEqual(first?.to)
    expect([first, second, third].map((each) => each?.door)).toEqual(['door pit z+', 'door pit z+', 'door pit z+'])
    expect(third?.unitId).toBe(first?.unitId)
    expect(third?.to).toEqual(first?.unitId === 'a' ? a2 : b2)
    expect(back.moves).toHaveLength(3)
    expect(back.moves[0]?.waits).toBe(true)
    expect(back.moves[2]?.to).toEqual(back.moves[0]?.unitId === 'a' ? a : b)
  })

  it('wait on the first free floor, in the order of the bays', () => {
    const spare = cellBay('spare', [3, 1, 1], ['z+'], { originCells: [20, 0, 0] })
    const later = cellBay('later', [3, 1, 1], ['z+'], { originCells: [40, 0, 0] })
    const waits = waitsAt(trade([narrow, spare, later]))
    expect(waits).toMatchObject({ bayId: 'spare', atMm: [0, 0, 0], sizeMm: cube, edges: [0, 1, 2] })
    // Where the first cell is taken the next is free.
    const taken = waitsAt(trade([narrow, spare, later], { also: [[box('c'), at('c', 'spare', [0, 0, 0])]] }))
    expect(taken).toMatchObject({ bayId: 'spare', atMm: [100, 0, 0] })
  })

  it('do not wait in a bay of the site, nor where things must be soft or lighter', () => {
    const spare = (id: string, x: number, change: Partial<PackBay> = {}): PackBay =>
      cellBay(id, [1, 1, 1], ['z+'], { originCells: [x, 0, 0], ...change })
    const second = spare('second', 40)
    const waitsIn = (first: Partial<PackBay>, piece: Partial<PackPiece> = {}): unknown => {
      const place = waitsAt(trade([narrow, spare('first', 20, first), second], { piece }))
      return place !== null && 'bayId' in place ? place.bayId : null
    }
    expect(waitsIn({})).toBe('first')
    expect(waitsIn({ belongsTo: 'site' })).toBe('second')
    expect(waitsIn({ softOnly: true })).toBe('second')
    expect(waitsIn({ softOnly: true }, { form: 'soft' })).toBe('first')
    expect(waitsIn({ unitLimitG: 999 })).toBe('second')
    expect(waitsIn({ unitLimitG: 1000 })).toBe('first')
    expect(waitsIn({ sizeMm: [90, 100, 100] })).toBe('second')
    expect(trade([narrow, spare('first', 20, { belongsTo: 'site' })]).there.stuckUnitIds).toEqual(['a', 'b'])
  })

  it('wait turned where that is how they fit', () => {
    const slim = cellBay('slim', [1, 2, 1], ['z+'], { originCells: [20, 0, 0] })
    const long: Vec3 = [200, 100, 100]
    const wide = cellBay('pit', [4, 1, 1], ['z+'])
    const found = between({
      bays: [wide, slim],
      pieces: [box('a', {}, long), box('b', {}, long)],
      from: layout(at('a', 'pit', [0, 0, 0], long), at('b', 'pit', [2, 0, 0], long)),
      to: layout(at('a', 'pit', [2, 0, 0], long), at('b', 'pit', [0, 0, 0], long)),
    })
    expect(waitsAt(found)).toMatchObject({ bayId: 'slim', atMm: [0, 0, 0], sizeMm: [100, 200, 100], edges: [1, 0, 2] })
  })

  it('wait on other things only where no floor is free and what is beneath bears them', () => {
    const deep = cellBay('deep', [1, 1, 2], ['z+'], { originCells: [20, 0, 0] })
    const on = (bearsG: number | null) =>
      trade([narrow, deep], { also: [[box('c', { bearsG }), at('c', 'deep', [0, 0, 0])]] })
    expect(waitsAt(on(null))).toMatchObject({ bayId: 'deep', atMm: [0, 0, 100] })
    expect(waitsAt(on(1000))).toMatchObject({ bayId: 'deep', atMm: [0, 0, 100] })
    expect(on(999).there.stuckUnitIds).toEqual(['a', 'b'])
    const floor = cellBay('floor', [1, 1, 1], ['z+'], { originCells: [40, 0, 0] })
    const either = trade([narrow, deep, floor], { also: [[box('c'), at('c', 'deep', [0, 0, 0])]] })
    expect(waitsAt(either)).toMatchObject({ bayId: 'floor' })
  })

  it('wait where nothing has its last place, if there is such floor', () => {
    // The spare bay's first cell is where d is to go; the second is free for good.
    const spare = cellBay('spare', [2, 1, 1], ['z+'], { originCells: [20, 0, 0] })
    const found = between({
      bays: [narrow, spare],
      pieces: [box('a'), box('b'), box('d')],
      from: layout(a, b, gone('d', 'in-use')),
      to: layout(a2, b2, at('d', 'spare', [0, 0, 0])),
    })
    const waits = found.there.moves.find((each) => each.waits)
    expect(found.there.stuckUnitIds).toEqual([])
    expect(waits?.to).toMatchObject({ bayId: 'spare', atMm: [100, 0, 0] })
    expect(found.there.moves).toHaveLength(4)
  })
})

describe('pieces in bins', () => {
  const crate: PackBin = plainBin('crate', cube, [90, 90, 90], { massG: 100 })
  const dead = cellBay('dead', [2, 1, 1], ['x-'])
  const here = at('crate', 'dead', [1, 0, 0])
  const board = at('board', 'dead', [0, 0, 0])
  const own = { ...night, states: { lamp: 'in-use', board: 'bed' } } as const
  const asked = (to: Layout) =>
    changeoversBetween({
      model: packModelOf(
        plainInput([dead], [box('lamp', { binId: 'crate' }, [50, 50, 50]), box('board')], {
          bins: [crate],
          nights: [own],
        }),
      ),
      from: layout(here, board),
      to,
      night: own,
      massG: () => 100,
      shouldStop: () => false,
    })
  const lamp = (afterMoves: number | null) => [{ pieceId: 'lamp', binId: 'crate', state: 'in-use', afterMoves }]

  it('leave when the way to the bin is free, and come back before it is shut', () => {
    const { there, back } = asked(layout(here, gone('board', 'bed'), gone('lamp', 'in-use')))
    expect([there.moves.length, there.binMoves]).toEqual([1, lamp(1)])
    expect([back.moves.length, back.binMoves]).toEqual([1, lamp(0)])
  })

  it('are taken from a bin that has no place by night as it stood, and back into one that stands nowhere', () => {
    const { there, back } = asked(layout(gone('board', 'bed'), gone('lamp', 'in-use')))
    expect(there.binMoves).toEqual(lamp(1))
    expect(back.binMoves).toEqual(lamp(0))
    const stays = asked(layout(here, board, gone('lamp', 'in-use')))
    expect([stays.there.binMoves, stays.back.binMoves]).toEqual([lamp(null), lamp(null)])
  })
})

describe('a layout in which something has no place', () => {
  it('has it stand in the way going, and not coming back', () => {
    const dead = cellBay('dead', [2, 1, 1], ['x-'])
    const [u, v, v2] = [at('u', 'dead', [0, 0, 0]), at('v', 'dead', [1, 0, 0]), gone('v', 'in-use')]
    const { there, back } = between({
      bays: [dead],
      pieces: [box('u'), box('v')],
      from: layout(u, v),
      to: layout(v2),
    })
    expect(there).toMatchObject({ moves: [], stuckUnitIds: ['v'] })
    expect(back).toMatchObject({ moves: [move(v2, v, 'door dead x-')], stuckUnitIds: [] })
  })

  it('keeps its own place out of the list, whatever else moves', () => {
    const [u, v, v2] = [at('u', 'pit', [0, 0, 0]), at('v', 'pit', [1, 0, 0]), at('v', 'pit', [3, 0, 0])]
    const { there, back } = between({ bays: [pit], pieces: [box('u'), box('v')], from: layout(u, v), to: layout(v2) })
    expect(there).toMatchObject({ moves: [move(v, v2, 'door pit z+')], stuckUnitIds: [] })
    expect(back).toMatchObject({ moves: [move(v2, v, 'door pit z+')], stuckUnitIds: [] })
  })

  it('brings the rest over in the order that leaves each a way', () => {
    const dead = cellBay('dead', [2, 1, 1], ['x-'], { originCells: [20, 0, 0] })
    const [w, w2] = [at('w', 'dead', [1, 0, 0]), gone('w', 'in-use')]
    const stays = at('s', 'dead', [0, 0, 0])
    const { there, back } = between({
      bays: [dead, pit],
      pieces: [box('u'), box('w'), box('s')],
      from: layout(at('u', 'pit', [0, 0, 0]), w, at('s', 'pit', [2, 0, 0])),
      to: layout(w2, stays),
    })
    expect(there.stuckUnitIds).toEqual([])
    expect(there.moves).toHaveLength(2)
    expect(there.moves[0]?.unitId).toBe('w')
    expect(back.stuckUnitIds).toEqual([])
    expect(back.moves.map(({ unitId }) => unitId)).toEqual(['s', 'w'])
  })
})
