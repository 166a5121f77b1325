import type { AddressInfo } from 'node:net'
import { SMTPServer, type SMTPServerOptions } from 'smtp-server'

export interface Delivered {
  from: string
  to: string[]
  /** Header fields, unfolded, names in small letters. */
  headers: Record<string, string>
  /** The parts of a letter, or the one it has; decoded. */
  parts: { type: string; name: string | null; bytes: Buffer }[]
  raw: string
}

export interface TestMailServer {
  port: number
  letters: Delivered[]
  /** The server itself, for tests that hang up on a client. */
  server: SMTPServer
  close(): Promise<void>
}

/** A real mail server on the loopback address that keeps what it is given. */
export async function startMailServer(options: SMTPServerOptions = {}): Promise<TestMailServer> {
  const letters: Delivered[] = []
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['STARTTLS'],
    logger: false,
    onData(stream, session, done) {
      const chunks: Buffer[] = []
      stream.on('data', chunk => chunks.push(chunk as Buffer))
      stream.on('end', () => {
        const { mailFrom, rcptTo } = session.envelope
        letters.push({
          from: mailFrom ? mailFrom.address : '',
          to: rcptTo.map(each => each.address),
          ...parsed(Buffer.concat(chunks).toString('utf8')),
        })
        done(null, 'taken')
      })
    },
    ...options,
  })
  server.on('error', () => {})
  await new Promise<void>(resolve => {
    server.listen(0, '127.0.0.1', () => resolve())
  })
  return {
    port: (server.server.address() as AddressInfo).port,
    letters,
    server,
    close: () => new Promise(resolve => server.close(() => resolve())),
  }
}

/** A letter as RFC 5322 and 2045 write it: header, then one body or the parts between its boundaries. */
function parsed(raw: string): Omit<Delivered, 'from' | 'to'> {
  const { headers, body } = split(raw)
  const boundary = /boundary="?([^";]+)"?/.exec(headers['content-type'] ?? '')?.[1]
  const parts =
    boundary === undefined
      ? [partOf(headers, body)]
      : body
          .split(`--${boundary}`)
          .slice(1, -1)
          .map(text => {
            const part = split(text.replace(/^\r\n/, ''))
            return partOf(part.headers, part.body)
          })
  return { headers, parts, raw }
}

function split(text: string) {
  const at = text.indexOf('\r\n\r\n')
  const headers: Record<string, string> = {}
  for (const line of text
    .slice(0, at)
    .replaceAll(/\r\n[ \t]+/g, ' ')
    .split('\r\n')) {
    const colon = line.indexOf(':')
    if (colon > 0) headers[line.slice(0, colon).toLowerCase()] = line.slice(colon + 1).trim()
  }
  return { headers, body: text.slice(at + 4) }
}

function partOf(headers: Record<string, string>, body: string) {
  const how = (headers['content-transfer-encoding'] ?? '7bit').toLowerCase()
  const bytes =
    how === 'base64'
      ? Buffer.from(body, 'base64')
      : how === 'quoted-printable'
        ? Buffer.from(
            body
              .replaceAll('=\r\n', '')
              .replaceAll(/=([0-9A-F]{2})/g, (_, hex) => String.fromCharCode(Number.parseInt(hex, 16))),
            'latin1',
          )
        : Buffer.from(body)
  return {
    type: (headers['content-type'] ?? 'text/plain').split(';')[0]!,
    name: /filename="?([^";]+)"?/.exec(headers['content-disposition'] ?? '')?.[1] ?? null,
    bytes,
  }
}
