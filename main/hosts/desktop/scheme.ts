import type { CustomScheme, Protocol } from 'electron'

const scheme = 'lustrum'

/** The window's own origin: no port is open, and nothing outside the window can reach it. */
export const appOrigin = `${scheme}://app`

/** To be registered before the shell is ready: an origin of its own that counts as secure, may fetch and stream. */
export const privilegedScheme: CustomScheme = {
  scheme,
  privileges: { standard: true, secure: true, supportFetchAPI: true, stream: true },
}

/** Whether the address is a page of the app itself. */
export function isOurs(address: string): boolean {
  try {
    const url = new URL(address)
    return url.protocol === `${scheme}:` && url.host === 'app'
  } catch {
    return false
  }
}

/** Hands what the window asks for to the app; what any other page asked for is refused. */
export function serveScheme(
  protocol: Protocol,
  fetch: (request: Request) => Response | Promise<Response>,
): void {
  protocol.handle(scheme, request => {
    // The shell says who asked; absent where it asked itself, as for the first page.
    const { initiatorOrigin } = request as Request & { initiatorOrigin?: string | null }
    if (!isOurs(request.url) || (initiatorOrigin !== undefined && initiatorOrigin !== appOrigin))
      return new Response('Requests from other pages are refused.', { status: 403 })
    return fetch(request)
  })
}
