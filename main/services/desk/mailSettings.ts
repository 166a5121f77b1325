/** How mail leaves the shop: the server, whom letters come from, and the password, which is kept apart. */
import { Refusal } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import { readMailAddress } from '../../domain/vehicle/index.ts'
import { type MailServer, sendMail } from '../../outbox/mail.ts'
import type { Store, Tx } from '../../store/store.ts'
import { assertFresh } from '../../store/store.ts'
import { changesBetween } from './changesBetween.ts'
import type { Desk } from './desk.ts'
import type { MailInput } from './inputs.ts'

/** How mail leaves the shop. The password is never given back. */
export interface MailView {
  host: string
  port: number
  security: 'tls' | 'starttls' | 'none'
  user: string | null
  hasPassword: boolean
  fromName: string
  fromAddress: string
  version: number
}

const passwordName = 'mail'

/** The settings without the password; null before they are entered. */
export async function getMailSettings(desk: Desk): Promise<MailView | null> {
  const row = await desk.store.read.mailSettings.findFirst()
  if (!row) return null
  const { id: _, ...fields } = row
  return {
    ...fields,
    security: row.security as MailView['security'],
    hasPassword: desk.store.secrets.get(passwordName) !== null,
  }
}

/** Enters how mail leaves the shop. */
export async function saveMailSettings(desk: Desk, input: MailInput): Promise<MailView> {
  const { password, version, ...fields } = input
  const data = {
    ...fields,
    host: checkText(input.host, 'host', 'The mail server', 255),
    user: input.user?.trim() ? input.user.trim() : null,
    fromName: checkText(input.fromName, 'fromName', 'The name letters come from', 80),
    fromAddress: readMailAddress(input.fromAddress, 'fromAddress'),
  }
  if (/[\s/@]/.test(data.host))
    throw new Refusal(
      'host-bad',
      'host',
      input.host,
      `"${input.host}" is no server name; mail.example.com is one.`,
    )
  if (!Number.isInteger(input.port) || input.port < 1 || input.port > 65_535)
    throw new Refusal(
      'port-bad',
      'port',
      input.port,
      'A port is a number from 1 to 65535; 465 and 587 are usual.',
    )
  await desk.store.transact({ who: desk.who, at: desk.now() }, async (tx, audit) => {
    const before = await tx.mailSettings.findFirst()
    if (before) {
      const { count } = await tx.mailSettings.updateMany({
        where: { id: 1, version: version ?? 0 },
        data: { ...data, version: { increment: 1 } },
      })
      assertFresh(count, 'mail settings', '1')
    } else await tx.mailSettings.create({ data })
    // Never the password itself, only that it was changed.
    const changes = {
      ...changesBetween(before ?? {}, data),
      ...(password !== undefined && { password: 'changed' }),
    }
    audit({ act: 'changed', entity: 'mail', entityId: '1', detail: changes })
  })
  if (password !== undefined) desk.store.secrets.set(passwordName, password === '' ? null : password)
  return (await getMailSettings(desk))!
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

export const noSenderWords =
  'How mail leaves the shop is not entered yet: do so in the settings, or print the document.'

/** Sends a letter to try the settings; answers in words whether it went out. */
export async function tryMail(desk: Desk, input: { to: string }): Promise<{ sent: boolean; words: string }> {
  const sender = await senderOf(desk.store.read, desk.store)
  if (!sender) throw new Refusal('mail-not-set-up', 'host', null, noSenderWords)
  const to = readMailAddress(input.to, 'to')
  const outcome = await sendMail(sender.server, {
    from: sender.from,
    to,
    subject: 'A letter to try the mail settings',
    text: `This letter was sent to try how mail leaves ${sender.from.name}. It arrived, so it does.\n`,
  })
  return outcome.sent
    ? { sent: true, words: `Sent to ${to}; ${sender.server.host} said: ${outcome.answer}` }
    : { sent: false, words: outcome.words }
}
