/** Dragging one unit: what is a press and what a drag, and what the keys do on the way. */
import { mount } from '@vue/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import { useUnitDrag } from '../../../../renderer/features/load/use-unit-drag.ts'
import type { UnitDrag } from '../../../../renderer/features/load/use-unit-drag.ts'

let host: ReturnType<typeof mount> | null = null
afterEach(() => host?.unmount())

function begin(): { readonly drag: UnitDrag; readonly done: string[] } {
  const done: string[] = []
  let made: UnitDrag | null = null
  host = mount({
    setup() {
      made = useUnitDrag({
        choose: (id) => done.push(`choose ${id}`),
        take: (id) => done.push(`take ${id}`),
        move: ([x, y], { shiftKey }) => done.push(`move ${x} ${y}${shiftKey ? ' lift' : ''}`),
        turn: () => done.push('turn'),
        drop: () => done.push('drop'),
        cancel: () => done.push('cancel'),
      })
      return () => null
    },
  })
  if (made === null) throw new Error('the drag is made while the view is set up')
  return { drag: made, done }
}
const at = (clientX: number, clientY: number, shiftKey = false): PointerEvent =>
  new PointerEvent('pointermove', { clientX, clientY, button: 0, shiftKey })

describe('a unit under the pointer', () => {
  it('is chosen where the pointer stays still', () => {
    const { drag, done } = begin()
    drag.down(at(10, 10), 'box')
    drag.move(at(11, 12))
    drag.up()
    expect(done).toEqual(['choose box'])
  })

  it('is taken, moved step by step, lifted with Shift and put down', () => {
    const { drag, done } = begin()
    drag.down(at(10, 10), 'box')
    drag.move(at(20, 10))
    drag.move(at(20, 4, true))
    drag.up()
    expect(done).toEqual(['take box', 'move 10 0', 'move 0 -6 lift', 'drop'])
    expect(drag.pressing()).toBe(false)
  })

  it('turns on T and stays where it was on Escape', () => {
    const { drag, done } = begin()
    drag.down(at(10, 10), 'box')
    drag.move(at(20, 10))
    globalThis.dispatchEvent(new KeyboardEvent('keydown', { key: 'T' }))
    globalThis.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape' }))
    drag.up()
    globalThis.dispatchEvent(new KeyboardEvent('keydown', { key: 't' }))
    expect(done).toEqual(['take box', 'move 10 0', 'turn', 'cancel'])
  })

  it('is let go where the drag is taken away', () => {
    const { drag, done } = begin()
    drag.down(at(10, 10), 'box')
    drag.move(at(20, 10))
    drag.lost()
    expect(done.at(-1)).toBe('cancel')
  })
})
