/** Takes over a remedy as one named edit, and offers to take it back. */
import { sayRemedy } from '../../../shared/cards/index.ts'
import type { Remedy } from '../../../shared/plan/index.ts'
import { useDocumentStore } from '../../stores/document.ts'
import { useServices } from '../../stores/services.ts'
import { useText } from '../../ui/text.ts'

/** True where the remedy was taken. */
export function useRemedies(): (remedy: Remedy) => boolean {
  const text = useText()
  const documents = useDocumentStore()
  const services = useServices()
  return ({ change }) => {
    if (documents.trip === null) return false
    const words = sayRemedy(change, documents.trip, text.value)
    if (!services.edit(words, { kind: 'take-remedy', change })) return false
    services.notify({
      message: text.value.t('window.findings.applied', { remedy: words }),
      action: { label: text.value.t('window.command.undo'), run: () => documents.undo() },
    })
    return true
  }
}
