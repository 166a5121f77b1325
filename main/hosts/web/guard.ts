import { createHash, randomBytes, timingSafeEqual } from 'node:crypto'
import type { MiddlewareHandler } from 'hono'
import { getCookie, setCookie } from 'hono/cookie'
import { feedPath } from '../../api/feeds.ts'
import { sensorPath } from '../../api/sensor.ts'

export interface DoorKeys {
  /** Printed once at start; whoever brings it gets the cookie. */
  secret: string
  /** The cookie's value. */
  session: string
}

const notLetIn =
  'This window has not been let in. Open the address that Lustrum printed when it started (it ends in a secret).'

export function freshKeys(): DoorKeys {
  return { secret: randomBytes(24).toString('base64url'), session: randomBytes(32).toString('base64url') }
}

/** `npm run dev` starts the host again and again; it hands over one pair of keys, so that the browser stays let in. */
export function readDoorKeys(env: NodeJS.ProcessEnv): DoorKeys {
  const [secret, session] = env.LUSTRUM_DEV_KEYS?.split('.') ?? []
  return secret && session ? { secret, session } : freshKeys()
}

function same(a: string, b: string): boolean {
  const digest = (text: string) => createHash('sha256').update(text).digest()
  return timingSafeEqual(digest(a), digest(b))
}

/**
 * Lets in only browsers on this computer that were given the secret: the `Host` must be this loopback address (a page
 * elsewhere may point a name of its own here), a foreign `Origin` or a cross-site fetch is refused, and everything
 * but the entrance, the sensors' address and the calendar feeds wants the cookie.
 */
export function makeGuard({ secret, session }: DoorKeys, port: () => number): MiddlewareHandler {
  return async (context, next) => {
    const hosts = [`127.0.0.1:${port()}`, `localhost:${port()}`]
    const host = context.req.header('host') ?? ''
    if (!hosts.includes(host)) return context.text('This address is not answered here.', 421)
    const origin = context.req.header('origin')
    if (origin !== undefined && origin !== `http://${host}`)
      return context.text('Requests from other pages are refused.', 403)
    // A link elsewhere may lead here, but nothing elsewhere may call, embed or post.
    const site = context.req.header('sec-fetch-site')
    const follows =
      context.req.header('sec-fetch-mode') === 'navigate' &&
      context.req.header('sec-fetch-dest') === 'document' &&
      context.req.method === 'GET'
    if ((site === 'cross-site' || site === 'same-site') && !follows)
      return context.text('Requests from other pages are refused.', 403)
    // Cookies know no port: the name keeps two shops on one computer apart.
    const cookieName = `lustrum-${port()}`
    const path = context.req.path
    if (path.startsWith('/enter/')) {
      if (context.req.method !== 'GET' || !same(path.slice('/enter/'.length), secret))
        return context.text(notLetIn, 401)
      setCookie(context, cookieName, session, { httpOnly: true, sameSite: 'Strict', path: '/' })
      return context.redirect('/', 303)
    }
    // A sensor has no browser; its own token is asked for behind this door.
    if (path === sensorPath && context.req.method === 'POST') return next()
    // Nor has a calendar program; its link is the key, and it may only read.
    if (feedPath.test(path) && context.req.method === 'GET') return next()
    if (!same(getCookie(context, cookieName) ?? '', session)) return context.text(notLetIn, 401)
    return next()
  }
}
