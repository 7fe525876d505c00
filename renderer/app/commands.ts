/** Everything the window can do, by name: the palette, the shortcut list, the keys and the menu all read this one list. */
import type { TextKey } from '../../shared/text/index.ts'

export type CommandId =
  | 'new'
  | 'open'
  | 'save'
  | 'save-as'
  | 'export'
  | 'undo'
  | 'redo'
  | 'palette'
  | 'shortcuts'
  | 'findings'
  | 'what-if'
  | 'versions'
  | 'preferences'
  | 'about'
  | 'diagnostics'
  | 'screen-workbench'
  | 'screen-kit'
  | 'screen-vehicle'
  | 'screen-nights'
  | 'screen-travellers'
  | 'full-load'
  | 'full-night'
  | 'full-checklist'
  | 'full-none'
  | 'go-band'
  | 'go-load'
  | 'go-night'
  | 'go-checklist'
  | 'night-next'
  | 'night-previous'
  | 'theme-light'
  | 'theme-dark'
  | 'theme-night-red'
  | 'language-en'
  | 'language-de'
  | 'units-metric'
  | 'units-us'
  | 'stop'

export type Command = {
  readonly id: CommandId
  readonly name: TextKey
  /** `mod` is Control, or Command on a Mac. */
  readonly keys: string | null
}

export const COMMANDS: readonly Command[] = [
  { id: 'palette', name: 'window.command.palette', keys: 'mod+k' },
  { id: 'shortcuts', name: 'window.command.shortcuts', keys: '?' },
  { id: 'findings', name: 'window.command.findings', keys: 'f' },
  { id: 'what-if', name: 'window.command.whatIf', keys: 'w' },
  { id: 'go-band', name: 'window.command.goBand', keys: 'b' },
  { id: 'go-load', name: 'window.command.goLoad', keys: '1' },
  { id: 'go-night', name: 'window.command.goNight', keys: '2' },
  { id: 'go-checklist', name: 'window.command.goChecklist', keys: '3' },
  { id: 'full-load', name: 'window.command.fullLoad', keys: 'shift+1' },
  { id: 'full-night', name: 'window.command.fullNight', keys: 'shift+2' },
  { id: 'full-checklist', name: 'window.command.fullChecklist', keys: 'shift+3' },
  { id: 'full-none', name: 'window.command.fullNone', keys: '0' },
  { id: 'night-previous', name: 'window.command.nightPrevious', keys: '[' },
  { id: 'night-next', name: 'window.command.nightNext', keys: ']' },
  { id: 'undo', name: 'window.command.undo', keys: 'mod+z' },
  { id: 'redo', name: 'window.command.redo', keys: 'mod+shift+z' },
  { id: 'new', name: 'window.command.new', keys: 'mod+alt+n' },
  { id: 'open', name: 'window.command.open', keys: 'mod+o' },
  { id: 'save', name: 'window.command.save', keys: 'mod+s' },
  { id: 'save-as', name: 'window.command.saveAs', keys: 'mod+shift+s' },
  { id: 'export', name: 'window.command.export', keys: 'mod+p' },
  { id: 'versions', name: 'window.command.versions', keys: null },
  { id: 'preferences', name: 'window.command.preferences', keys: 'mod+,' },
  { id: 'stop', name: 'window.command.stop', keys: 'mod+.' },
  { id: 'screen-workbench', name: 'window.command.workbench', keys: 'mod+1' },
  { id: 'screen-kit', name: 'window.command.kit', keys: 'mod+2' },
  { id: 'screen-vehicle', name: 'window.command.vehicle', keys: 'mod+3' },
  { id: 'screen-nights', name: 'window.command.nights', keys: 'mod+4' },
  { id: 'screen-travellers', name: 'window.command.travellers', keys: 'mod+5' },
  { id: 'diagnostics', name: 'window.command.diagnostics', keys: null },
  { id: 'about', name: 'window.command.about', keys: null },
  { id: 'theme-light', name: 'window.command.light', keys: null },
  { id: 'theme-dark', name: 'window.command.dark', keys: null },
  { id: 'theme-night-red', name: 'window.command.red', keys: null },
  { id: 'language-en', name: 'window.command.english', keys: null },
  { id: 'language-de', name: 'window.command.german', keys: null },
  { id: 'units-metric', name: 'window.command.metric', keys: null },
  { id: 'units-us', name: 'window.command.us', keys: null },
]

const TYPING = ['INPUT', 'TEXTAREA', 'SELECT']

/** The command that a key press means, or null; single letters mean nothing while one types. */
export function commandOfKey(event: KeyboardEvent): CommandId | null {
  const modified = event.ctrlKey || event.metaKey
  const typing = event.target instanceof HTMLElement && TYPING.includes(event.target.tagName) && !isTick(event.target)
  if (typing && !modified) return null
  const key = event.shiftKey && /^Digit\d$/.test(event.code) ? event.code.slice(5) : event.key.toLowerCase()
  const shifted = event.shiftKey && event.key !== '?'
  const pressed = [
    ...(modified ? ['mod'] : []),
    ...(event.altKey ? ['alt'] : []),
    ...(shifted ? ['shift'] : []),
    key,
  ].join('+')
  return COMMANDS.find(({ keys }) => keys === pressed)?.id ?? null
}

const isTick = (element: HTMLElement): boolean =>
  element instanceof HTMLInputElement && (element.type === 'checkbox' || element.type === 'range')

/** Keys as a person reads them. */
export const sayKeys = (keys: string, mac: boolean): string =>
  keys
    .split('+')
    .map((key) =>
      key === 'mod'
        ? mac
          ? '⌘'
          : 'Ctrl'
        : key === 'shift'
          ? mac
            ? '⇧'
            : 'Shift'
          : key === 'alt'
            ? 'Alt'
            : key.toUpperCase(),
    )
    .join(mac ? '' : '+')
