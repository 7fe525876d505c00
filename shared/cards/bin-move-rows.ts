/** Pieces taken out of a bin or put back, set among the moves at the moment when their bin stands free. */
import type { Names } from './names.ts'
import type { CardInput, NightPacking } from './plan-parts.ts'

export type MoveRow = {
  /** Null for a piece that only leaves its bin. */
  readonly number: string | null
  readonly unit: string
  readonly from: string
  readonly to: string
  readonly door: string
}

type Changeover = NightPacking['changeover']

/** `rows` are those of the moves, in order. What stands free at no moment comes last and says so. */
export function withBinMoves(
  rows: readonly MoveRow[],
  changeover: Changeover,
  names: Names,
  { text }: CardInput,
  way: 'out' | 'back',
): readonly MoveRow[] {
  const binMoves = changeover.binMoves ?? []
  const rowsAfter = (done: number | null): readonly MoveRow[] =>
    binMoves
      .filter(({ afterMoves }) => afterMoves === done)
      .map((move): MoveRow => {
        const bin = `${names.number(move.binId)} ${names.unit(move.binId)}`
        const inside = text.t(done === null ? 'cards.place.inBarredBin' : 'cards.place.inBin', { bin })
        const away = text.t(`cards.away.${move.state}`)
        const [from, to] = way === 'out' ? [inside, away] : [away, inside]
        return { number: null, unit: names.piece(move.pieceId), from, to, door: '' }
      })
  return [...rowsAfter(0), ...rows.flatMap((row, index) => [row, ...rowsAfter(index + 1)]), ...rowsAfter(null)]
}

/** "3." for a move, nothing for a piece of a bin: moves are counted, pieces are not. */
export const moveNumbers = (rows: readonly MoveRow[]): readonly string[] => {
  let count = 0
  return rows.map((row) => (row.number === null ? '' : `${++count}.`))
}
