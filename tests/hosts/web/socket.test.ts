import { mkdtempSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest'
import { createApp } from '../../../main/api/app.ts'
import { makeEntrances } from '../../../main/hosts/web/entrances.ts'
import { freshKeys, keepDoor, readDoor } from '../../../main/hosts/web/keys.ts'
import { type Host, makeSocketHost, sendRaw } from './makeHost.ts'

/** The headers of a page that was let in. */
const letIn = ({ cookie, keys }: Host) => `Cookie: ${cookie}\r\nX-Lustrum-Door: ${keys.token}\r\n`

describe('the web host on its socket', () => {
  let host: Host
  beforeAll(async () => {
    host = await makeSocketHost()
  })
  afterAll(() => host.close())

  // Linux has the whole of 127.0.0.0/8 on its loopback: a server on every address would answer on this one.
  it.runIf(process.platform === 'linux')('listens on the one loopback address only', async () => {
    const failure = await new Promise(resolve => {
      connect(host.port, '127.0.0.2').once('error', resolve).once('connect', resolve)
    })
    expect(failure).toMatchObject({ code: 'ECONNREFUSED' })
  })

  it('answers no request without a Host, or with two', async () => {
    const end = 'Connection: close\r\n\r\n'
    const cookie = letIn(host)
    const own = `Host: 127.0.0.1:${host.port}\r\n`
    const now = 'GET /trpc/system.now HTTP/1.'
    expect((await sendRaw(host.port, `${now}1\r\n${own}${cookie}${end}`)).status).toBe(200)
    for (const request of [
      `${now}1\r\n${cookie}${end}`,
      `${now}0\r\n${cookie}\r\n`,
      `${now}1\r\nHost: example.com\r\n${own}${cookie}${end}`,
    ]) {
      const answer = await sendRaw(host.port, request)
      expect(answer.status, request).toBeGreaterThanOrEqual(400)
      expect(answer.text, request).not.toContain('nowAt')
    }
  })

  it('goes by the Host, whatever whole address the request line names', async () => {
    const request = `GET http://example.com/trpc/system.now HTTP/1.1\r\nHost: example.com\r\n${letIn(host)}Connection: close\r\n\r\n`
    const answer = await sendRaw(host.port, request)
    expect(answer.status).toBeGreaterThanOrEqual(400)
    expect(answer.text).not.toContain('nowAt')
  })

  it('takes no larger body than it says, told or not how long it is', async () => {
    const head = (more: string) =>
      `POST /trpc/system.now HTTP/1.1\r\nHost: 127.0.0.1:${host.port}\r\n${letIn(host)}Connection: close\r\n${more}\r\n\r\n`
    const size = 2 * 1024 * 1024 + 1
    const told = await sendRaw(host.port, head(`Content-Length: ${size}`) + 'x'.repeat(size))
    expect(told.status).toBe(413)
    const chunk = `${(64 * 1024).toString(16)}\r\n${'x'.repeat(64 * 1024)}\r\n`
    const untold = await sendRaw(
      host.port,
      `${head('Transfer-Encoding: chunked') + chunk.repeat(40)}0\r\n\r\n`,
    )
    expect(untold.status).toBe(413)
  })

  it('closes though a window is still listening for changes', async () => {
    const other = await makeSocketHost()
    const heard = Promise.withResolvers<void>()
    const listening = sendRaw(
      other.port,
      `GET /trpc/system.changes HTTP/1.1\r\nHost: 127.0.0.1:${other.port}\r\n${letIn(other)}Accept: text/event-stream\r\n\r\n`,
      heard.resolve,
    )
    await heard.promise
    await other.close()
    expect((await listening).headers.get('content-type')).toContain('text/event-stream')
  })
})

describe('the keys of the door', () => {
  it('are new each time, and long', () => {
    const keys = Array.from({ length: 20 }, freshKeys)
    expect(new Set(keys.flatMap(({ session, token }) => [session, token])).size).toBe(40)
    // 32 random bytes in base64url.
    for (const { session, token } of keys) expect([session.length, token.length]).toEqual([43, 43])
  })

  it('are kept with their port, for this user alone, and only whole', () => {
    const dir = mkdtempSync(join(tmpdir(), 'lustrum-door-'))
    const file = join(dir, 'door.json')
    expect(readDoor(dir)).toBeNull()
    writeFileSync(file, '{}', { mode: 0o644 })
    expect(readDoor(dir)).toBeNull()
    const door = { ...freshKeys(), port: 8123 }
    keepDoor(dir, door)
    expect(readDoor(dir)).toEqual(door)
    expect(statSync(file).mode & 0o777).toBe(0o600)
    for (const half of [{ ...door, token: 'x' }, { ...door, session: '' }, { ...door, port: 'x' }, null]) {
      writeFileSync(file, JSON.stringify(half))
      expect(readDoor(dir)).toBeNull()
    }
    rmSync(dir, { recursive: true })
  })
})

it('an entrance stays open for ten minutes', () => {
  let nowMs = 0
  const { issue, use } = makeEntrances(() => nowMs)
  const [early, late] = [issue(), issue()]
  nowMs = 599_999
  expect(use(early)).toBe(true)
  nowMs = 600_000
  expect(use(late)).toBe(false)
})

describe('a fault of ours', () => {
  it('is told to the log, not to the page', async () => {
    const onFault = vi.fn()
    const fault = new Error('secret words of the database')
    const rendererDir = new URL('../../../assets', import.meta.url).pathname
    const guard = () => Promise.reject(fault)
    const app = createApp({ desk: {} as never, rendererDir, guard, onFault })
    const answer = await app.request('/')
    expect(answer.status).toBe(500)
    expect(await answer.text()).toBe('Something went wrong here; nothing was saved.')
    expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'")
    expect(onFault).toHaveBeenCalledWith(fault)
  })
})
