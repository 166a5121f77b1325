import { type Channel, withdraw } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import { releaseSlots } from '../upkeep/releaseSlots.ts'
import { outboxOf, saveOutbox } from './messageRows.ts'

/**
 * Withdraws every message that has not gone out about a visit, a plan, a car or an owner, with the reason in words, and lets the places
 * it proposes go. One already on its way cannot be called back, but is not tried again.
 */
export async function stopMessages(
  tx: Tx,
  nowAt: number,
  about:
    | { planId: string; ruleOn?: string }
    | { vehicleId: string }
    | { customerId: string; channel?: Channel },
  because: string,
): Promise<number> {
  const rows = await tx.message.findMany({
    where: { ...about, state: { in: ['draft', 'approved', 'failed', 'sending'] } },
  })
  for (const row of rows) {
    await saveOutbox(tx, row, withdraw(outboxOf(row), because))
    await releaseSlots(tx, row, nowAt)
  }
  return rows.length
}
