import { say } from '../../domain/language/index.ts'
import { type Channel, type MessageState, type Outcome, visitKey } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'

/**
 * The last reminder of every visit of some plans that has one, by `visitKey`; `nextTryOn` is when it is tried again,
 * where agreed.
 */
export async function lastReminders(tx: Tx, planIds: readonly string[]) {
  const rows = await tx.message.findMany({
    where: { planId: { in: [...planIds] } },
    select: {
      id: true,
      planId: true,
      ruleOn: true,
      channel: true,
      state: true,
      tryNo: true,
      sentAt: true,
      outcome: true,
      nextTryOn: true,
    },
  })
  rows.sort((a, b) => a.tryNo - b.tryNo || (a.id < b.id ? -1 : 1))
  return new Map(
    rows.map(({ id, planId, ruleOn, ...row }) => [
      visitKey({ planId, ruleOn }),
      {
        ...row,
        messageId: id,
        channel: row.channel as Channel,
        state: row.state as MessageState,
        outcome: row.outcome as Outcome | null,
      },
    ]),
  )
}

/** Why a visit is written about no more, in words; null: it may be. A booking is not among them. */
export function closedWords(
  reminder: { outcome: string | null; tryNo: number; sentAt: number | null } | null,
  maxTries: number,
): string | null {
  if (!reminder) return null
  if (reminder.outcome === 'no') return say('The owner said no to this visit.')
  if (reminder.outcome === 'sold') return say('The owner has sold the car.')
  if (reminder.tryNo >= maxTries && reminder.sentAt !== null && reminder.outcome !== 'booked')
    return say('{maxTries} reminders went out, the most for one visit.', { maxTries })
  return null
}
