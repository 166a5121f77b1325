/** Orders on their way to the supplier: by e-mail, or marked as given over by hand; and the question where they are. */
import { say, word } from '../../../domain/language/index.ts'
import { refuse } from '../../../domain/refusal.ts'
import { checkText } from '../../../domain/shop/index.ts'
import { readMailAddress } from '../../../domain/vehicle/index.ts'
import { type MailOutcome, sendMail } from '../../../outbox/mail.ts'
import { assertFresh, type Tx } from '../../../store/store.ts'
import { act, type Desk } from '../../desk/desk.ts'
import { noSenderWords, type Sender, senderOf } from '../../desk/mailSettings.ts'
import { shelfDay } from '../countedProducts.ts'
import { supplierOf } from '../suppliers.ts'
import { suppliersInUse } from '../underWay.ts'
import { dueDays } from './dueDays.ts'
import type { ChaseInput, SendInput } from './inputs.ts'
import { letterFor } from './letter.ts'
import { documentOf } from './orderDocument.ts'
import { type OrderRow, type OrderView, orderNow, orderRow, orderView } from './orderViews.ts'

export interface SentView {
  order: OrderView
  sent: boolean
  /** What to tell the person: sent, or why not and what to do. */
  words: string
}

/**
 * Sends a draft. It is marked as sent before the letter leaves, so that two windows, or a crash, can never send it
 * twice; where the letter does not go out it is a draft again, and the attempt stays on record with the reason.
 */
export async function sendOrder(desk: Desk, input: SendInput): Promise<SentView> {
  if (input.how === 'paper') {
    const order = await act(desk, async (tx, audit) => {
      await markSent(desk, tx, input)
      audit({ act: 'order sent', entity: 'order', entityId: input.id, detail: { how: 'paper' } })
      return orderNow(tx, input.id, desk.now())
    })
    return { order, sent: true, words: say('Order {number} is marked as sent.', { number: order.number }) }
  }
  const claimed = await act(desk, async (tx, audit) => {
    const sender = await senderFor(desk, tx)
    await markSent(desk, tx, input)
    const row = await orderRow(tx, input.id)
    const letter = await writtenLetter(desk, tx, row, 'order', input)
    const message = await tx.orderMessage.create({ data: { ...letter, failure: say(interrupted) } })
    audit({ act: 'order sent', entity: 'order', entityId: input.id, detail: { how: 'email', to: letter.to } })
    return { sender, row, message }
  })
  const file = await documentOf(desk.store.read, claimed.row, desk.now())
  const outcome = await deliver(claimed.sender, claimed.message, [file])
  const order = await recordOutcome(desk, claimed.message.id, outcome, claimed.row)
  if (outcome.sent)
    return {
      order,
      sent: true,
      words: say('Order {number} went to {to}.', { number: order.number, to: claimed.message.to }),
    }
  const meanwhile =
    order.status === 'draft' ? '' : ` ${say('Somebody has changed it meanwhile, so it stays as it is now.')}`
  return {
    order,
    sent: false,
    words: say('Order {number} did not go out. {words}{meanwhile}', {
      number: order.number,
      words: outcome.words,
      meanwhile,
    }),
  }
}

/** Asks the supplier where an order is that should be here: once, however many windows press at the same time. */
export async function chaseOrder(desk: Desk, input: ChaseInput): Promise<SentView> {
  const claimed = await act(desk, async (tx, audit) => {
    const sender = await senderFor(desk, tx)
    const row = await orderRow(tx, input.id)
    if (row.status !== 'sent' && row.status !== 'partly')
      refuse(
        'not-under-way',
        { id: input.id },
        say('Order {number} is not under way: there is nothing to ask.', { number: row.number }),
      )
    const { count } = await tx.purchaseOrder.updateMany({
      where: { id: input.id, version: input.version },
      data: { version: { increment: 1 } },
    })
    assertFresh(count, 'order', input.id)
    const letter = await writtenLetter(desk, tx, row, 'chase', input)
    const message = await tx.orderMessage.create({ data: { ...letter, failure: say(interrupted) } })
    audit({ act: 'order chased', entity: 'order', entityId: input.id, detail: { to: letter.to } })
    return { sender, message, row }
  })
  const outcome = await deliver(claimed.sender, claimed.message, [])
  const order = await recordOutcome(desk, claimed.message.id, outcome, claimed.row)
  return {
    order,
    sent: outcome.sent,
    words: outcome.sent
      ? say('Asked {to} after order {number}.', { to: claimed.message.to, number: claimed.row.number })
      : say('The letter did not go out. {words}', { words: outcome.words }),
  }
}

/** Stands until the mail server has answered: after a crash in between it is true. */
const interrupted = word(
  'The program ended before the mail server answered: ask the supplier whether it came.',
)

async function senderFor(desk: Desk, tx: Tx): Promise<Sender> {
  const sender = await senderOf(tx, desk.store)
  if (!sender) refuse('mail-not-set-up', { how: 'email' }, say(noSenderWords))
  return sender
}

async function markSent(desk: Desk, tx: Tx, { id, version }: SendInput): Promise<void> {
  const row = await orderRow(tx, id)
  if (row.status !== 'draft')
    refuse(
      'not-draft',
      { id },
      say('Order {number} has been sent, or called off, already.', { number: row.number }),
    )
  if (row.lines.length === 0)
    refuse(
      'order-empty',
      { id },
      say('Order {number} has no lines yet; add what is wanted.', { number: row.number }),
    )
  const { zone } = await shelfDay(tx, desk.now())
  const lead = (await suppliersInUse(tx, zone)).get(row.supplierId)?.lead ?? supplierOf(row.supplier).lead
  const { expectedOn, lateFromOn } = dueDays(supplierOf(row.supplier), lead, desk.now(), zone)
  const { count } = await tx.purchaseOrder.updateMany({
    where: { id, version },
    data: { status: 'sent', sentAt: desk.now(), expectedOn, lateFromOn, version: { increment: 1 } },
  })
  assertFresh(count, 'order', id)
}

async function writtenLetter(
  desk: Desk,
  tx: Tx,
  row: OrderRow,
  kind: 'order' | 'chase',
  asked: Pick<ChaseInput, 'to' | 'subject' | 'text'>,
) {
  const to = asked.to ?? row.supplier.email
  if (to === null)
    refuse(
      'address-missing',
      { to: null },
      say('No e-mail address of {name} is entered.', { name: row.supplier.name }),
    )
  const ground = await shelfDay(tx, desk.now())
  const usual = await letterFor(tx, orderView(row, ground), kind, ground)
  return {
    orderId: row.id,
    kind,
    at: desk.now(),
    who: desk.who,
    to: readMailAddress(to, 'to'),
    subject: checkText(asked.subject ?? usual.subject, 'subject', say('The subject'), 200),
    text: asked.text?.trim() ? asked.text : usual.text,
  }
}

function deliver(
  sender: Sender,
  message: { id: string; to: string; subject: string; text: string },
  attachments: { name: string; type: string; bytes: Uint8Array }[],
): Promise<MailOutcome> {
  const domain = sender.from.address.split('@')[1]
  return sendMail(sender.server, {
    from: sender.from,
    to: message.to,
    subject: message.subject,
    text: message.text,
    messageId: `${message.id}@${domain}`,
    attachments,
  })
}

/**
 * Writes down what the mail server said. An order whose letter did not go out is a draft again, unless somebody has
 * received it, called it off or dated it while the server was making up its mind: an order never goes backwards.
 */
function recordOutcome(
  desk: Desk,
  messageId: string,
  outcome: MailOutcome,
  claimed: OrderRow,
): Promise<OrderView> {
  const { id, version } = claimed
  return act(desk, async (tx, audit) => {
    const { kind } = await tx.orderMessage.update({
      where: { id: messageId },
      data: { failure: outcome.sent ? null : outcome.words },
    })
    if (outcome.sent || kind === 'chase')
      audit({ act: 'letter answered', entity: 'order', entityId: id, detail: { sent: outcome.sent } })
    else {
      const { count } = await tx.purchaseOrder.updateMany({
        where: { id, version, status: 'sent' },
        data: {
          status: 'draft',
          sentAt: null,
          expectedOn: null,
          lateFromOn: null,
          version: { increment: 1 },
        },
      })
      const detail = { words: outcome.words, draftAgain: count > 0 }
      audit({ act: 'order not sent', entity: 'order', entityId: id, detail })
    }
    return orderNow(tx, id, desk.now())
  })
}
