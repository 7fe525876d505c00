/** The fault whose hour one drags over the night: which, when, and what follows; only the newest hour is reckoned. */
import { computed, ref, shallowRef, watch } from 'vue'
import type { ComputedRef, Ref } from 'vue'
import { faultAt, faultKinds } from '../../../shared/plan/index.ts'
import type { Fault, FaultOutcome, NightPlan } from '../../../shared/plan/index.ts'
import type { Utc } from '../../../shared/units/index.ts'
import { useServices } from '../../stores/services.ts'

export type FaultKind = Fault['kind']

export type DraggedFault = {
  readonly kinds: ComputedRef<readonly FaultKind[]>
  readonly kind: Ref<FaultKind>
  readonly atUtc: ComputedRef<Utc | null>
  readonly outcome: ComputedRef<FaultOutcome | null>
  readonly choose: (kind: FaultKind) => void
  readonly move: (atUtc: number) => void
}

export function useFault(night: () => NightPlan | undefined): DraggedFault {
  const { planner } = useServices()
  const kind = ref<FaultKind>('supply-lost')
  const draggedUtc = ref<Utc | null>(null)
  const answer = shallowRef<FaultOutcome | null>(null)
  let asking = false

  const kinds = computed((): readonly FaultKind[] => {
    const plan = night()
    return plan === undefined ? [] : faultKinds(plan)
  })
  const rehearsed = computed(() => night()?.faults.find(({ fault }) => fault.kind === kind.value) ?? null)
  const atUtc = computed(() => draggedUtc.value ?? rehearsed.value?.fault.atUtc ?? null)
  const outcome = computed(() => (draggedUtc.value === null ? rehearsed.value : answer.value))

  /** Hours that were passed over while one was reckoned are left out. */
  const ask = async (): Promise<void> => {
    if (asking) return
    asking = true
    for (let told: string | null = null; ;) {
      const plan = night()
      const at = draggedUtc.value
      const wanted = `${plan?.nightId} ${kind.value} ${at}`
      if (plan === undefined || at === null || told === wanted) break
      const found = await planner.fault(plan.nightId, faultAt(kind.value, at, plan))
      if (found !== null) answer.value = found
      told = wanted
    }
    asking = false
  }

  watch(
    () => kinds.value,
    ([first]) => {
      if (first !== undefined && !kinds.value.includes(kind.value)) kind.value = first
    },
    { immediate: true },
  )
  watch(
    () => night()?.nightId,
    () => {
      draggedUtc.value = null
      answer.value = null
    },
  )
  // Another night behind the same hour: the fault is reckoned anew.
  watch(
    () => night()?.outcome,
    () => void ask(),
  )

  return {
    kinds,
    kind,
    atUtc,
    outcome,
    choose: (chosen) => {
      kind.value = chosen
      void ask()
    },
    move: (at) => {
      const clock = night()?.clock
      if (clock === undefined) return
      draggedUtc.value = Math.round(Math.min(clock.departUtc, Math.max(clock.arriveUtc, at))) as Utc
      void ask()
    },
  }
}
