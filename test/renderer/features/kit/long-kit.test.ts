/** The kit table of a long kit: the rows in view are drawn, room is kept for the others, and nothing typed is lost. */
import { nextTick } from 'vue'
import { describe, expect, it } from 'vitest'
import KitRow from '../../../../renderer/features/kit/KitRow.vue'
import KitScreen from '../../../../renderer/features/kit/KitScreen.vue'
import type { Trip } from '../../../../shared/document/index.ts'
import { editableTrip, show } from '../../window.ts'

const { kit } = editableTrip()
const [pattern] = kit.pieces
if (pattern === undefined) throw new Error('the trip has no piece')

const tripOf = (count: number): Trip =>
  editableTrip({
    kit: {
      ...kit,
      pieces: Array.from({ length: count }, (_, at) => ({
        ...pattern,
        id: `peg-${at}`,
        name: `Peg ${at}`,
        belongsWith: [],
        apartFrom: [],
        locks: [],
      })),
    },
  })

type View = ReturnType<typeof show>['view']
const numbers = (view: View): readonly number[] =>
  view.findAll('[data-row]').map((row) => Number(row.attributes('data-row')))
const nameOfRow = (view: View, row: number) => view.get<HTMLInputElement>(`[data-row="${row}"] input[type=text]`)
const roomPx = (view: View): number =>
  view
    .findAll('tbody tr[aria-hidden] td')
    .reduce((sum, cell) => sum + Number.parseInt(String(cell.attributes('style')?.match(/(\d+)px/)?.[1]), 10), 0)

async function scrollTo(view: View, px: number): Promise<void> {
  const scroller = view.get('.kit-scroll')
  scroller.element.scrollTop = px
  await scroller.trigger('scroll')
}

describe('a long kit', () => {
  it('has a few rows in the page, says how many there are, and keeps room for the others', async () => {
    const { view } = show(KitScreen, { trip: tripOf(1000) })
    // The header is a row too.
    expect(view.get('table').attributes('aria-rowcount')).toBe('1001')
    for (const px of [0, 8000, 39_900]) {
      await scrollTo(view, px)
      const drawn = numbers(view).length
      expect(drawn).toBeGreaterThan(0)
      expect(drawn).toBeLessThan(30)
      // No height can be measured here: a row counts as 40 px.
      expect(roomPx(view)).toBe((1000 - drawn) * 40)
    }
  })

  it('draws the rows that are scrolled to, with their number for the ear, and changes the piece that stands there', async () => {
    const { view, documents } = show(KitScreen, { trip: tripOf(1000) })
    await scrollTo(view, 8000)
    // 8000 px / 40 px a row = row 200, counted from 0; for the ear the header is the first row and counting starts at 1.
    expect(numbers(view)).toContain(200)
    expect(numbers(view)).not.toContain(0)
    expect(view.get('[data-row="200"]').attributes('aria-rowindex')).toBe('202')
    await nameOfRow(view, 200).setValue('Long peg')
    await nameOfRow(view, 200).trigger('change')
    const changed = documents.trip?.kit.pieces.filter(({ name }, at) => name !== `Peg ${at}`)
    expect(changed?.map(({ id, name }) => [id, name])).toEqual([['peg-200', 'Long peg']])
  })

  it('draws only the row anew whose piece was changed', async () => {
    const { view } = show(KitScreen, { trip: tripOf(200) })
    // What Vue last drew of a row is another object once the row is drawn anew.
    const drawn = () => view.findAllComponents(KitRow).map((row) => row.vm.$.subTree)
    const before = drawn()
    await nameOfRow(view, 3).setValue('Long peg')
    await nameOfRow(view, 3).trigger('change')
    await nextTick()
    expect(drawn().flatMap((each, row) => (each === before[row] ? [] : [row]))).toEqual([3])
  })

  it('keeps the focus in the table when the row that has it leaves the view, and leaves it alone while the row stays', async () => {
    const { view } = show(KitScreen, { trip: tripOf(1000) })
    const field = nameOfRow(view, 0).element
    field.focus()
    await scrollTo(view, 40)
    expect(document.activeElement).toBe(field)
    await scrollTo(view, 8000)
    expect(document.activeElement).toBe(view.get('.kit-scroll').element)
  })

  it('shows a new piece, which stands at the end, with its name in focus and marked, so that typing replaces it', async () => {
    const { view, documents } = show(KitScreen, { trip: tripOf(1000) })
    await view.get('.button--strong').trigger('click')
    await nextTick()
    await nextTick()
    expect(documents.trip?.kit.pieces).toHaveLength(1001)
    const name = nameOfRow(view, 1000).element
    expect(document.activeElement).toBe(name)
    expect([name.selectionStart, name.selectionEnd]).toEqual([0, name.value.length])
  })

  it('shows all that a filter leaves, though it is less than was scrolled past', async () => {
    const { view } = show(KitScreen, { trip: tripOf(1000) })
    await scrollTo(view, 39_900)
    await view.get('#kit-filter').setValue('Peg 99')
    // Peg 99, 199 … 999 (10), and Peg 990 to 998 (9).
    expect(numbers(view)).toHaveLength(19)
  })
})
