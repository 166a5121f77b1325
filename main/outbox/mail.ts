/** Mail leaves the shop here, through the server its provider named: one letter, one answer in words. */

import { PassThrough } from 'node:stream'
import { say } from '../domain/language/index.ts'
import type { SmtpStage } from '../domain/upkeep/index.ts'

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
      /** How far it came: after `after-data` without a reply it may have arrived all the same. */
      readonly stage: SmtpStage
      /** The server's reply code; null: none came. */
      readonly reply: number | null
    }

const patienceMs = 15_000

/**
 * Hands one letter to the server and waits for its answer, `patience` milliseconds for a sign of life. Never throws for
 * what a server or a network does.
 */
export async function sendMail(
  server: MailServer,
  letter: Letter,
  patience: number = patienceMs,
): Promise<MailOutcome> {
  const { host, port, security, user, password } = server
  // A password in the clear can be read by anybody on the way; on this computer there is no way.
  if (security === 'none' && password !== null && !['localhost', '127.0.0.1', '::1'].includes(host))
    return {
      sent: false,
      why: 'settings',
      words: say('The password is not sent to {host} in the clear: choose TLS or STARTTLS.', { host }),
      stage: 'login',
      reply: null,
    }
  // Not loaded until the first letter.
  const { createTransport } = await import('nodemailer')
  const transport = createTransport({
    host,
    port,
    secure: security === 'tls',
    requireTLS: security === 'starttls',
    ignoreTLS: security === 'none',
    ...(user !== null && { auth: { user, pass: password ?? '' } }),
    connectionTimeout: patience,
    greetingTimeout: patience,
    socketTimeout: 2 * patience,
    // A letter is made of what it is given, never of files or addresses named in it.
    disableFileAccess: true,
    disableUrlAccess: true,
  })
  let handedOver = false
  transport.use('stream', (mail, done) => {
    // Read to its end by the connection: from here on the server may have the whole letter.
    mail.message.processFunc((input: NodeJS.ReadableStream) =>
      input.pipe(new PassThrough()).once('end', () => {
        handedOver = true
      }),
    )
    done()
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
    const fault = error as MailError
    return {
      sent: false,
      ...explained(fault, server, letter.to),
      stage: stageOf(fault, handedOver),
      reply: fault.responseCode || null,
    }
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
  command?: string
  responseCode?: number | false
  response?: string
}

function stageOf({ code, command = '', message }: MailError, handedOver: boolean): SmtpStage {
  if (code === 'EAUTH' || command.startsWith('AUTH')) return 'login'
  if (code === 'ETLS' || badCertificate.test(message)) return 'tls'
  if (handedOver) return 'after-data'
  if (command === 'DATA') return 'data'
  return command === 'MAIL FROM' || command === 'RCPT TO' || code === 'EENVELOPE' ? 'envelope' : 'connect'
}

const badCertificate = /certificate|self.signed|wrong version number/i

/** What a failure means for the person at the desk. */
function explained(error: MailError, { host, port }: MailServer, to: string) {
  const { code } = error
  const responseCode = error.responseCode || 0
  const said = (error.response ?? error.message).replaceAll(/\s+/g, ' ').slice(0, 200)
  if (code === 'EAUTH' || responseCode === 535)
    return {
      why: 'settings',
      words: say('{host} did not accept the user name and password ({said}).', { host, said }),
    } as const
  if (code === 'ETLS' || badCertificate.test(error.message))
    return {
      why: 'settings',
      words: say('No safe connection to {host} could be made ({said}).', { host, said }),
    } as const
  if (code === 'EDNS' || /ENOTFOUND/.test(error.message))
    return {
      why: 'settings',
      words: say('There is no mail server called {host}: look at its name.', { host }),
    } as const
  if (responseCode >= 500)
    return {
      why: 'letter',
      words: say('{host} did not take the letter to {to} ({said}).', { host, to, said }),
    } as const
  if (code === 'EENVELOPE' && responseCode === 0)
    return { why: 'letter', words: say('{to} cannot be written to ({said}).', { to, said }) } as const
  if (responseCode >= 400)
    return {
      why: 'later',
      words: say('{host} asks to try again later ({said}).', { host, said }),
    } as const
  return {
    why: 'later',
    words: say(
      '{host} does not answer on port {port} ({said}). Is the computer connected, and the port right?',
      { host, port, said },
    ),
  } as const
}
