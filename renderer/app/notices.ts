/** Notices at the foot of the window, commands from the menu, and the error that stopped a view. */
import { inject, shallowRef } from 'vue'
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

export function createNotices(): Notices {
  const list = shallowRef<readonly (Notice & { readonly id: number })[]>([])
  const command = shallowRef<{ readonly name: string; readonly number: number }>({ name: '', number: 0 })
  const error = shallowRef<Error | null>(null)
  let count = 0
  return {
    list,
    lastCommand: command,
    error,
    notify: (notice) => {
      count += 1
      list.value = [...list.value.slice(-3), { ...notice, id: count }]
    },
    gone: (id) => {
      list.value = list.value.filter((notice) => notice.id !== id)
    },
    command: (name) => {
      command.value = { name, number: command.value.number + 1 }
    },
    crashed: (cause) => {
      error.value = cause
    },
  }
}
