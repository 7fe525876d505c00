/** A long table draws the rows in view and a few beside them, and keeps room for the rest. A short one draws all, so that the browser's own search finds everything. */
import { computed, onBeforeUnmount, onMounted, ref } from 'vue'
import type { ComputedRef, Ref } from 'vue'

/** More rows than this are a long table. */
export const MOST_ROWS_DRAWN = 150
/** Rows drawn above and below those in view: the next ones that Tab and the wheel come to. */
const ROWS_BESIDE = 4
/** Height of a row before one has been measured, px. */
const USUAL_ROW_PX = 40

export type RowsInView = {
  /** The rows drawn, from `first` up to, but not with, `end`. */
  readonly first: ComputedRef<number>
  readonly end: ComputedRef<number>
  /** Room kept for the rows that are not drawn, px. */
  readonly abovePx: ComputedRef<number>
  readonly belowPx: ComputedRef<number>
  readonly follow: () => void
  readonly reveal: (row: number) => void
}

/** `scroller` holds the table; each row carries `data-row` with its number. */
export function useRowsInView(scroller: Ref<HTMLElement | null>, count: () => number): RowsInView {
  const topPx = ref(0)
  const heightPx = ref(0)
  const rowPx = ref(USUAL_ROW_PX)
  const isLong = computed(() => count() > MOST_ROWS_DRAWN)
  const end = computed(() =>
    isLong.value ? Math.min(count(), Math.ceil((topPx.value + heightPx.value) / rowPx.value) + ROWS_BESIDE) : count(),
  )
  const first = computed(() =>
    isLong.value ? Math.max(0, Math.min(Math.floor(topPx.value / rowPx.value) - ROWS_BESIDE, end.value - 1)) : 0,
  )
  const measure = (): void => {
    const row = scroller.value?.querySelector<HTMLElement>('[data-row]')
    if (row && row.offsetHeight > 0) rowPx.value = row.offsetHeight
    heightPx.value = scroller.value?.clientHeight ?? 0
  }
  const follow = (): void => {
    topPx.value = scroller.value?.scrollTop ?? 0
    const held = Number(document.activeElement?.closest<HTMLElement>('[data-row]')?.dataset['row'])
    // A field that leaves the view takes what was typed first, as it does when Tab leaves it.
    if (held < first.value || held >= end.value) scroller.value?.focus({ preventScroll: true })
  }
  let observer: ResizeObserver | null = null
  onMounted(() => {
    measure()
    observer = new ResizeObserver(measure)
    if (scroller.value !== null) observer.observe(scroller.value)
  })
  onBeforeUnmount(() => observer?.disconnect())
  return {
    first,
    end,
    abovePx: computed(() => first.value * rowPx.value),
    belowPx: computed(() => (count() - end.value) * rowPx.value),
    follow,
    reveal: (row) => {
      if (row >= first.value && row < end.value) return
      scroller.value?.scrollTo({ top: row * rowPx.value })
      follow()
    },
  }
}
