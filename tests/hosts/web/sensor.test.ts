import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { sensorPath } from '../../../main/api/sensor.ts'
import { type Host, makeHandlerHost, makeSocketHost } from './makeHost.ts'

describe.each([
  ['through the fetch handler', makeHandlerHost],
  ['through a socket, in raw HTTP', makeSocketHost],
])('the sensors’ address, %s', (_name, makeHost) => {
  let host: Host
  beforeAll(async () => {
    host = await makeHost()
  })
  afterAll(() => host.close())

  const post = (headers: Record<string, string> = {}) =>
    host.ask({
      method: 'POST',
      path: sensorPath,
      headers: { 'content-type': 'application/json', ...headers },
      body: '{"readings":[]}',
    })

  it('is past the cookie, but not past its own token', async () => {
    const answer = await post()
    expect(answer.status).toBe(401)
    expect(answer.text).toContain('No sensor has this token')
    expect(answer.headers.get('set-cookie')).toBeNull()
  })

  it('does not take the browser’s cookie for a token', async () => {
    expect((await post({ cookie: host.cookie })).text).toContain('No sensor has this token')
  })

  it('is answered at this loopback address only, and to no other page', async () => {
    expect((await post({ host: 'bay.example.com' })).status).toBe(421)
    expect((await post({ origin: 'http://example.com' })).status).toBe(403)
    expect((await post({ 'sec-fetch-site': 'cross-site' })).status).toBe(403)
  })

  it('lets nothing else past: other methods and paths beside it want the cookie', async () => {
    for (const method of ['GET', 'PUT', 'DELETE'])
      expect((await host.ask({ method, path: sensorPath })).text, method).toContain('not been let in')
    for (const path of [`${sensorPath}/`, '/sensor', '/sensor/readings/..', `/x${sensorPath}`])
      expect((await host.ask({ method: 'POST', path })).status, path).toBe(401)
  })
})
