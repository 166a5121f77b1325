/** What is looked after around the work: ticked off with a name and the time, and asked for where it is due. */

import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import type { CheckMoment } from '../../domain/shop/index.ts'
import { checkText } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { assertCan } from './assertCan.ts'
import type { TickInput } from './inputs.ts'
import { changeJob } from './jobChange.ts'

/** A job's checks in their order. */
export async function checksIn(tx: Tx, jobId: string) {
  const rows = await tx.jobCheck.findMany({ where: { jobId }, orderBy: { position: 'asc' } })
  return rows.map(({ id, moment, words, doneBy, doneAt }) => ({
    id,
    moment: moment as CheckMoment,
    words,
    doneBy,
    doneAt,
  }))
}

/** The words of those due at one of these moments that nobody has ticked off. */
export async function openChecks(tx: Tx, jobId: string, moments: readonly CheckMoment[]): Promise<string[]> {
  const rows = await checksIn(tx, jobId)
  return rows.filter(each => each.doneBy === null && moments.includes(each.moment)).map(each => each.words)
}

/** Ticks a check off in somebody's name, or takes that back (`by`: null). */
export function tickCheck(desk: Desk, { id, version, checkId, by }: TickInput): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, async ({ tx, row, floor }) => {
    assertCan(row, 'work')
    const check = found(
      await tx.jobCheck.findFirst({ where: { id: checkId, jobId: id } }),
      { checkId },
      say('This check is not there; look at the job again.'),
    )
    const doneBy = by === null ? null : checkText(by, 'by', say('The name of who looked'), 80)
    if (doneBy === check.doneBy)
      refuse('as-before', { by }, say('That is written down already; look at the job again.'))
    return {
      act: doneBy === null ? 'tick taken back' : 'ticked off',
      detail: { check: check.words, by: doneBy ?? check.doneBy ?? '' },
      also: tx =>
        tx.jobCheck.update({
          where: { id: checkId },
          data: { doneBy, doneAt: doneBy === null ? null : floor.nowAt },
        }),
    }
  })
}
