/** How mail leaves the shop: the server, whom letters come from, and the password, which is kept apart. */
import { say, word } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import { readMailAddress } from '../../domain/vehicle/index.ts'
import { type MailServer, sendMail } from '../../outbox/mail.ts'
import type { Store, Tx } from '../../store/store.ts'
import { act, type Desk } from './desk.ts'
import type { MailInput } from './inputs.ts'
import { saveSingle } from './keep.ts'

export type MailView = NonNullable<Awaited<ReturnType<typeof getMailSettings>>>

const passwordName = 'mail'

/** The settings without the password, which is never given back; null before they are entered. */
export async function getMailSettings(desk: Desk) {
  const row = await desk.store.read.mailSettings.findFirst()
  if (!row) return null
  const { id: _, ...fields } = row
  return {
    ...fields,
    security: row.security as MailServer['security'],
    hasPassword: desk.store.secrets.get(passwordName) !== null,
  }
}

/** Enters how mail leaves the shop. */
export async function saveMailSettings(desk: Desk, input: MailInput): Promise<MailView> {
  const { password, version, ...fields } = input
  const data = {
    ...fields,
    host: checkText(input.host, 'host', say('The mail server'), 255),
    user: input.user?.trim() ? input.user.trim() : null,
    fromName: checkText(input.fromName, 'fromName', say('The sender’s name'), 80),
    fromAddress: readMailAddress(input.fromAddress, 'fromAddress'),
  }
  if (/[\s/@]/.test(data.host))
    refuse(
      'host-bad',
      { host: input.host },
      say('"{host}" is no server name; mail.example.com is one.', { host: input.host }),
    )
  if (!Number.isInteger(input.port) || input.port < 1 || input.port > 65_535)
    refuse(
      'port-bad',
      { port: input.port },
      say('A port is a number from 1 to 65535; 465 and 587 are usual.'),
    )
  await act(desk, async (tx, audit) => {
    const kept = { table: tx.mailSettings, entity: 'mail', noun: word('mail settings') }
    // Never the password itself, only that it was changed.
    const detail = password === undefined ? {} : { password: 'changed' }
    await saveSingle(audit, kept, { key: { id: 1 }, version }, data, detail)
  })
  if (password !== undefined) desk.store.secrets.set(passwordName, password === '' ? null : password)
  return found(await getMailSettings(desk), { version }, say(noSenderWords))
}

export interface Sender {
  readonly server: MailServer
  readonly from: { readonly name: string; readonly address: string }
}

/** The server letters go through and whom they come from; null before it was entered. */
export async function senderOf(tx: Tx, { secrets }: Pick<Store, 'secrets'>): Promise<Sender | null> {
  const row = await tx.mailSettings.findFirst()
  if (!row) return null
  return {
    server: {
      host: row.host,
      port: row.port,
      security: row.security as MailServer['security'],
      user: row.user,
      password: secrets.get(passwordName),
    },
    from: { name: row.fromName, address: row.fromAddress },
  }
}

export const noSenderWords = word(
  'Outgoing mail is not set up yet: do so in the settings, or print the document.',
)

/** Sends a letter to try the settings; answers in words whether it went out. */
export async function tryMail(desk: Desk, input: { to: string }): Promise<{ sent: boolean; words: string }> {
  const sender = await senderOf(desk.store.read, desk.store)
  if (!sender) refuse('mail-not-set-up', { host: null }, say(noSenderWords))
  const to = readMailAddress(input.to, 'to')
  const outcome = await sendMail(sender.server, {
    from: sender.from,
    to,
    subject: say('Test of the mail settings'),
    text: `${say('This is a test of outgoing mail from {name}. It arrived, so it works.', { name: sender.from.name })}
`,
  })
  return outcome.sent
    ? {
        sent: true,
        words: say('Sent to {to}; {host} said: {answer}', {
          to,
          host: sender.server.host,
          answer: outcome.answer,
        }),
      }
    : { sent: false, words: outcome.words }
}
