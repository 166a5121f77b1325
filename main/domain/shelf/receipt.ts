/** Goods arriving: one lot and one receipt for each container, their cost shared out to the last minor unit. */

import { dateOfDay, dayNumber } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import { allocate } from '../money/index.ts'
import { refuse } from '../refusal.ts'
import { checkPositive } from './amount.ts'
import type { MoveDraft } from './ledger.ts'
import type { Lot } from './lot.ts'

export interface ReceivedLine {
  readonly productId: string
  readonly sizeId: string
  readonly containers: number
  readonly contentCenti: number
  /** Price of the whole line in minor units. */
  readonly goodsMinor: number
  readonly batch: string | null
  readonly expiresOn: string | null
}

export interface ReceiptPlan {
  /** A lot for each container, without an id: the store gives it one. */
  readonly lots: readonly Omit<Lot, 'id'>[]
  /** The receipt of the lot at the same index; its `lotId` is empty until then. */
  readonly moves: readonly MoveDraft[]
}

/**
 * Lots and receipts of one delivery. Carriage is shared by the lines' value, as it was charged for all of them; lines
 * without value share it by their number of containers.
 */
export function receiveGoods(
  lines: readonly ReceivedLine[],
  carriageMinor: number,
  when: { readonly date: string; readonly at: number; readonly by: string },
): ReceiptPlan {
  lines.forEach((line, i) => {
    checkLine(line, i, when.date)
  })
  if (lines.length === 0) refuse('nothing-received', { lines }, say('Say what came.'))
  const priced = lines.some(line => line.goodsMinor > 0)
  const carriage = allocate(
    carriageMinor,
    lines.map(line => (priced ? line.goodsMinor : line.containers)),
  )
  const lots: Omit<Lot, 'id'>[] = []
  const moves: MoveDraft[] = []
  lines.forEach((line, i) => {
    const costs = allocate(line.goodsMinor + (carriage[i] ?? 0), new Array<number>(line.containers).fill(1))
    for (const costMinor of costs) {
      lots.push({
        productId: line.productId,
        sizeId: line.sizeId,
        batch: line.batch,
        receivedOn: when.date,
        expiresOn: line.expiresOn,
        openedOn: null,
        lifeAfterOpeningDays: null,
      })
      moves.push({
        lotId: '',
        productId: line.productId,
        kind: 'receipt',
        centi: line.contentCenti,
        at: when.at,
        by: when.by,
        why: null,
        stepId: null,
        jobId: null,
        costMinor,
        correctsId: null,
      })
    }
  })
  return { lots, moves }
}

function checkLine(line: ReceivedLine, i: number, date: string): void {
  checkPositive(line.contentCenti, `lines.${i}.contentCenti`)
  if (!Number.isInteger(line.containers) || line.containers < 1 || line.containers > 1000)
    refuse(
      'containers-bad',
      { [`lines.${i}.containers`]: line.containers },
      say('{containers} containers cannot be received; give 1 to 1000.', { containers: line.containers }),
    )
  if (line.expiresOn === null) return
  const last = dayNumber(line.expiresOn, `lines.${i}.expiresOn`)
  if (last < dayNumber(date))
    refuse(
      'expired-on-arrival',
      { [`lines.${i}.expiresOn`]: line.expiresOn },
      say('This expired on {last}, before it came; send it back, or correct the date.', {
        last: dateOfDay(last),
      }),
    )
}
