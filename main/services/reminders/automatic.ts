import { dateOf, wallMinuteOf } from '../../domain/calendar/index.ts'
import type { Store } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { findShop } from '../desk/shopView.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import { approveAll } from './messageActs.ts'
import { runOutbox } from './outboxRun.ts'
import { batchWritten, beginBatch } from './prepare.ts'

/** The day the batch was last written by itself. */
const preparedOn = new WeakMap<Store, string>()

/**
 * What the host does every minute: sends what was approved and may go out by now. In the automatic mode, off unless the
 * shop switches it on, it also writes and approves the batch, once a day when the sending hours begin.
 */
export async function upkeepTick(desk: Desk): Promise<void> {
  const tx = desk.store.read
  const shop = await findShop(tx)
  if (!shop) return
  const rules = await upkeepRules(tx)
  const nowAt = desk.now()
  const today = dateOf(nowAt, shop.zone)
  if (
    rules.automatic &&
    preparedOn.get(desk.store) !== today &&
    wallMinuteOf(nowAt, shop.zone) >= rules.fromMin
  ) {
    preparedOn.set(desk.store, today)
    const auto = { ...desk, who: 'automatic' }
    beginBatch(auto)
    // What a person has stopped is theirs to look over.
    if ((await batchWritten(auto))?.stopped === false) await approveAll(auto)
  }
  const where = { OR: [{ state: 'approved', channel: 'email' }, { state: 'sending' }] }
  const waits = (await tx.message.count({ where })) + (await tx.jobWords.count({ where }))
  if (waits > 0) await runOutbox(desk, { byItself: true })
}
