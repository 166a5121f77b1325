import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'
import type { MiddlewareHandler } from 'hono'
import { getCookie, setCookie } from 'hono/cookie'

export interface Door {
  /** Printed once at start; whoever brings it gets the cookie. */
  secret: string
  guard: MiddlewareHandler
}

const notLetIn =
  'This window has not been let in. Open the address that Lustrum printed when it started (it ends in a secret).'

function same(a: string, b: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest()
  return timingSafeEqual(digest(a), digest(b))
}

/**
 * Lets in only browsers on this computer that were given the secret: the `Host` must be this loopback address (a page
 * elsewhere may point a name of its own here), a foreign `Origin` or a cross-site fetch is refused, and everything
 * but the entrance wants the cookie.
 */
export function makeDoor(port: () => number): Door {
  const secret = randomBytes(24).toString('base64url')
  const session = randomBytes(32).toString('base64url')
  const guard: MiddlewareHandler = async (context, next) => {
    const hosts = [`127.0.0.1:${port()}`, `localhost:${port()}`]
    const host = context.req.header('host') ?? ''
    if (!hosts.includes(host)) return context.text('This address is not answered here.', 421)
    const origin = context.req.header('origin')
    if (origin !== undefined && origin !== `http://${host}`)
      return context.text('Requests from other pages are refused.', 403)
    const cookieName = `lustrum-${port()}`
    const path = context.req.path
    if (path.startsWith('/enter/')) {
      if (!same(path.slice('/enter/'.length), secret)) return context.text(notLetIn, 401)
      setCookie(context, cookieName, session, { httpOnly: true, sameSite: 'Strict', path: '/' })
      return context.redirect('/', 303)
    }
    const site = context.req.header('sec-fetch-site')
    const navigates = context.req.header('sec-fetch-mode') === 'navigate' && context.req.method === 'GET'
    if (site === 'cross-site' && !navigates)
      return context.text('Requests from other pages are refused.', 403)
    if (!same(getCookie(context, cookieName) ?? '', session)) return context.text(notLetIn, 401)
    await next()
  }
  return { secret, guard }
}
