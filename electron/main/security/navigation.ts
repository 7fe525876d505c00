/** Pages stay where they are: no navigation, no redirect, no new window, no embedded view, for every page there will ever be. */
import type { App, Event } from 'electron'

export function limitNavigation(app: Pick<App, 'on'>): void {
  app.on('web-contents-created', (_event, contents) => {
    const stay = (event: Event): void => event.preventDefault()
    contents.on('will-navigate', stay)
    contents.on('will-frame-navigate', stay)
    contents.on('will-redirect', stay)
    contents.on('will-attach-webview', stay)
    contents.setWindowOpenHandler(() => ({ action: 'deny' }))
  })
}
