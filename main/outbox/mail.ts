/** Mail leaves the shop here, through the server its provider named: one letter, one answer in words. */
import { createTransport } from 'nodemailer'

export interface MailServer {
  readonly host: string
  readonly port: number
  /** `tls` from the first byte (usually port 465), `starttls` from the greeting on (587), `none` in the clear. */
  readonly security: 'tls' | 'starttls' | 'none'
  readonly user: string | null
  readonly password: string | null
}

export interface Letter {
  readonly from: { readonly name: string; readonly address: string }
  /** One address. */
  readonly to: string
  readonly subject: string
  /** Plain text. */
  readonly text: string
  readonly replyTo?: string | undefined
  /** Without its angle brackets; the same letter sent again keeps it, so that a reader can tell. */
  readonly messageId?: string | undefined
  readonly attachments?: readonly {
    readonly name: string
    readonly type: string
    readonly bytes: Uint8Array
  }[]
  /** Further header fields, as List-Unsubscribe. */
  readonly headers?: Readonly<Record<string, string>>
}

export type MailOutcome =
  | { readonly sent: true; readonly messageId: string; readonly answer: string }
  | {
      readonly sent: false
      /**
       * `later`: it may work another time (nobody answers, a mailbox is full); `settings`: not with these settings;
       * `letter`: this letter or address was turned away.
       */
      readonly why: 'later' | 'settings' | 'letter'
      readonly words: string
    }

const patienceMs = 15_000

/** Hands one letter to the server and waits for its answer. Never throws for what a server or a network does. */
export async function sendMail(server: MailServer, letter: Letter): Promise<MailOutcome> {
  const { host, port, security, user, password } = server
  // A password in the clear can be read by anybody on the way; on this computer there is no way.
  if (security === 'none' && password !== null && !['localhost', '127.0.0.1', '::1'].includes(host))
    return {
      sent: false,
      why: 'settings',
      words: `The password is not sent to ${host} in the clear: choose TLS or STARTTLS.`,
    }
  const transport = createTransport({
    host,
    port,
    secure: security === 'tls',
    requireTLS: security === 'starttls',
    ignoreTLS: security === 'none',
    ...(user !== null && { auth: { user, pass: password ?? '' } }),
    connectionTimeout: patienceMs,
    greetingTimeout: patienceMs,
    socketTimeout: 2 * patienceMs,
    // A letter is made of what it is given, never of files or addresses named in it.
    disableFileAccess: true,
    disableUrlAccess: true,
  })
  try {
    const { messageId, response } = await transport.sendMail({
      from: letter.from,
      to: { name: '', address: letter.to },
      subject: oneLine(letter.subject),
      text: letter.text,
      ...(letter.replyTo !== undefined && { replyTo: letter.replyTo }),
      ...(letter.messageId !== undefined && { messageId: `<${letter.messageId}>` }),
      ...(letter.headers && { headers: { ...letter.headers } }),
      attachments: (letter.attachments ?? []).map(({ name, type, bytes }) => ({
        filename: name,
        contentType: type,
        content: Buffer.from(bytes),
      })),
    })
    return { sent: true, messageId, answer: response }
  } catch (error) {
    return { sent: false, ...explained(error as MailError, server, letter.to) }
  } finally {
    transport.close()
  }
}

/** A subject is one line: a line end in it would begin another header field. */
function oneLine(text: string): string {
  return text.replaceAll(/\s+/g, ' ').trim()
}

interface MailError extends Error {
  code?: string
  responseCode?: number
  response?: string
}

/** What a failure means for the person at the desk. */
function explained(error: MailError, { host, port }: MailServer, to: string) {
  const { code, responseCode = 0 } = error
  const said = (error.response ?? error.message).replaceAll(/\s+/g, ' ').slice(0, 200)
  if (code === 'EAUTH' || responseCode === 535)
    return { why: 'settings', words: `${host} did not accept the user name and password (${said}).` } as const
  if (code === 'ETLS' || /certificate|self.signed|wrong version number/i.test(error.message))
    return { why: 'settings', words: `No safe connection to ${host} could be made (${said}).` } as const
  if (code === 'EDNS' || /ENOTFOUND/.test(error.message))
    return { why: 'settings', words: `There is no mail server called ${host}: look at its name.` } as const
  if (responseCode >= 500)
    return { why: 'letter', words: `${host} did not take the letter to ${to} (${said}).` } as const
  if (code === 'EENVELOPE' && responseCode === 0)
    return { why: 'letter', words: `${to} cannot be written to (${said}).` } as const
  if (responseCode >= 400)
    return { why: 'later', words: `${host} asks to try again later (${said}).` } as const
  return {
    why: 'later',
    words: `${host} does not answer on port ${port} (${said}). Is the computer connected, and the port right?`,
  } as const
}
