/** Moving a unit by hand, by pointer or by keys: the verdict is live, and letting go fixes it where it may stand. */
import { computed, shallowRef } from 'vue'
import type { ComputedRef, ShallowRef } from 'vue'
import type { Plan } from '../../../shared/plan/index.ts'
import type { FlatView } from '../../scene/flat-drawing.ts'
import { letGo, moveBy, takeUp, turnRound } from '../../scene/hand.ts'
import type { Held } from '../../scene/hand.ts'
import type { LayoutMoment } from '../../scene/moment.ts'
import type { SceneBay } from '../../scene/types.ts'
import { useDocumentStore } from '../../stores/document.ts'
import { useServices } from '../../stores/services.ts'
import { useText } from '../../ui/text.ts'

export type LoadNow = {
  readonly plan: Plan
  readonly nightIndex: number
  readonly moment: LayoutMoment
  readonly bays: readonly SceneBay[]
}

export type Hand = {
  readonly held: ShallowRef<Held | null>
  /** What is to be said of the place where it is held. */
  readonly words: ComputedRef<string>
  readonly take: (unitId: string) => void
  readonly move: (view: FlatView, byMm: readonly [number, number]) => void
  readonly turn: () => void
  readonly drop: () => void
  readonly cancel: () => void
}

export function useHand(now: () => LoadNow): Hand {
  const text = useText()
  const documents = useDocumentStore()
  const services = useServices()
  const held = shallowRef<Held | null>(null)

  const words = computed(() => {
    if (held.value === null) return ''
    const { verdict, bayId } = held.value
    const bay = documents.nameOf(bayId)
    if (verdict.legal || verdict.rule === null) return text.value.t('window.hand.fits', { bay })
    const rule = text.value.t(`packing.rule.${verdict.rule}`)
    return text.value.t(verdict.nearest === null ? 'window.hand.never' : 'window.hand.near', { bay, rule })
  })

  function take(unitId: string): void {
    const { plan, nightIndex, moment, bays } = now()
    held.value = takeUp(plan, nightIndex, moment, bays, unitId)
    if (held.value === null) services.notify({ message: text.value.t('window.hand.notNow') })
  }

  function drop(): void {
    const at = held.value
    held.value = null
    if (at === null) return
    const unit = documents.nameOf(at.unitId)
    const place = letGo(at)
    if (place === null) {
      const rule = at.verdict.rule === null ? '' : text.value.t(`packing.rule.${at.verdict.rule}`)
      services.notify({ message: text.value.t('window.hand.never', { bay: documents.nameOf(at.bayId), rule }) })
      return
    }
    const { bayId, atMm, sizeMm } = place
    const lock = { layout: at.layout, bayId, atMm: [...atMm] as const, sizeMm: [...sizeMm] as const }
    services.edit(text.value.t('window.edit.lock', { unit }), { kind: 'lock', unitId: at.unitId, lock })
  }

  return {
    held,
    words,
    take,
    move: (view, byMm) => {
      if (held.value !== null) held.value = moveBy(held.value, view, byMm, now().bays)
    },
    turn: () => {
      if (held.value !== null) held.value = turnRound(held.value, now().bays)
    },
    drop,
    cancel: () => {
      held.value = null
    },
  }
}
