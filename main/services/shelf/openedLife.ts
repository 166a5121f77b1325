/** What bottles that went off say of the life once opened: a proposal that a person takes or leaves. */

import { dateOf, dayNumber } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { shorterLife } from '../../domain/shelf/index.ts'
import { openedRows } from '../../store/openedRows.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { type Counted, countedProduct, type ShelfDay, shelfDay } from './countedProducts.ts'
import type { KeepLifeInput, ShortenLifeInput } from './inputs.ts'

/** The shorter life that a product's own bottles suggest; null where there is nothing to suggest. */
export async function lifeProposal(tx: Tx, product: Counted, { zone }: ShelfDay) {
  const rows = await openedRows(tx, product.id)
  const bottles = rows.map(({ openedOn, expiresOn, lastAt, wentOffAt }) => {
    const endedOn = dateOf(wentOffAt ?? lastAt, zone)
    return {
      days: Math.max(0, dayNumber(endedOn) - dayNumber(openedOn)),
      // Past the printed date a bottle may go off: that says nothing of the life once opened.
      ended: wentOffAt !== null && (expiresOn === null || endedOn <= expiresOn),
    }
  })
  const kept = await tx.shelfProduct.findUnique({
    where: { productId: product.id },
    select: { lifeKeptAt: true },
  })
  const keptAt = kept?.lifeKeptAt ?? null
  // Somebody looked at these bottles and kept the life: only more of them ask again.
  if (keptAt !== null && !rows.some(({ wentOffAt }) => (wentOffAt ?? keptAt) > keptAt)) return null
  const life = product.lifeAfterOpeningDays
  const shorter = shorterLife(bottles, life)
  if (!shorter) return null
  const { days, wentOff } = shorter
  const openNow = await tx.lot.count({ where: openBeyond(product.id, days) })
  return {
    days,
    openNow,
    words:
      life === null
        ? say(
            '{wentOff} of the last {bottles} opened bottles went off in use. With {days} {days, plural, one {day} other {days}} about nine in ten would have been good to the end.',
            { wentOff, bottles: bottles.length, days },
          )
        : say(
            '{wentOff} of the last {bottles} opened bottles went off within their {life} days. With {days} {days, plural, one {day} other {days}} about nine in ten would have been good to the end.',
            { wentOff, bottles: bottles.length, life, days },
          ),
  }
}

/** Open bottles that would have a shorter date. */
function openBeyond(productId: string, days: number) {
  return {
    productId,
    leftCenti: { gt: 0 },
    NOT: { openedOn: null },
    OR: [{ lifeAfterOpeningDays: null }, { lifeAfterOpeningDays: { gt: days } }],
  }
}

/** Takes the proposal: the product's life once opened, and that of the bottles open now. */
export function shortenLife(
  desk: Desk,
  { productId, version, days }: ShortenLifeInput,
): Promise<{ version: number }> {
  return act(desk, async (tx, audit, at) => {
    const proposed = await lifeProposal(tx, await countedProduct(tx, productId), await shelfDay(tx, at))
    if (proposed?.days !== days)
      refuse(
        'stale',
        { days },
        say('What the bottles suggest has changed meanwhile; look at the product again.'),
      )
    const {
      productId: _,
      version: __,
      ...shelf
    } = found(
      await tx.shelfProduct.findUnique({ where: { productId } }),
      { productId },
      say('This product is not there.'),
    )
    const { count } = await tx.lot.updateMany({
      where: openBeyond(productId, days),
      data: { lifeAfterOpeningDays: days },
    })
    const kept = { table: tx.shelfProduct, entity: 'stock' }
    const data = { ...shelf, lifeAfterOpeningDays: days, lifeUnlimited: false }
    const saved = await saveSingle(audit, kept, { key: { productId }, version }, data, { openBottles: count })
    return { version: saved.version }
  })
}

/** Keeps the life as it is: the proposal is gone until more bottles go off before their date. */
export function keepLife(desk: Desk, { productId, version }: KeepLifeInput): Promise<{ version: number }> {
  return act(desk, async (tx, audit, at) => {
    const {
      productId: _,
      version: __,
      ...shelf
    } = found(
      await tx.shelfProduct.findUnique({ where: { productId } }),
      { productId },
      say('This product is not there.'),
    )
    const kept = { table: tx.shelfProduct, entity: 'stock' }
    const saved = await saveSingle(audit, kept, { key: { productId }, version }, { ...shelf, lifeKeptAt: at })
    return { version: saved.version }
  })
}
