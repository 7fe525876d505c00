/** A view mounted as the window mounts it: real stores and texts, a trip and a plan written by hand, services that only remember. */
import { mount } from '@vue/test-utils'
import type { VueWrapper } from '@vue/test-utils'
import { createPinia } from 'pinia'
import { computed } from 'vue'
import type { Component } from 'vue'
import { useDocumentStore } from '../../renderer/stores/document.ts'
import { createLeaving } from '../../renderer/stores/leaving.ts'
import { usePlanStore } from '../../renderer/stores/plan.ts'
import { SERVICES } from '../../renderer/stores/services.ts'
import type { Services } from '../../renderer/stores/services.ts'
import { useViewStore } from '../../renderer/stores/view.ts'
import { TEXT } from '../../renderer/ui/text.ts'
import type { Edit, Trip } from '../../shared/document/index.ts'
import type { Plan } from '../../shared/plan/index.ts'
import { createText } from '../../shared/text/index.ts'
import { cardsPlan, cardsTrip } from '../support/cards-plan.ts'

export type Shown = {
  readonly view: VueWrapper
  readonly edits: readonly { readonly name: string; readonly edit: Edit }[]
  readonly told: readonly string[]
  readonly documents: ReturnType<typeof useDocumentStore>
  readonly state: ReturnType<typeof useViewStore>
}

export type Given = {
  readonly trip?: Trip
  readonly plan?: Plan
  readonly props?: Readonly<Record<string, unknown>>
  readonly language?: 'en' | 'de'
  readonly planner?: Partial<Services['planner']>
  readonly files?: Partial<Services['files']>
}

/** The trip written by hand, with what an edit would refuse put right: the mattress is fitted, no bedding is chosen. */
export function editableTrip(over: Partial<Trip> = {}): Trip {
  const trip = cardsTrip(over)
  return {
    ...trip,
    vehicle: { ...trip.vehicle, bed: { ...trip.vehicle.bed, mattressPieceIds: [], fittedMattressM2KPerW: 0.8 } },
    nights: trip.nights.map((night, index) => ({
      ...night,
      beddingPieceIds: [],
      ...(index === 0 ? { arriveCharge01: 0.5 } : {}),
    })),
  }
}

/** Mounts `component` with `trip` open; edits are made and remembered. */
export function show(
  component: Component,
  { trip = cardsTrip(), plan, props = {}, language = 'en', planner = {}, files = {} }: Given = {},
): Shown {
  const pinia = createPinia()
  const documents = useDocumentStore(pinia)
  documents.open(trip, null, false)
  const planned = plan ?? cardsPlan(trip)
  usePlanStore(pinia).set({ plan: planned, whole: planned, plannedTrip: trip })
  const state = useViewStore(pinia)
  const edits: { readonly name: string; readonly edit: Edit }[] = []
  const told: string[] = []
  const text = computed(() => createText(language, 'metric'))
  const unused = (): never => {
    throw new Error('this view asks for a service that the test does not give')
  }
  const services: Services = {
    // What a test does not give is not asked for.
    files: new Proxy(files as Services['files'], { get: (given, name) => Reflect.get(given, name) ?? unused }),
    planner: {
      plan: () => undefined,
      cancel: () => undefined,
      fault: async () => null,
      whatIf: async () => ({ kind: 'stopped' }),
      ...planner,
    },
    leaving: createLeaving(() => false),
    nowUtc: () => 1_800_000_000,
    notify: ({ message }) => told.push(message),
    set: (path, value) => {
      const edit: Edit = { kind: 'set-value', path, ...(value === undefined ? {} : { value }) }
      edits.push({ name: 'set', edit })
      const refused = documents.edit('set', edit)
      return refused === null ? null : text.value.problem(refused)
    },
    edit: (name, edit, gesture = null) => {
      edits.push({ name, edit })
      return documents.edit(name, edit, gesture) === null
    },
  }
  const view = mount(component, {
    props,
    attachTo: document.body,
    global: { plugins: [pinia], provide: { [TEXT]: text, [SERVICES]: services } },
  })
  return { view, edits, told, documents, state }
}

/** Words as a person reads them: no-break spaces are spaces. */
export const words = (view: { readonly text: () => string }): string => view.text().replaceAll(/[\u00a0\u202f]/g, ' ')
