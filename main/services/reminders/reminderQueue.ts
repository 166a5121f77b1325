import type { Message } from '../../store/rows.ts'
import { outboxOf, saveOutbox } from '../upkeep/messageRows.ts'
import { releaseSlots } from '../upkeep/releaseSlots.ts'
import { sendQuestion } from './gate.ts'
import { letterOf } from './letterOf.ts'
import { addressMoved, nextMail } from './nextMail.ts'
import type { Queue } from './queue.ts'

/** The reminders, as the outbox sends them. */
export const reminderQueue: Queue<Message> = {
  sending: tx => tx.message.findMany({ where: { state: 'sending' } }),
  approved: (tx, nowAt) => tx.message.findMany(nextMail(nowAt)),
  row: (tx, id) => tx.message.findUniqueOrThrow({ where: { id } }),
  outboxOf,
  save: saveOutbox,
  voidWords: addressMoved,
  question: sendQuestion,
  letter: letterOf,
  withdrawn: releaseSlots,
  audited: row => ({ entity: 'message', entityId: row.id }),
}
