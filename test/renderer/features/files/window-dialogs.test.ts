/** Dialogs round the file: earlier versions, what leaving would lose, diagnostics, the list of trips; and what a dropped file is. */
import { flushPromises } from '@vue/test-utils'
import { afterEach, describe, expect, it } from 'vitest'
import AboutDialog from '../../../../renderer/app/AboutDialog.vue'
import PreferencesDialog from '../../../../renderer/app/PreferencesDialog.vue'
import { droppedKind } from '../../../../renderer/app/use-drop.ts'
import DiagnosticsDialog from '../../../../renderer/features/files/DiagnosticsDialog.vue'
import FilesDialog from '../../../../renderer/features/files/FilesDialog.vue'
import VersionsDialog from '../../../../renderer/features/files/VersionsDialog.vue'
import { createLeaving } from '../../../../renderer/stores/leaving.ts'
import { editableTrip, show } from '../../window.ts'
import type { Given } from '../../window.ts'

const trip = editableTrip()
const file = { token: 'token-of-a-file', name: 'a.trip.json', folder: 'Trips', writable: true }

let shown: ReturnType<typeof show> | null = null
afterEach(() => shown?.view.unmount())

async function open(component: Parameters<typeof show>[0], given: Given = {}, saved = true) {
  shown = show(component, { trip, ...given, props: { open: false } })
  if (saved) shown.documents.open(trip, file, false)
  await shown.view.setProps({ open: true })
  await flushPromises()
  return shown
}
const dialog = (): HTMLElement => {
  const found = document.querySelector<HTMLElement>('[role=dialog]')
  if (found === null) throw new Error('no dialog is open')
  return found
}
const press = async (name: RegExp): Promise<void> => {
  const button = [...dialog().querySelectorAll('button')].find((each) =>
    name.test(each.getAttribute('aria-label') ?? each.textContent ?? ''),
  )
  if (button === undefined) throw new Error(`no button says ${name}`)
  button.click()
  await flushPromises()
}

describe('earlier versions', () => {
  const versions = async () => [
    { id: 'one', savedAtUtc: 1_800_000_000, bytes: 2100 },
    { id: 'two', savedAtUtc: 1_800_003_600, bytes: 2200 },
  ]

  it('are listed newest first and taken as an edit', async () => {
    let taken = ''
    const { told } = await open(VersionsDialog, {
      files: {
        versions,
        openVersion: async (id) => {
          taken = id
          return true
        },
      },
    })
    expect(dialog().querySelectorAll('li')).toHaveLength(2)
    await press(/Open this version/)
    expect(taken).toBe('two')
    expect(told.at(-1)).toContain('Undo')
  })

  it('say so where there is none yet, and where the trip has no file', async () => {
    await open(VersionsDialog, { files: { versions: async () => [] } })
    expect(dialog().textContent).toContain('No earlier version yet')
    shown?.view.unmount()
    await open(VersionsDialog, { files: { versions: async () => [] } }, false)
    expect(dialog().textContent).toContain('Save it first')
  })
})

describe('diagnostics', () => {
  it('are shown whole before anything is done with them', async () => {
    await open(DiagnosticsDialog, { files: { diagnostics: async () => 'host loopback\nplatform linux' } })
    expect(dialog().querySelector('textarea')?.value).toBe('host loopback\nplatform linux')
    expect(dialog().textContent).toContain('Read it before you share it')
  })

  it('say so where they cannot be read', async () => {
    await open(DiagnosticsDialog, { files: { diagnostics: async () => null } })
    expect(dialog().querySelector('[role=alert]')?.textContent).toContain('could not be read')
  })
})

describe('the list of trips', () => {
  it('forgets a trip that is to be forgotten', async () => {
    const forgotten: string[] = []
    const recent = [{ token: 'token-one', name: 'one.trip.json', folder: 'Trips', openedAtUtc: 1, missing: true }]
    await open(FilesDialog, {
      files: {
        info: async () => null,
        samples: async () => [],
        recent: async () => recent,
        recoveries: async () => [],
        forget: async (token) => void forgotten.push(token),
      },
    })
    await press(/Forget one/)
    expect(forgotten).toEqual(['token-one'])
    expect(dialog().textContent).toContain('No trip of your own yet')
  })
})

describe('preferences and about', () => {
  it('change theme at once and units by an edit', async () => {
    const { state, edits } = await open(PreferencesDialog)
    await press(/Evening/)
    expect(state.state.theme).toBe('dark')
    await press(/^\s*US\s*$/)
    expect(edits.at(-1)?.edit).toEqual({ kind: 'set-preferences', preferences: { units: 'us' } })
  })

  it('name the version and where the folders are', async () => {
    const info = {
      kind: 'loopback',
      appVersion: '0.1.0',
      platform: 'linux',
      language: 'de',
      hasDialogs: false,
      tripsFolder: '~/Trips',
      startToken: null,
    } as const
    await open(AboutDialog, { language: 'de', files: { info: async () => info, reveal: async () => '~/Log' } })
    expect(dialog().textContent).toContain('Version 0.1.0')
    await press(/Protokoll/)
    expect(dialog().querySelector('[role=status]')?.textContent).toContain('~/Log')
  })
})

describe('leaving a trip', () => {
  it('is asked only where edits would be lost, and waits for the answer', async () => {
    expect(await createLeaving(() => false).mayLeave()).toBe(true)
    const leaving = createLeaving(() => true)
    const first = leaving.mayLeave()
    expect(leaving.asked.value).toBe(true)
    leaving.answer('stay')
    expect(await first).toBe(false)
    const second = leaving.mayLeave()
    leaving.answer('go')
    expect(await second).toBe(true)
    expect(leaving.asked.value).toBe(false)
  })

  it('would lose an edit, but nothing of a sample that was only looked at', () => {
    shown = show(PreferencesDialog, { trip, props: { open: false } })
    const { documents } = shown
    documents.open(trip, file, true)
    expect(documents.wouldLose).toBe(false)
    documents.edit('units', { kind: 'set-preferences', preferences: { units: 'us' } })
    expect(documents.wouldLose).toBe(true)
    documents.open(trip, file, true, true)
    expect(documents.wouldLose).toBe(true)
  })
})

describe('a dropped file', () => {
  it.each([
    ['Ridge.trip.JSON', 'trip'],
    ['typical-year.epw', 'weather'],
    ['hours.csv', 'weather'],
    ['picture.png', 'unknown'],
  ] as const)('%s is %s', (name, kind) => expect(droppedKind(name)).toBe(kind))
})
