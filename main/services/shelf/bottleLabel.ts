import { bottleLabelPdf } from '../../documents/bottleLabel.ts'
import { dayWords } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { lastDateOf, shareWords } from '../../domain/shelf/index.ts'
import { lotRowsById } from '../../store/lotRows.ts'
import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { countedProduct, shelfDay } from './countedProducts.ts'
import type { DocumentFile } from './orders/orderDocument.ts'
import { safetyOf } from './safety.ts'
import { lotUrl } from './scan.ts'

/**
 * The label for a bottle decanted from a lot: what is in it, what it can do, what to wear, and a code that leads to the
 * lot's record at `origin`. Where the sheet is silent, the label says so.
 */
export async function bottleLabel(
  desk: Desk,
  input: { lotId: string; origin: string },
): Promise<DocumentFile> {
  const tx = desk.store.read
  const [row] = await lotRowsById(tx, [input.lotId])
  if (!row) refuse('missing', { lotId: input.lotId }, say('This bottle is not on the shelf.'))
  const [product, shop, ground] = await Promise.all([
    countedProduct(tx, row.productId),
    shopOf(tx),
    shelfDay(tx, desk.now()),
  ])
  const safety = await safetyOf(tx, row.productId)
  const last = lastDateOf(row)
  // On the label of a bottle in use only that matters which changes how it is handled.
  const handled = new Set(['hazardCodes', 'protection', 'precautionaryCodes', 'storageGroup'])
  const bytes = await bottleLabelPdf({
    productName: product.name,
    shopName: shop.name,
    at: ground.nowAt,
    originWords:
      (row.waterParts === null
        ? say('decanted {date} from no. {number}', { date: dayWords(ground.date), number: row.number })
        : say('no. {number}, mixed {receivedOn}, {shareWords}', {
            number: row.number,
            receivedOn: dayWords(row.receivedOn),
            shareWords: shareWords({ waterParts: row.waterParts }),
          })) +
      `${row.batch ? say(', batch {batch}', { batch: row.batch }) : ''}${last === null ? '' : say(', use by {last}', { last: dayWords(last) })}`,
    maker: safety.maker,
    signalWord: safety.label.signalWord,
    pictograms: safety.label.pictograms.map(each => each.code),
    hazards: safety.label.hazards.map(each => each.text),
    precautions: safety.label.precautions.map(each => each.text),
    protection: safety.protection ?? [],
    silences: safety.silences.filter(each => handled.has(each.field)).map(each => each.words),
    recordUrl: lotUrl(input.origin, row.id),
    onlyHere: !reachedFromElsewhere(input.origin),
  })
  return { name: `label-${row.number}.pdf`, type: 'application/pdf', bytes }
}

/** Whether a telephone could open what stands at this address: not the window's own scheme, nor this computer's loopback. */
function reachedFromElsewhere(origin: string): boolean {
  const host = /^https?:\/\/(\[[^\]]*\]|[^:/]+)/.exec(origin)?.[1]
  return host !== undefined && !/^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(host)
}
