/** Notices at the foot of the window, commands from the menu, and the error that stopped a view. */
import { inject } from 'vue'
import type { InjectionKey, ShallowRef } from 'vue'
import { invariant } from '../../shared/result/index.ts'
import type { Notice } from '../stores/services.ts'

export type Notices = {
  readonly list: ShallowRef<readonly (Notice & { readonly id: number })[]>
  readonly lastCommand: ShallowRef<{ readonly name: string; readonly number: number }>
  readonly error: ShallowRef<Error | null>
  readonly notify: (notice: Notice) => void
  readonly gone: (id: number) => void
  readonly command: (name: string) => void
  readonly crashed: (error: Error) => void
}

export const NOTICES: InjectionKey<Notices> = Symbol('notices')

export function useNotices(): Notices {
  const notices = inject(NOTICES)
  invariant(notices, 'the window provides its notices at the root')
  return notices
}
