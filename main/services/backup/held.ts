/** Reminders a restored copy finds still to send: they may have gone out after it was made. */

import { momentWords } from '../../domain/backup/index.ts'
import { say } from '../../domain/language/index.ts'
import { heldAfterRestore } from '../../domain/upkeep/index.ts'
import { toJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { findShop } from '../desk/shopView.ts'
import { outboxOf, saveOutbox } from '../upkeep/messageRows.ts'
import { upkeepRules } from '../upkeep/settings.ts'
import { outboxOfWords, saveWords } from '../upkeep/wordsRows.ts'

/**
 * Holds every reminder, and all words about a booking, of a restored database that are not out yet, and stops the writing of new ones by itself: what
 * was sent since the copy is not known in it. Answers how many are held.
 */
export function holdReminders(desk: Desk, copyAt: number): Promise<number> {
  return act(desk, async (tx, audit, at) => {
    const shop = await findShop(tx)
    if (!shop) return 0
    const when = momentWords(copyAt, { nowAt: at, zone: shop.zone })
    const words = say(
      "Restored from the copy of {when}: it may have gone out after that. Ask the owner or look in the mail server's list, then send it or leave it.",
      { when },
    )
    const rows = await tx.message.findMany({ where: { state: { in: ['draft', 'approved', 'sending'] } } })
    for (const row of rows) await saveOutbox(tx, row, heldAfterRestore(outboxOf(row), at, words))
    const said = await tx.jobWords.findMany({ where: { state: { in: ['approved', 'sending'] } } })
    for (const row of said) await saveWords(tx, row, heldAfterRestore(outboxOfWords(row), at, words))
    const rules = await upkeepRules(tx)
    if (rules.automatic) {
      const { version, ...kept } = rules
      await tx.upkeepSettings.update({
        where: { id: 1 },
        data: { rules: toJson({ ...kept, automatic: false }), version: { increment: 1 } },
      })
    }
    audit({
      act: 'restored',
      entity: 'shop',
      entityId: '1',
      detail: { copyAt, held: rows.map(row => row.id), automatic: rules.automatic },
    })
    return rows.length
  })
}

/** What is still to be decided of the last restore, in words; null: nothing, or there was none. */
export async function heldWords(tx: Tx, nowAt: number, zone: string): Promise<string | null> {
  const restored = await tx.auditLine.findFirst({
    where: { entity: 'shop', entityId: '1', act: 'restored' },
    orderBy: { at: 'desc' },
  })
  if (!restored) return null
  const { copyAt, held, automatic } = restored.detail as {
    copyAt: number
    held: string[]
    automatic: boolean
  }
  const waiting = await tx.message.findMany({
    where: { state: 'failed', failure: { path: '$.code', equals: 'unknown' } },
    select: { id: true },
  })
  const count = waiting.filter(({ id }) => held.includes(id)).length
  const stopped = automatic && !(await upkeepRules(tx)).automatic
  if (count === 0 && !stopped) return null
  const since = say('This shop was restored from the copy of {copyAt}.', {
    copyAt: momentWords(copyAt, { nowAt, zone }),
  })
  const ask = say(
    '{count} {count, plural, one {reminder} other {reminders}} waiting then may have gone out since: decide on each under Upkeep, Reminders.',
    { count },
  )
  const off = say(
    'Reminders are not sent by themselves until you switch that on again in the rules of upkeep.',
  )
  return [since, ...(count > 0 ? [ask] : []), ...(stopped ? [off] : [])].join(' ')
}
