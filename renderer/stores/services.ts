/** What a view may ask for beyond the stores: files, the planner, the clock, and notices. Provided once at the root. */
import { inject } from 'vue'
import type { InjectionKey } from 'vue'
import type { Edit, JsonValue } from '../../shared/document/index.ts'
import { invariant } from '../../shared/result/index.ts'
import type { DocumentPath } from '../../shared/result/index.ts'
import type { Files } from './files.ts'
import type { Leaving } from './leaving.ts'
import type { Planner } from './plan.ts'

export type Notice = {
  readonly message: string
  readonly action?: { readonly label: string; readonly run: () => void }
}

export type Services = {
  readonly files: Files
  readonly planner: Planner
  readonly leaving: Leaving
  readonly nowUtc: () => number
  readonly notify: (notice: Notice) => void
  /** Sets one value of the trip by its place; gives the refusal in words, or null. */
  readonly set: (path: DocumentPath, value: JsonValue | undefined) => string | null
  /** Makes a named edit of the trip; a refusal is told at the foot of the window. True where it was made. */
  readonly edit: (name: string, edit: Edit, gesture?: string | null) => boolean
}

export const SERVICES: InjectionKey<Services> = Symbol('services')

export function useServices(): Services {
  const services = inject(SERVICES)
  invariant(services, 'the window provides its services at the root')
  return services
}
