import type { WebContents } from 'electron'
import { appOrigin, isOurs } from './scheme.ts'

export interface WaysOut {
  /** Shows a document of the app's own. */
  openDocument(address: string): void
  /** Hands an address to the system. */
  openOutside(address: string): void
}

/** What the system may be asked to open, and why; everything else stays shut. */
const outside: Readonly<Record<string, string>> = {
  'mailto:': 'A letter to an owner or a supplier, in the desk’s own mail program.',
  'tel:': 'A call from the call list.',
  'sms:': 'A text from the desk’s own telephone.',
}

/** Longer than any letter of the app's. */
const longestOutside = 20_000

/** Whether the system may be asked to open this address. */
export function mayGoOutside(address: string): boolean {
  if (address.length > longestOutside || !URL.canParse(address)) return false
  return Object.hasOwn(outside, new URL(address).protocol)
}

/**
 * Keeps a page inside the app: no way to another page in any frame, no second window, no embedded browser. A link to a
 * document of the app's own, or to a mail address or a telephone number, goes the way it is given here.
 */
export function keepInside(contents: WebContents, { openDocument, openOutside }: WaysOut): void {
  const leave = (address: string) => {
    if (mayGoOutside(address)) openOutside(address)
  }
  contents.on('will-navigate', event => {
    if (isOurs(event.url)) return
    event.preventDefault()
    leave(event.url)
  })
  contents.on('will-frame-navigate', event => {
    // A document shown inside a page comes from the page's own memory.
    if (!isOurs(event.url) && !event.url.startsWith(`blob:${appOrigin}/`)) event.preventDefault()
  })
  contents.on('will-redirect', event => {
    if (!isOurs(event.url)) event.preventDefault()
  })
  contents.on('will-attach-webview', event => event.preventDefault())
  contents.setWindowOpenHandler(({ url }) => {
    if (isOurs(url) && new URL(url).pathname.startsWith('/documents/')) openDocument(url)
    else leave(url)
    return { action: 'deny' }
  })
}
