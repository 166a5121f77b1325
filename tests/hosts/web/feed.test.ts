import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { type Host, makeHandlerHost, makeSocketHost } from './makeHost.ts'

const path = `/feed/${'a'.repeat(43)}.ics`

describe.each([
  ['through the fetch handler', makeHandlerHost],
  ['through a socket, in raw HTTP', makeSocketHost],
])('a feed’s address, %s', (_name, makeHost) => {
  let host: Host
  beforeAll(async () => {
    host = await makeHost()
  })
  afterAll(() => host.close())

  it('is past the cookie, but not past its own token', async () => {
    const answer = await host.ask({ path })
    expect(answer.status).toBe(404)
    expect(answer.text).toContain('No feed has this address')
    expect(answer.headers.get('set-cookie')).toBeNull()
  })

  it('is answered at this loopback address only, and to no other page', async () => {
    expect((await host.ask({ path, headers: { host: 'shop.example.com' } })).status).toBe(421)
    expect((await host.ask({ path, headers: { origin: 'http://example.com' } })).status).toBe(403)
    expect((await host.ask({ path, headers: { 'sec-fetch-site': 'cross-site' } })).status).toBe(403)
  })

  it('lets nothing else past: other methods and paths beside it want the cookie', async () => {
    for (const method of ['POST', 'PUT', 'DELETE'])
      expect((await host.ask({ method, path })).status, method).toBe(401)
    for (const other of ['/feed/', '/feed/x.ics', `${path}/..`, `/x${path}`, path.replace('.ics', '')])
      expect((await host.ask({ path: other })).status, other).toBe(401)
  })
})
