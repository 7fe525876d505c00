/** Lists of kit to begin with: every piece is one that a trip may hold, named in both languages, and added by one undo. */
import { flushPromises } from '@vue/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import KitScreen from '../../../../renderer/features/kit/KitScreen.vue'
import { LIST_NAMES, pieceOf, rowsOf } from '../../../../renderer/features/kit/starter-lists.ts'
import { applyEdit } from '../../../../shared/document/index.ts'
import { createText } from '../../../../shared/text/index.ts'
import { editableTrip, show } from '../../window.ts'

const trip = editableTrip()
const rows = LIST_NAMES.flatMap((list) => rowsOf(list))

let shown: ReturnType<typeof show> | null = null
afterEach(() => shown?.view.unmount())

describe('a list to begin with', () => {
  it.each(rows)('holds %s as a piece that a trip may hold, named in both languages', (id, row) => {
    for (const language of ['en', 'de'] as const)
      expect(createText(language, 'metric').has(`window.list.piece.${id}`)).toBe(true)
    const added = applyEdit(trip, { kind: 'add-piece', piece: pieceOf(`new-${id}`, id, row) })
    expect(added.ok ? 'taken' : added.problem).toBe('taken')
  })

  it('adds what is marked as one entry of the history, and leaves out what is there', async () => {
    shown = show(KitScreen, { trip })
    const press = async (root: ParentNode, words: string): Promise<void> => {
      const button = [...root.querySelectorAll('button')].find(({ textContent }) => textContent?.trim() === words)
      if (button === undefined) throw new Error(`no button says ${words}`)
      button.click()
      await flushPromises()
    }
    await press(document.body, 'Add from a list')
    const dialog = document.querySelector('[role=dialog]')
    if (dialog === null) throw new Error('no dialog is open')
    expect(dialog.querySelector('button:disabled')?.textContent).toContain('Nothing marked')
    for (const box of [...dialog.querySelectorAll<HTMLInputElement>('input:not(:disabled)')].slice(0, 3)) box.click()
    await flushPromises()
    await press(dialog, 'Add 3 pieces')
    expect(shown.documents.trip?.kit.pieces).toHaveLength(trip.kit.pieces.length + 3)
    await press(document.body, 'Add from a list')
    expect(document.querySelectorAll('[role=dialog] input:disabled')).toHaveLength(3)
    shown.documents.undo()
    expect(shown.documents.trip?.kit.pieces).toHaveLength(trip.kit.pieces.length)
  })
})
