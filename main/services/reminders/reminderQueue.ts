import { say } from '../../domain/language/index.ts'
import type { Message } from '../../store/rows.ts'
import { outboxOf, saveOutbox } from '../upkeep/messageRows.ts'
import { addressKey, reachOf } from '../upkeep/reach.ts'
import { releaseSlots } from '../upkeep/releaseSlots.ts'
import { sendQuestion } from './gate.ts'
import { letterOf } from './letterOf.ts'
import type { Queue } from './queue.ts'

/** The reminders, as the outbox sends them. */
export const reminderQueue: Queue<Message> = {
  sending: tx => tx.message.findMany({ where: { state: 'sending' } }),
  approved: (tx, nowAt) =>
    tx.message.findMany({
      where: {
        state: 'approved',
        channel: 'email',
        OR: [{ notBeforeAt: null }, { notBeforeAt: { lte: nowAt } }],
      },
      orderBy: [{ createdAt: 'asc' }, { id: 'asc' }],
      select: { id: true },
    }),
  row: (tx, id) => tx.message.findUniqueOrThrow({ where: { id } }),
  outboxOf,
  save: saveOutbox,
  async voidWords(tx, { customerId, address }) {
    const onFile = (await reachOf(tx, [customerId])).get(customerId)?.address.email ?? ''
    return addressKey(onFile) === addressKey(address)
      ? null
      : say('The address on file is another one by now.')
  },
  question: sendQuestion,
  letter: letterOf,
  withdrawn: releaseSlots,
  audited: row => ({ entity: 'message', entityId: row.id }),
}
