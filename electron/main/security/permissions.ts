/** What a page may ask the system for: nothing. What it may load: our own scheme. What it may save by itself: nothing. */
import type { Session } from 'electron'
import { APP_ORIGIN } from './protocol.ts'

export function denyPermissions(session: Session): void {
  session.setPermissionRequestHandler((_contents, _permission, answer) => answer(false))
  session.setPermissionCheckHandler(() => false)
  session.setDevicePermissionHandler(() => false)
  session.setBluetoothPairingHandler((_details, answer) => answer({ confirmed: false }))
  session.setDisplayMediaRequestHandler((_request, answer) => answer({}))
  session.on('select-usb-device', (event, _details, answer) => refuse(event, answer))
  session.on('select-hid-device', (event, _details, answer) => refuse(event, answer))
  session.on('select-serial-port', (event, _ports, _contents, answer) => {
    event.preventDefault()
    answer('')
  })
  session.webRequest.onBeforeRequest((details, answer) => answer({ cancel: !mayLoad(details.url) }))
  session.on('will-download', (event) => event.preventDefault())
  // Dictionaries would be fetched from the network.
  session.setSpellCheckerEnabled(false)
}

/** Our own bundle, and the tools of a developer looking at it. */
export const mayLoad = (url: string): boolean => url.startsWith(`${APP_ORIGIN}/`) || url.startsWith('devtools://')

function refuse(event: Electron.Event, answer: () => void): void {
  event.preventDefault()
  answer()
}
