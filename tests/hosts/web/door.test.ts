import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { linkKey } from '../../../main/hosts/web/keys.ts'
import { type Answer, type Ask, type Host, makeHandlerHost, makeSocketHost } from './makeHost.ts'

describe.each([
  ['through the fetch handler', makeHandlerHost],
  ['through a socket, in raw HTTP', makeSocketHost],
])('the door, %s', (_name, makeHost) => {
  let host: Host
  beforeAll(async () => {
    host = await makeHost()
  })
  afterAll(() => host.close())

  const letIn = (ask: Ask): Promise<Answer> =>
    host.ask({ ...ask, headers: { cookie: host.cookie, 'x-lustrum-door': host.keys.token, ...ask.headers } })
  const status = async (answer: Promise<Answer>) => (await answer).status

  it('gives the cookie for the secret, and nobody else reads or sends it', async () => {
    const answer = await host.ask({ path: host.entrance() })
    expect(answer.status).toBe(200)
    expect(answer.headers.get('cache-control')).toBe('no-store')
    expect(answer.text).toContain(`data-token="${host.keys.token}"`)
    expect(answer.headers.get('set-cookie')).toMatch(
      new RegExp(`^lustrum-${host.port}=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict$`),
    )
  })

  it('lets in with the cookie', async () => {
    expect(await letIn({ path: '/' })).toMatchObject({
      status: 200,
      text: expect.stringContaining('id="root"'),
    })
    expect(await status(letIn({ path: '/trpc/system.now' }))).toBe(200)
    expect(await status(letIn({ path: '/assets/start-1a2b.js' }))).toBe(200)
    expect(await status(letIn({ path: '/', headers: { host: `localhost:${host.port}` } }))).toBe(200)
  })

  it('lets nobody in without it, to nothing', async () => {
    for (const path of [
      '/',
      '/index.html',
      '/trpc/system.now',
      '/assets/start-1a2b.js',
      '/icon.svg',
      '/nowhere',
    ])
      expect(await status(host.ask({ path })), path).toBe(401)
    for (const method of ['POST', 'PUT', 'DELETE', 'HEAD', 'OPTIONS', 'PATCH'])
      expect(await status(host.ask({ method, path: '/trpc/system.now' })), method).toBe(401)
  })

  it('lets in once a secret, and the newest twenty', async () => {
    const path = host.entrance()
    expect(await status(host.ask({ path }))).toBe(200)
    const again = await host.ask({ path })
    expect(again.status).toBe(401)
    expect(again.headers.get('set-cookie')).toBeNull()
    const paths = Array.from({ length: 21 }, () => host.entrance())
    expect(await status(host.ask({ path: paths[0] ?? '' }))).toBe(401)
    expect(await status(host.ask({ path: paths[20] ?? '' }))).toBe(200)
  })

  it('gives nothing the shop knows for the cookie alone: every port of this computer is sent it', async () => {
    const { cookie, keys } = host
    const headers = { cookie }
    const paths = [
      '/trpc/system.now',
      '/trpc/system.changes',
      '/documents/calendar.ics',
      `/documents/calendar.ics?door=${keys.token}`,
      '/documents/calendar.ics?door=x',
      '/trpc/system.now?connectionParams={',
      '/trpc/system.now?connectionParams=null',
      '/trpc/system.now?connectionParams={"door":"x"}',
    ]
    for (const path of paths) {
      const answer = await host.ask({ path: encodeURI(path), headers })
      expect(answer.status, path).toBe(401)
      expect(answer.text, path).toContain('not been let in')
    }
    expect(await status(host.ask({ method: 'POST', path: '/entrance', headers }))).toBe(401)
    for (const token of ['', 'x', `${keys.token}x`, keys.session])
      expect(await status(letIn({ path: '/trpc/system.now', headers: { 'x-lustrum-door': token } }))).toBe(
        401,
      )
    // Nor for the token alone.
    expect(await status(letIn({ path: '/trpc/system.now', headers: { cookie: '' } }))).toBe(401)
  })

  it('opens a document by the key of links, which is good for nothing else', async () => {
    const { cookie, keys } = host
    const link = linkKey(keys)
    const opened = await host.ask({ path: `/documents/label/none.pdf?door=${link}`, headers: { cookie } })
    expect(opened.status).toBe(404)
    expect(opened.text).not.toContain('let in')
    expect(await status(host.ask({ path: `/documents/label/none.pdf?door=${link}` }))).toBe(401)
    expect(await status(letIn({ path: '/trpc/system.now', headers: { 'x-lustrum-door': link } }))).toBe(401)
  })

  it('gives a new entrance to who holds both keys', async () => {
    const answer = await letIn({ method: 'POST', path: '/entrance' })
    expect(answer.text).toMatch(/^\/enter\/[\w-]{32}$/)
    expect(await status(host.ask({ path: answer.text }))).toBe(200)
    expect(await status(letIn({ path: '/entrance' }))).toBe(200)
    expect((await letIn({ path: '/entrance' })).text).toContain('id="root"')
  })

  it('lets no browser keep what the shop knows', async () => {
    for (const path of ['/trpc/system.now', '/trpc/no.such', '/'])
      expect((await letIn({ path })).headers.get('cache-control'), path).toBe('no-store')
  })

  it('lets nobody in with a wrong cookie or secret', async () => {
    const [name, value = ''] = host.cookie.split('=')
    const cookies = [
      `${name}=`,
      `${name}=x`,
      `${name}=${value.slice(1)}`,
      `lustrum-1=${value}`,
      `${name}=${value}x`,
    ]
    for (const cookie of cookies)
      expect(await status(host.ask({ path: '/', headers: { cookie } })), cookie).toBe(401)
    const right = host.entrance().slice('/enter/'.length)
    const secrets = ['', 'x', right.slice(1), `${right}x`, `${right}/`, value]
    for (const secret of secrets) {
      const answer = await host.ask({ path: `/enter/${secret}` })
      expect(answer.status, secret).toBe(401)
      expect(answer.headers.get('set-cookie'), secret).toBeNull()
    }
    expect(await status(host.ask({ method: 'POST', path: `/enter/${right}` }))).toBe(401)
  })

  it('answers to no other name: a page elsewhere may point its own here', async () => {
    const names = [
      'shop.example.com',
      `shop.example.com:${host.port}`,
      '127.0.0.1',
      'localhost',
      '127.0.0.1:1',
    ]
      .concat([
        `localhost.example.com:${host.port}`,
        `127.0.0.1:${host.port}.example.com`,
        `0.0.0.0:${host.port}`,
      ])
      .concat([`127.0.0.1:${host.port}@example.com`, `[::1]:${host.port}`])
    for (const name of names) {
      const answer = await letIn({ path: '/trpc/system.now', headers: { host: name } })
      // Node itself answers 400 to what is no name at all.
      expect([400, 421], name).toContain(answer.status)
      expect(answer.text, name).not.toContain('nowAt')
      const entering = await host.ask({ path: host.entrance(), headers: { host: name } })
      expect(entering.headers.get('set-cookie'), name).toBeNull()
    }
  })

  it('refuses what another page sends, even with the cookie', async () => {
    const origins = ['https://example.com', 'null', `http://localhost:${host.port}`, 'http://127.0.0.1:1']
    for (const origin of origins) {
      const post = letIn({ method: 'POST', path: '/trpc/system.now', headers: { origin }, body: '{}' })
      expect(await status(post), origin).toBe(403)
      expect(await status(letIn({ path: '/', headers: { origin } })), origin).toBe(403)
    }
    const own = { origin: `http://127.0.0.1:${host.port}` }
    expect(await status(letIn({ path: '/trpc/system.now', headers: own }))).toBe(200)
  })

  it('refuses what another page fetches or embeds, but lets a link lead here', async () => {
    const fetched = (site: string, mode: string, dest: string, method = 'GET') =>
      status(
        letIn({
          method,
          path: '/',
          headers: { 'sec-fetch-site': site, 'sec-fetch-mode': mode, 'sec-fetch-dest': dest },
        }),
      )
    for (const site of ['cross-site', 'same-site']) {
      expect(await fetched(site, 'no-cors', 'image'), site).toBe(403)
      expect(await fetched(site, 'cors', 'empty'), site).toBe(403)
      expect(await fetched(site, 'navigate', 'iframe'), site).toBe(403)
      expect(await fetched(site, 'navigate', 'document', 'POST'), site).toBe(403)
      expect(await fetched(site, 'navigate', 'document'), site).toBe(200)
    }
    expect(await fetched('same-origin', 'cors', 'empty')).toBe(200)
    expect(await fetched('none', 'navigate', 'document')).toBe(200)
  })

  it('sends a strict content security policy with a nonce of its own on every answer', async () => {
    const answers = [
      await letIn({ path: '/' }),
      await letIn({ path: '/assets/start-1a2b.js' }),
      await letIn({ path: '/assets/none.js' }),
      await letIn({ path: '/trpc/system.now' }),
      await letIn({ path: '/trpc/no.such' }),
      await host.ask({ path: host.entrance() }),
      await host.ask({ path: '/' }),
      await letIn({ path: '/', headers: { origin: 'https://example.com' } }),
      await letIn({ path: '/', headers: { host: 'example.com' } }),
      await letIn({ method: 'POST', path: '/trpc/system.now', body: 'x'.repeat(2 * 1024 * 1024 + 1) }),
    ]
    expect(answers.map(answer => answer.status)).toEqual([200, 200, 404, 200, 404, 200, 401, 403, 421, 413])
    const nonces = new Set<string>()
    for (const { headers, status: code } of answers) {
      const policy = headers.get('content-security-policy') ?? ''
      const sources = Object.fromEntries(
        policy.split('; ').map(part => [part.split(' ')[0], part.split(' ').slice(1)]),
      )
      const nonce = /'nonce-([\w+/=]{22,})'/.exec(policy)?.[1] ?? ''
      expect(sources, String(code)).toEqual({
        'default-src': ["'none'"],
        'script-src': ["'self'"],
        'style-src': ["'self'", `'nonce-${nonce}'`],
        'img-src': ["'self'", 'data:', 'blob:'],
        'font-src': ["'self'"],
        'connect-src': ["'self'"],
        'frame-src': ["'self'", 'blob:'],
        'base-uri': ["'none'"],
        'form-action': ["'self'"],
        'frame-ancestors': ["'self'"],
      })
      expect(headers.get('x-content-type-options')).toBe('nosniff')
      expect(headers.get('referrer-policy')).toBe('no-referrer')
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin')
      expect(headers.get('cross-origin-resource-policy')).toBe('same-origin')
      nonces.add(nonce)
    }
    expect(nonces.size).toBe(answers.length)
    const page = answers[0]!
    const policy = page.headers.get('content-security-policy') ?? ''
    expect(policy).toContain(`'nonce-${/content="([^"]+)"/.exec(page.text)?.[1]}'`)
  })

  it('keeps pages out of caches and files named by their content in them', async () => {
    expect((await letIn({ path: '/book' })).headers.get('cache-control')).toBe('no-store')
    expect((await letIn({ path: '/assets/start-1a2b.js' })).headers.get('cache-control')).toContain(
      'immutable',
    )
    expect((await letIn({ path: '/icon.svg' })).headers.get('cache-control')).toBe('no-cache')
  })

  it('reads no file outside the renderer, however the path is written', async () => {
    const up = [
      '../',
      '..%2f',
      '%2e%2e/',
      '%2e%2e%2f',
      '..\\',
      '..%5c',
      '..;/',
      '....//',
      '%252e%252e%252f',
      '..%c0%af',
    ]
    for (const way of up)
      for (const from of ['/', '/assets/']) {
        const path = `${from}${way.repeat(6)}etc/hostname`
        const answer = await letIn({ path })
        expect([200, 400, 404], path).toContain(answer.status)
        // A path that is no file is a screen of the app's.
        if (answer.status === 200) expect(answer.text, path).toContain('id="root"')
      }
    for (const path of ['/assets/', '/assets', '/assets/%00', '//example.com/', '/index.html%00.js'])
      expect([200, 400, 404], path).toContain(await status(letIn({ path })))
  })
})
