/** The size of an element in px, kept up to date. */
import { onBeforeUnmount, onMounted, ref } from 'vue'
import type { Ref } from 'vue'

export function useSize(element: Ref<HTMLElement | null>): {
  readonly widthPx: Ref<number>
  readonly heightPx: Ref<number>
} {
  const widthPx = ref(0)
  const heightPx = ref(0)
  let observer: ResizeObserver | null = null
  onMounted(() => {
    if (element.value === null) return
    const measure = (): void => {
      widthPx.value = element.value?.clientWidth ?? 0
      heightPx.value = element.value?.clientHeight ?? 0
    }
    measure()
    observer = new ResizeObserver(measure)
    observer.observe(element.value)
  })
  onBeforeUnmount(() => observer?.disconnect())
  return { widthPx, heightPx }
}
