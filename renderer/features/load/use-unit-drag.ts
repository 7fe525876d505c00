/** One unit dragged by the pointer over a drawing: a press that stays still chooses it, T turns it on the way, Escape leaves it where it was. */
import { onBeforeUnmount } from 'vue'

export type DragHands = {
  readonly choose: (id: string) => void
  readonly take: (id: string) => void
  /** How far the pointer has gone since the last time, px. */
  readonly move: (byPx: readonly [number, number], event: PointerEvent) => void
  readonly turn: () => void
  readonly drop: () => void
  readonly cancel: () => void
}

export type UnitDrag = {
  readonly down: (event: PointerEvent, id: string) => void
  readonly move: (event: PointerEvent) => void
  readonly up: () => void
  readonly lost: () => void
  readonly pressing: () => boolean
}

/** A pointer that has gone no farther than this has pressed, px. */
export const CLICK_PX = 4

export function useUnitDrag(hands: DragHands): UnitDrag {
  let pressed: { readonly id: string; x: number; y: number; dragging: boolean } | null = null

  function end(): void {
    pressed = null
    globalThis.removeEventListener('keydown', onKey, true)
  }
  function lost(): void {
    if (pressed?.dragging === true) hands.cancel()
    end()
  }
  function onKey(event: KeyboardEvent): void {
    const key = event.key.toLowerCase()
    if (key !== 'escape' && key !== 't') return
    event.preventDefault()
    event.stopPropagation()
    if (key === 't') hands.turn()
    else lost()
  }
  onBeforeUnmount(end)

  return {
    down: (event, id) => {
      if (event.button !== 0) return
      pressed = { id, x: event.clientX, y: event.clientY, dragging: false }
    },
    move: (event) => {
      if (pressed === null) return
      const by = [event.clientX - pressed.x, event.clientY - pressed.y] as const
      if (!pressed.dragging) {
        if (Math.hypot(...by) < CLICK_PX) return
        pressed.dragging = true
        globalThis.addEventListener('keydown', onKey, true)
        hands.take(pressed.id)
      }
      hands.move(by, event)
      pressed.x = event.clientX
      pressed.y = event.clientY
    },
    up: () => {
      if (pressed === null) return
      if (pressed.dragging) hands.drop()
      else hands.choose(pressed.id)
      end()
    },
    lost,
    pressing: () => pressed !== null,
  }
}
