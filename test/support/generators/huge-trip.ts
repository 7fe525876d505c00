/** A trip far larger than anyone packs: pieces and nights of a sample, again and again under ids of their own. */
import { readFileSync } from 'node:fs'

type Loose = Record<string, unknown>
type Sample = Loose & {
  kit: Loose & { pieces: (Loose & { id: string; bedding?: unknown })[] }
  nights: (Loose & { id: string; date: string })[]
}

const SMALL_MM = [60, 40, 20] as const
const DAY_MS = 86_400_000

/** The file's text. Added pieces are small and loose; nights follow each other day by day. */
export function hugeTrip(pieceCount: number, nightCount: number): string {
  const file = new URL('../../../assets/samples/bats-by-the-quarry.trip.json', import.meta.url)
  const trip = JSON.parse(readFileSync(file, 'utf8')) as Sample
  const plain = trip.kit.pieces.filter((piece) => piece.bedding === undefined && piece['binId'] === undefined)
  const more = Array.from({ length: pieceCount - trip.kit.pieces.length }, (_, index) => {
    const model = plain[index % plain.length]
    return { ...model, id: `more-${index}`, sizeMm: SMALL_MM, massG: 20, belongsWith: [], apartFrom: [], locks: [] }
  })
  const [first] = trip.nights
  if (first === undefined) throw new Error('the sample has no night')
  const start = Date.parse(first.date)
  const nights = Array.from({ length: nightCount }, (_, index) => ({
    ...trip.nights[index % trip.nights.length],
    id: `night-${index + 1}`,
    date: new Date(start + index * DAY_MS).toISOString().slice(0, 10),
  }))
  return JSON.stringify({ ...trip, kit: { ...trip.kit, pieces: [...trip.kit.pieces, ...more] }, nights })
}
