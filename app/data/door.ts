/**
 * What the web host's entrance left with this browser; nothing in the app's own window, which has no door. Storage is kept by
 * origin, port included, so no other server of this computer is ever told.
 */
interface Keys {
  /** Sent with every call. */
  token: string
  /** Stands in the address of an opened document. */
  links: string
}

function keys(): Partial<Keys> {
  try {
    return JSON.parse(localStorage.getItem('lustrum-door') ?? '{}') as Partial<Keys>
  } catch {
    return {}
  }
}

export function doorHeaders(): Record<string, string> {
  const { token } = keys()
  return token ? { 'x-lustrum-door': token } : {}
}

/** For the stream of changes, which cannot send a header. */
export function doorParams(): Record<string, string> {
  return { door: keys().token ?? '' }
}

/** The address of a document, as a link may open it. */
export function documentHref(path: string): string {
  const { links } = keys()
  return links ? `${path}${path.includes('?') ? '&' : '?'}door=${links}` : path
}
