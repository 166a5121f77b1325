/** Reports of mail that came back, pasted or imported. */
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { bounced } from '../../domain/upkeep/index.ts'
import { readBounces } from '../../outbox/bounceReport.ts'
import type { Message } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { outboxOf, saveOutbox } from '../upkeep/messageRows.ts'
import { addressKey } from '../upkeep/reach.ts'
import { releaseSlots } from '../upkeep/releaseSlots.ts'
import { outboxOfWords, saveWords } from '../upkeep/wordsRows.ts'

export type BounceView = Awaited<ReturnType<typeof importBounce>>

/** The last e-mail that went to an address; asked by its state too, SQLite would look through all that ever went out. */
async function lastMail(tx: Tx, address: string): Promise<Message | null> {
  const all = await tx.message.findMany({
    where: { address: { in: [address, addressKey(address)] }, channel: 'email' },
    orderBy: { sentAt: 'desc' },
  })
  return all.find(({ state }) => state === 'sent') ?? null
}

/**
 * Reads a delivery report and records what came back for good: the address is written to no more, the message counts
 * as failed. A report of a delay is read and changes nothing.
 */
export async function importBounce(desk: Desk, input: { text: string }) {
  const found = readBounces(input.text)
  if (found.length === 0)
    refuse(
      'no-report',
      { text: null },
      say('No address that failed was found in this; paste the whole report, headers and all.'),
    )
  return act(desk, async (tx, audit, at) => {
    let marked = 0
    for (const { address, status, permanent, messageId } of found) {
      if (!permanent) continue
      const words = await tx.jobWords.findUnique({ where: { mailId: messageId ?? '' } })
      const row = words
        ? null
        : ((await tx.message.findUnique({ where: { mailId: messageId ?? '' } })) ??
          (await lastMail(tx, address)))
      const text = say('{address} sent it back ({status})', { address, status })
      await tx.bounce.create({ data: { address: addressKey(address), messageId: row?.id ?? null, at, text } })
      if (words?.state === 'sent') {
        await saveWords(tx, words, bounced(outboxOfWords(words), at, text))
        marked++
      }
      if (row?.state === 'sent') {
        await saveOutbox(tx, row, bounced(outboxOf(row), at, text))
        await releaseSlots(tx, row, at)
        marked++
      }
      audit({ act: 'bounced', entity: 'message', entityId: row?.id ?? address, detail: { address, status } })
    }
    const lasting = found.filter(each => each.permanent).length
    return {
      found,
      words:
        lasting === 0
          ? say('Only a delay was reported: nothing was changed.')
          : say(
              '{lasting, plural, one {One address} other {{lasting} addresses}} will not be written to any more; {marked, plural, one {one message is} other {{marked} messages are}} marked as sent back.',
              { lasting, marked },
            ),
    }
  })
}

/** The address works again, as where a full mailbox was emptied. */
export function clearBounce(desk: Desk, input: { address: string }): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const address = addressKey(input.address)
    const { count } = await tx.bounce.updateMany({
      where: { address, voidedAt: null },
      data: { voidedAt: at },
    })
    if (count === 0)
      refuse('missing', { address: input.address }, say('This address is not marked; it is written to.'))
    audit({ act: 'bounce cleared', entity: 'message', entityId: address })
  })
}
