/** The menus as data. An entry of ours sends the same command as its button in the page; the rest are the system's own. */
import type { MenuItemConstructorOptions } from 'electron'
import type { MenuCommand } from '../../../shared/host/index.ts'
import { shellText } from '../../files/index.ts'
import type { ShellLanguage } from '../../files/index.ts'

type Setting = { readonly language: ShellLanguage; readonly mac: boolean; readonly name: string }

export function buildMenu(
  { language, mac, name }: Setting,
  send: (command: MenuCommand) => void,
): MenuItemConstructorOptions[] {
  const text = shellText(language)
  const own = (command: MenuCommand, accelerator?: string): MenuItemConstructorOptions => ({
    label: text(`hosts.menu.${command}`),
    click: () => send(command),
    ...(accelerator === undefined ? {} : { accelerator }),
  })
  const line: MenuItemConstructorOptions = { type: 'separator' }
  const file = [
    own('new', 'CmdOrCtrl+N'),
    own('open', 'CmdOrCtrl+O'),
    line,
    own('save', 'CmdOrCtrl+S'),
    own('save-as', 'CmdOrCtrl+Shift+S'),
    own('export', 'CmdOrCtrl+P'),
    line,
    own('preferences', 'CmdOrCtrl+,'),
    line,
    { role: 'close', label: text('hosts.menu.close') },
    ...(mac ? [] : [{ role: 'quit', label: text('hosts.menu.quit') } as const]),
  ] satisfies MenuItemConstructorOptions[]
  const edit = [
    own('undo', 'CmdOrCtrl+Z'),
    own('redo', mac ? 'Cmd+Shift+Z' : 'Ctrl+Y'),
    line,
    { role: 'cut', label: text('hosts.menu.cut') },
    { role: 'copy', label: text('hosts.menu.copy') },
    { role: 'paste', label: text('hosts.menu.paste') },
    { role: 'selectAll', label: text('hosts.menu.select-all') },
  ] satisfies MenuItemConstructorOptions[]
  const view = [
    own('theme-light'),
    own('theme-dark'),
    own('theme-night-red'),
    line,
    { role: 'zoomIn', label: text('hosts.menu.zoom-in') },
    { role: 'zoomOut', label: text('hosts.menu.zoom-out') },
    { role: 'resetZoom', label: text('hosts.menu.zoom-reset') },
    { role: 'togglefullscreen', label: text('hosts.menu.full-screen') },
  ] satisfies MenuItemConstructorOptions[]
  return [
    ...(mac
      ? [
          {
            label: name,
            submenu: [own('about'), line, { role: 'quit', label: text('hosts.menu.quit') }],
          } satisfies MenuItemConstructorOptions,
        ]
      : []),
    { label: text('hosts.menu.file'), submenu: file },
    { label: text('hosts.menu.edit'), submenu: edit },
    { label: text('hosts.menu.view'), submenu: view },
    { label: text('hosts.menu.help'), submenu: [own('about'), own('diagnostics')] },
  ]
}
