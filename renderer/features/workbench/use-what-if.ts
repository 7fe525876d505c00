/** Asking for a second plan: what is asked, how far it is, and what came of it. One question at a time; a new one gives up the last. */
import { onBeforeUnmount, shallowRef } from 'vue'
import type { ShallowRef } from 'vue'
import type { WhatIfAmounts, WhatIfKind } from '../../../shared/plan/index.ts'
import type { WhatIfAnswer } from '../../stores/plan.ts'
import { useServices } from '../../stores/services.ts'

export type WhatIfState =
  | { readonly kind: 'empty' }
  | { readonly kind: 'working'; readonly done01: number; readonly note: 'packing' | 'night' | 'checklist' | 'remedies' }
  | { readonly kind: 'told'; readonly told: WhatIfAnswer }
  | { readonly kind: 'nothing'; readonly asked: WhatIfKind }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly message: string }

export type AskWhatIf = {
  readonly state: ShallowRef<WhatIfState>
  readonly ask: (kind: WhatIfKind, amounts: Partial<WhatIfAmounts>) => Promise<void>
  readonly stop: () => void
  readonly clear: () => void
}

export function useWhatIf(): AskWhatIf {
  const { planner } = useServices()
  const state = shallowRef<WhatIfState>({ kind: 'empty' })
  let asking: AbortController | null = null

  const give = (): void => {
    asking?.abort()
    asking = null
  }

  async function ask(kind: WhatIfKind, amounts: Partial<WhatIfAmounts>): Promise<void> {
    give()
    const mine = new AbortController()
    asking = mine
    state.value = { kind: 'working', done01: 0, note: 'packing' }
    const outcome = await planner.whatIf({
      kind,
      amounts,
      signal: mine.signal,
      onProgress: (done01, note) => {
        if (asking === mine) state.value = { kind: 'working', done01, note }
      },
    })
    if (asking !== mine) return
    asking = null
    if (outcome.kind === 'stopped') state.value = { kind: 'stopped' }
    else if (outcome.kind === 'failed') state.value = { kind: 'failed', message: outcome.message }
    else state.value = outcome.told === null ? { kind: 'nothing', asked: kind } : { kind: 'told', told: outcome.told }
  }

  onBeforeUnmount(give)
  return {
    state,
    ask,
    stop: () => {
      give()
      state.value = { kind: 'stopped' }
    },
    clear: () => {
      give()
      state.value = { kind: 'empty' }
    },
  }
}
