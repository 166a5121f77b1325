import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createApp } from '../../../main/api/app.ts'
import { type Entrances, makeEntrances } from '../../../main/hosts/web/entrances.ts'
import { makeGuard } from '../../../main/hosts/web/guard.ts'
import { type DoorKeys, freshKeys } from '../../../main/hosts/web/keys.ts'
import { serveWeb } from '../../../main/hosts/web/serve.ts'
import { makeDesk } from '../../services/makeDesk.ts'

export interface Ask {
  method?: string
  path: string
  headers?: Record<string, string>
  body?: string
}

export interface Answer {
  status: number
  headers: Headers
  text: string
}

/** The web host, as the common cases see it. */
export interface Host {
  port: number
  keys: DoorKeys
  /** A new path that lets one browser in. */
  entrance(): string
  /** The cookie of a browser that was let in. */
  cookie: string
  ask(ask: Ask): Promise<Answer>
  close(): Promise<void>
}

/** A renderer of three files. */
function makeRenderer(): string {
  const dir = mkdtempSync(join(tmpdir(), 'lustrum-renderer-'))
  mkdirSync(join(dir, 'assets'))
  writeFileSync(join(dir, 'index.html'), '<meta name="style-nonce" content="__NONCE__"><div id="root"></div>')
  writeFileSync(join(dir, 'assets', 'start-1a2b.js'), 'export {}')
  writeFileSync(join(dir, 'icon.svg'), '<svg xmlns="http://www.w3.org/2000/svg"/>')
  return dir
}

const cookieOf = (answer: Answer) => (answer.headers.get('set-cookie') ?? '').split(';')[0]!

/** The fetch handler with the guard before it, asked without a server. */
export async function makeHandlerHost(): Promise<Host> {
  const desk = await makeDesk()
  const rendererDir = makeRenderer()
  const port = 8123
  const keys = freshKeys()
  const entrances: Entrances = makeEntrances()
  const app = createApp({ desk, rendererDir, guard: makeGuard({ keys, entrances }, () => port) })
  const host: Host = {
    port,
    keys,
    entrance: () => `/enter/${entrances.issue()}`,
    cookie: '',
    async ask({ method = 'GET', path, headers, body }) {
      const answer = await app.request(`http://127.0.0.1:${port}${path}`, {
        method,
        headers: { host: `127.0.0.1:${port}`, ...headers },
        ...(body === undefined ? {} : { body }),
      })
      return { status: answer.status, headers: answer.headers, text: await answer.text() }
    },
    async close() {
      await desk.close()
      rmSync(rendererDir, { recursive: true, force: true })
    },
  }
  host.cookie = cookieOf(await host.ask({ path: host.entrance() }))
  return host
}

/** Sends these bytes to the loopback address and reads until the other side closes; `heard` is told of the first it says. */
export function sendRaw(port: number, request: string, heard = () => {}): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => socket.write(request))
    socket.once('data', heard)
    let whole = ''
    socket.setEncoding('latin1')
    socket.on('data', chunk => {
      whole += chunk
    })
    socket.setTimeout(60_000, () => socket.destroy(new Error(`No end after: ${whole.slice(0, 200)}`)))
    socket.once('error', error => (whole === '' ? reject(error) : resolve(parse(whole))))
    socket.once('close', () => resolve(parse(whole)))
  })
}

function parse(whole: string): Answer {
  const [head = '', ...rest] = whole.split('\r\n\r\n')
  const [first = '', ...lines] = head.split('\r\n')
  const headers = new Headers()
  for (const line of lines)
    headers.append(line.slice(0, line.indexOf(':')), line.slice(line.indexOf(':') + 1).trim())
  return { status: Number(first.split(' ')[1]), headers, text: rest.join('\r\n\r\n') }
}

/** The real server, asked in raw HTTP over a real socket. */
export async function makeSocketHost(): Promise<Host> {
  const desk = await makeDesk()
  const rendererDir = makeRenderer()
  const keys = freshKeys()
  const web = await serveWeb({ desk, screens: { rendererDir }, port: 0, keys, onFault: () => {} })
  const host: Host = {
    port: web.port,
    keys,
    entrance: () => new URL(web.entrance()).pathname,
    cookie: '',
    ask({ method = 'GET', path, headers, body }) {
      const all: Record<string, string> = { host: `127.0.0.1:${web.port}`, connection: 'close', ...headers }
      if (body !== undefined) all['content-length'] ??= String(Buffer.byteLength(body))
      const lines = Object.entries(all).map(([name, value]) => `${name}: ${value}`)
      return sendRaw(
        web.port,
        `${[`${method} ${path} HTTP/1.1`, ...lines].join('\r\n')}\r\n\r\n${body ?? ''}`,
      )
    },
    async close() {
      await web.close()
      await desk.close()
      rmSync(rendererDir, { recursive: true, force: true })
    },
  }
  host.cookie = cookieOf(await host.ask({ path: host.entrance() }))
  return host
}
