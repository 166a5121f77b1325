/** Whether a coated car stays until it may get wet, or leaves under a cover that somebody has confirmed by name. */

import { firstOpenAt, gridUp } from '../../domain/calendar/index.ts'
import { lastHoldMin, leavingOf } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import type { Desk } from '../desk/desk.ts'
import { assertCan } from './assertCan.ts'
import type { CoverInput } from './inputs.ts'
import { changeJob, type JobNow } from './jobChange.ts'

/**
 * Writes down who confirmed covered transport and storage, or takes that back: the hold at the end of the job becomes
 * as long as the rule now asks. What was promised to the customer stays until somebody promises anew.
 */
export function confirmCover(desk: Desk, { id, version, by }: CoverInput): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, now => {
    const { row, job, floor } = now
    assertCan(row, 'promise')
    const coveredBy = by === null ? null : checkText(by, 'by', say('The name of who confirmed it'), 80)
    if (coveredBy === row.coveredBy)
      refuse('as-before', { by }, say('That is written down already; close the dialog.'))
    return {
      data: { coveredBy, coveredAt: coveredBy === null ? null : floor.nowAt, ...handoverBy(now, coveredBy) },
      lastHold: holdBy(now, coveredBy),
      act: coveredBy === null ? 'cover taken back' : 'cover confirmed',
      detail: { by: coveredBy ?? row.coveredBy ?? '', handoverAt: job.handoverAt },
    }
  })
}

function holdBy({ job, floor, products }: JobNow, coveredBy: string | null) {
  const { gridMin, shop } = floor
  const leaving = leavingOf({ coveredBy })
  const minutes = lastHoldMin(job.steps, products, { leaving, rule: shop.handoverRule, gridMin })
  const last = job.steps.at(-1)
  return minutes === null || !last ? undefined : { minutes, plannedEndAt: last.plannedAt + minutes }
}

/** The handover as planned by the new hold: the first grid point with open doors after it. */
function handoverBy(now: JobNow, coveredBy: string | null): { plannedHandoverAt?: number } {
  const hold = holdBy(now, coveredBy)
  if (!hold) return {}
  const { floor } = now
  const at = firstOpenAt(floor.open, gridUp(floor, hold.plannedEndAt), true)
  return at === null ? {} : { plannedHandoverAt: at }
}
