/** Whether a message comes from the main frame of one of our own windows, showing our own page. */
import type { IpcMainInvokeEvent, WebContents } from 'electron'
import { APP_ORIGIN } from './protocol.ts'

export type Sender = Pick<IpcMainInvokeEvent, 'senderFrame' | 'sender'>

/** A frame that is gone already has no `senderFrame`: it is refused. */
export function isOurs({ senderFrame, sender }: Sender, own: readonly WebContents[]): boolean {
  if (senderFrame === null || sender.isDestroyed()) return false
  if (!own.includes(sender)) return false
  return senderFrame === sender.mainFrame && senderFrame.parent === null && senderFrame.origin === APP_ORIGIN
}
