type Fetch = (request: Request, ...rest: never[]) => Response | Promise<Response>

/**
 * The fetch handler as `npm run dev` serves it. Its page loads modules that only Vite's server has, so whatever the
 * handler, its guard included, would answer with that page though no document was asked for comes from there; and the
 * page may run the scripts Vite put into it, and hear from it of edits.
 */
export function withDevScreens<F extends Fetch>(handler: F, vite: URL): F {
  const serve = async (request: Request, ...rest: never[]): Promise<Response> => {
    const answer = await handler(request, ...rest)
    const isPage = answer.headers.get('content-type')?.startsWith('text/html')
    const wants = request.headers.get('sec-fetch-dest')
    if (isPage && wants && wants !== 'document') return askVite(request, vite)
    const policy = answer.headers.get('content-security-policy')
    if (policy) answer.headers.set('content-security-policy', opened(policy, vite))
    return answer
  }
  return serve as F
}

/** The policy, with leave for Vite's inline scripts by the page's own nonce, and for the socket it tells of edits on. */
function opened(policy: string, vite: URL): string {
  const nonce = /'nonce-[^']+'/.exec(policy)?.[0] ?? ''
  return policy
    .replace("script-src 'self'", `script-src 'self' ${nonce}`)
    .replace("connect-src 'self'", `connect-src 'self' ws://${vite.host}`)
}

async function askVite(request: Request, vite: URL): Promise<Response> {
  const { pathname, search } = new URL(request.url)
  const accept = request.headers.get('accept') ?? '*/*'
  const answer = await fetch(new URL(pathname + search, vite), { headers: { accept } })
  const type = answer.headers.get('content-type') ?? 'application/octet-stream'
  return new Response(answer.body, {
    status: answer.status,
    headers: { 'content-type': type, 'cache-control': 'no-store' },
  })
}
