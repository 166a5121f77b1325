/** What every queue of the outbox asks alike: which mail leaves next, and whether its address is still the owner's. */

import { say } from '../../domain/language/index.ts'
import type { Tx } from '../../store/store.ts'
import { addressKey, reachOf } from '../upkeep/reach.ts'

/** Approved e-mail whose hour has come, the oldest first, by its ids. */
export function nextMail(nowAt: number) {
  return {
    where: {
      state: 'approved',
      channel: 'email',
      OR: [{ notBeforeAt: null }, { notBeforeAt: { lte: nowAt } }],
    },
    orderBy: [{ createdAt: 'asc' as const }, { id: 'asc' as const }],
    select: { id: true },
  }
}

/** Says that a customer is reached elsewhere by now; null where the address stands. */
export async function addressMoved(
  tx: Tx,
  { customerId, address }: { customerId: string; address: string },
): Promise<string | null> {
  const onFile = (await reachOf(tx, [customerId])).get(customerId)?.address.email ?? ''
  return addressKey(onFile) === addressKey(address) ? null : say('The address on file is another one by now.')
}
