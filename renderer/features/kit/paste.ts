/** Rows pasted from a spreadsheet, read as pieces: name, length, width, height, mass; tabs or semicolons between. */
import { freeId } from '../../../shared/document/index.ts'
import type { Piece } from '../../../shared/document/index.ts'
import type { Text } from '../../../shared/text/index.ts'

export type PastedRow =
  | {
      readonly ok: true
      readonly name: string
      readonly sizeMm: readonly [number, number, number]
      readonly massG: number
    }
  | { readonly ok: false; readonly line: number; readonly said: string; readonly why: string }

const COLUMNS = 5

/** Each line as a row, or with the reason why it is none; a first line of headings is passed over. */
export function readPasted(pasted: string, text: Text): readonly PastedRow[] {
  const lines = pasted
    .split(/\r?\n/)
    .map((said, index) => ({ said, line: index + 1 }))
    .filter(({ said }) => said.trim() !== '')
  return lines.flatMap(({ said, line }): readonly PastedRow[] => {
    const cells = said.split(said.includes('\t') ? '\t' : ';').map((cell) => cell.trim())
    if (line === 1 && cells.length >= COLUMNS && cells.slice(1).every((cell) => !/\d/.test(cell))) return []
    return [readRow(cells, said, line, text)]
  })
}

function readRow(cells: readonly string[], said: string, line: number, text: Text): PastedRow {
  const refuse = (why: string): PastedRow => ({ ok: false, line, said, why })
  const [name, ...numbers] = cells
  if (name === undefined || name === '' || numbers.length < COLUMNS - 1) return refuse(text.t('window.paste.columns'))
  const lengths: number[] = []
  for (const cell of numbers.slice(0, 3)) {
    const length = text.parse('length', cell)
    if (!length.ok) return refuse(text.problem(length.problem))
    if (length.value < 1) return refuse(text.t('window.paste.size'))
    lengths.push(length.value)
  }
  const mass = text.parse('mass', numbers[3] ?? '')
  if (!mass.ok) return refuse(text.problem(mass.problem))
  const [a, b, c] = lengths
  if (a === undefined || b === undefined || c === undefined) return refuse(text.t('window.paste.columns'))
  return { ok: true, name, sizeMm: [a, b, c], massG: mass.value }
}

/** An id that is not taken, from a name: 'Water can 10 l' becomes `water-can-10-l`. */
export function idFrom(name: string, taken: ReadonlySet<string>): string {
  const stem = name
    .normalize('NFKD')
    .toLowerCase()
    .replaceAll(/[^a-z0-9]+/g, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 40)
  const base = stem === '' ? 'piece' : stem
  return taken.has(base) ? freeId(taken, base) : base
}

/** A rigid piece that may lie on any side, wanted in the evening: all of it can be changed in the table. */
export const plainPiece = (
  id: string,
  row: { readonly name: string; readonly sizeMm: readonly [number, number, number]; readonly massG: number },
): Piece => ({
  id,
  name: row.name,
  sizeMm: row.sizeMm,
  massG: row.massG,
  form: 'rigid',
  squeezeTo01: 1,
  upright: ['length', 'width', 'height'],
  access: ['evening'],
  usedIn: [],
  atNight: 'stored',
  atNightOn: [],
  traits: {},
  purpose: 'other',
  belongsWith: [],
  apartFrom: [],
  locks: [],
  spare: false,
})
