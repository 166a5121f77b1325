/** What the desk does by hand: calls with a script, texts from its own phone, letters to print. */
import { setImmediate as nextTurn } from 'node:timers/promises'
import { toString as qrSvg } from 'qrcode'
import { maySend } from '../../domain/upkeep/index.ts'
import { showPhone } from '../../domain/vehicle/index.ts'
import type { Message } from '../../store/rows.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { sendQuestion } from './gate.ts'
import { type MessageView, messageViews } from './messages.ts'

export type CallView = Awaited<ReturnType<typeof callList>>[number]

/** Calls, each with its script, and texts that were approved and may be made right now. */
export async function callList(desk: Desk) {
  const tx = desk.store.read
  const { country } = await shopOf(tx)
  const rows = await allowedNow(desk, ['call', 'text'])
  const views = await messageViews(tx, desk.now(), rows)
  return Promise.all(
    views.map(async message => ({
      message,
      phone: showPhone(message.address, country),
      script: message.body,
      sms: message.channel === 'text' ? await smsOf(message.address, message.body) : null,
    })),
  )
}

/** Letters that were approved and may be posted. */
export async function letterList(desk: Desk): Promise<MessageView[]> {
  return messageViews(desk.store.read, desk.now(), await allowedNow(desk, ['letter']))
}

async function allowedNow(desk: Desk, channels: string[]): Promise<Message[]> {
  const tx = desk.store.read
  const rows = await tx.message.findMany({
    where: { state: 'approved', channel: { in: channels } },
    orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
  })
  const allowed: Message[] = []
  for (const row of rows) {
    await nextTurn()
    if (maySend(await sendQuestion(tx, row, desk.now())).ok) allowed.push(row)
  }
  return allowed
}

/** A text ready to send (RFC 5724), as a link and as a picture for the phone's camera. */
async function smsOf(phone: string, body: string): Promise<{ link: string; qr: string }> {
  const link = `sms:${phone}?body=${encodeURIComponent(body)}`
  const svg = await qrSvg(link, { type: 'svg', errorCorrectionLevel: 'L', margin: 2 })
  return { link, qr: `data:image/svg+xml,${encodeURIComponent(svg)}` }
}
