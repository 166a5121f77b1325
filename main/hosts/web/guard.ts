import type { Context, MiddlewareHandler } from 'hono'
import { getCookie, setCookie } from 'hono/cookie'
import { feedPath } from '../../api/feeds.ts'
import { photosPath } from '../../api/photos.ts'
import { sensorPath } from '../../api/sensor.ts'
import { say } from '../../domain/language/index.ts'
import { speaking, systemLanguage } from '../../services/desk/speaking.ts'
import { doorHeader, type Entrances, entrancePath } from './entrances.ts'
import { type DoorKeys, linkKey, same } from './keys.ts'

export interface Door {
  keys: DoorKeys
  entrances: Entrances
  /** Told when a browser has been let in. */
  onEntered?: () => void
}

/** Nobody knows yet which shop asks: it is said in the language of this computer. */
const notLetIn = () =>
  speaking(systemLanguage(), () =>
    say(
      'This window has not been let in. Start Lustrum again: it opens the running app, or prints an address that lets one browser in, once, within ten minutes.',
    ),
  )

/**
 * Lets in only browsers on this computer that were given the secret: the `Host` must be this loopback address (a page
 * elsewhere may point a name of its own here), a foreign `Origin` or a cross-site fetch is refused, and everything but
 * the entrance, the sensors' address and the calendar feeds wants the cookie. What the shop knows wants the page's token
 * besides, since the cookie goes to every port of this computer.
 */
export function makeGuard({ keys, entrances, onEntered }: Door, port: () => number): MiddlewareHandler {
  const links = linkKey(keys)
  return async (context, next) => {
    const refused = foreign(context, port())
    if (refused) return refused
    const path = context.req.path
    // Cookies know no port: the name keeps two shops on one computer apart.
    const cookieName = `lustrum-${port()}`
    if (path.startsWith('/enter/') && context.req.method === 'GET') {
      if (!entrances.use(path.slice('/enter/'.length))) return context.text(notLetIn(), 401)
      onEntered?.()
      setCookie(context, cookieName, keys.session, { httpOnly: true, sameSite: 'Strict', path: '/' })
      return context.html(letInPage(keys.token, links), 200, { 'cache-control': 'no-store' })
    }
    if (path === '/enter.js') return context.body(letInScript, 200, { 'content-type': 'text/javascript' })
    // A sensor has no browser; its own token is asked for behind this door.
    if (path === sensorPath && context.req.method === 'POST') return next()
    // Nor has a calendar program; its link is the key, and it may only read.
    if (feedPath.test(path) && context.req.method === 'GET') return next()
    if (!same(getCookie(context, cookieName) ?? '', keys.session)) return context.text(notLetIn(), 401)
    const opened = path.startsWith('/documents/')
    if (opened && !same(context.req.query('door') ?? '', links)) return context.text(notLetIn(), 401)
    const asksData = path.startsWith('/trpc/') || path.startsWith(photosPath) || path === entrancePath
    if (asksData && !same(tokenOf(context), keys.token)) return context.text(notLetIn(), 401)
    if (path === entrancePath && context.req.method === 'POST')
      return context.text(`/enter/${entrances.issue()}`, 200, { 'cache-control': 'no-store' })
    return next()
  }
}

/** The refusal of what comes from another host's page; null where it does not. */
function foreign(context: Context, port: number): Response | null {
  const host = context.req.header('host') ?? ''
  if (![`127.0.0.1:${port}`, `localhost:${port}`].includes(host))
    return context.text('This address is not answered here.', 421)
  const origin = context.req.header('origin')
  const otherPage = origin !== undefined && origin !== `http://${host}`
  // A link elsewhere may lead here, but nothing elsewhere may call, embed or post.
  const site = context.req.header('sec-fetch-site')
  const follows =
    context.req.header('sec-fetch-mode') === 'navigate' &&
    context.req.header('sec-fetch-dest') === 'document' &&
    context.req.method === 'GET'
  if (otherPage || ((site === 'cross-site' || site === 'same-site') && !follows))
    return context.text('Requests from other pages are refused.', 403)
  return null
}

/** A stream of events cannot send a header, so it brings the token in its address, which no history keeps. */
function tokenOf(context: Context): string {
  const header = context.req.header(doorHeader)
  if (header !== undefined) return header
  try {
    return String(JSON.parse(context.req.query('connectionParams') ?? '{}')?.door ?? '')
  } catch {
    return ''
  }
}

/**
 * Not a redirect: whoever follows one from another site, as from the file that opens the browser, is not sent the new
 * cookie; this page asks for the app itself. The keys are base64url, so they need no escaping.
 */
const letInPage = (token: string, links: string) =>
  `<!doctype html><title>Lustrum</title><script src="/enter.js" data-token="${token}" data-links="${links}"></script>`

const letInScript = `const { token, links } = document.currentScript.dataset
localStorage.setItem('lustrum-door', JSON.stringify({ token, links }))
location.replace('/')
`
