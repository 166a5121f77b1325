import type { WebContents } from 'electron'
import { appOrigin, isOurs } from './scheme.ts'

/** Keeps a page inside the app: no way to another page in any frame, no second window, no embedded browser. */
export function keepInside(contents: WebContents): void {
  contents.on('will-navigate', event => {
    if (!isOurs(event.url)) event.preventDefault()
  })
  contents.on('will-frame-navigate', event => {
    // A document shown inside a page comes from the page's own memory.
    if (!isOurs(event.url) && !event.url.startsWith(`blob:${appOrigin}/`)) event.preventDefault()
  })
  contents.on('will-redirect', event => {
    if (!isOurs(event.url)) event.preventDefault()
  })
  contents.on('will-attach-webview', event => event.preventDefault())
  contents.setWindowOpenHandler(() => ({ action: 'deny' }))
}
