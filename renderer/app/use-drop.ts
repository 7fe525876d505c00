/** Files dropped anywhere on the window: a trip is opened, weather goes to the night in hand. */
import { onBeforeUnmount, onMounted, ref } from 'vue'
import type { Ref } from 'vue'
import { tripBytes } from '../features/files/trip-bytes.ts'
import { useServices } from '../stores/services.ts'
import { useViewStore } from '../stores/view.ts'
import { useText } from '../ui/text.ts'

export type DroppedKind = 'trip' | 'weather' | 'unknown'

export const droppedKind = (name: string): DroppedKind =>
  /\.json$/i.test(name) ? 'trip' : /\.(?:epw|csv|tsv|txt)$/i.test(name) ? 'weather' : 'unknown'

/** True while a file is held over the window. */
export function useDrop(): Ref<boolean> {
  const text = useText()
  const view = useViewStore()
  const { files, notify } = useServices()
  const over = ref(false)

  const holdsFiles = (event: DragEvent): boolean => event.dataTransfer?.types.includes('Files') === true

  async function take(file: File): Promise<void> {
    const kind = droppedKind(file.name)
    if (kind === 'unknown') notify({ message: text.value.t('window.drop.unknown', { name: file.name }) })
    else if (kind === 'weather') view.set({ screen: 'nights', dialog: null, weatherFile: file })
    else if (await files.open(await tripBytes(file))) view.set({ screen: 'workbench', full: null, dialog: null })
  }

  function onOver(event: DragEvent): void {
    if (!holdsFiles(event)) return
    event.preventDefault()
    over.value = true
  }
  function onLeave(event: DragEvent): void {
    if (event.relatedTarget === null) over.value = false
  }
  function onDrop(event: DragEvent): void {
    if (!holdsFiles(event)) return
    event.preventDefault()
    over.value = false
    const [file, ...more] = event.dataTransfer?.files ?? []
    if (more.length > 0) notify({ message: text.value.t('window.drop.many') })
    else if (file !== undefined) void take(file)
  }

  onMounted(() => {
    globalThis.addEventListener('dragover', onOver)
    globalThis.addEventListener('dragleave', onLeave)
    globalThis.addEventListener('drop', onDrop)
  })
  onBeforeUnmount(() => {
    globalThis.removeEventListener('dragover', onOver)
    globalThis.removeEventListener('dragleave', onLeave)
    globalThis.removeEventListener('drop', onDrop)
  })
  return over
}
