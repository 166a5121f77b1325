/** Somebody is sick, a bay is down: written down as it is, whatever is booked; what that touches is told. */

import { difference, spanSet } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import { checkNote } from '../../domain/shop/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveRow } from '../desk/keep.ts'
import { judged, wholeFloor } from '../floor/judged.ts'
import type { OutInput } from './inputs.ts'

/** Longer than anybody is away or a bay is down by one act, in minutes: two years. */
const longestMin = 2 * 366 * 1440

/**
 * Records it, also in the middle of a step, and never refuses it for what is booked. What is noted already for a part of
 * the time stays as it is; the rest is added around it. Answers with the jobs whose promises are worse off by it.
 */
export function recordOut(desk: Desk, input: OutInput): Promise<{ jobIds: string[] }> {
  return act(desk, async (tx, audit, nowAt) => {
    const { fromAt, toAt } = input
    if (toAt <= fromAt) refuse('span-order', { toAt }, say('It ends before it begins; give a later end.'))
    if (toAt - fromAt > longestMin)
      refuse('span-far', { toAt }, say('That is more than two years; give an earlier end.'))
    const before = judged(await wholeFloor(tx, nowAt))
    const free = difference([{ from: fromAt, to: toAt }], spanSet(await notedSpans(tx, input)))
    if (free.length === 0) refuse('as-before', { toAt }, say('That is noted already, for all of this time.'))
    const reason = checkNote(input.reason, 'reason', 120)
    for (const span of free) {
      const data = { fromAt: span.from, toAt: span.to, reason }
      if (input.kind === 'person')
        await saveRow(
          audit,
          { table: tx.crewAbsence, entity: 'absence' },
          {},
          { data: { ...data, crewId: input.crewId } },
        )
      else
        await saveRow(
          audit,
          { table: tx.bayClosure, entity: 'closure' },
          {},
          { data: { ...data, bayId: input.bayId } },
        )
    }
    const floor = await wholeFloor(tx, nowAt)
    const after = judged(floor)
    const jobIds = floor.jobs
      .filter(job => {
        const [was, is] = [before.of(job), after.of(job)]
        return is.lateMin > was.lateMin || (is.lack !== null && is.lackWords.join() !== was.lackWords.join())
      })
      .map(job => job.id)
    return { jobIds }
  })
}

/** When the person is away or the bay is closed already. */
async function notedSpans(tx: Tx, input: OutInput) {
  const over = { fromAt: { lt: input.toAt }, toAt: { gt: input.fromAt } }
  if (input.kind === 'person') {
    found(
      await tx.crewMember.findFirst({ where: { id: input.crewId, archivedAt: null } }),
      { crewId: input.crewId },
      say('This person is not of the crew any more; choose another.'),
    )
    const rows = await tx.crewAbsence.findMany({ where: { crewId: input.crewId, ...over } })
    return rows.map(row => ({ from: row.fromAt, to: row.toAt }))
  }
  found(
    await tx.bay.findFirst({ where: { id: input.bayId, archivedAt: null } }),
    { bayId: input.bayId },
    say('This bay is not in use any more; choose another.'),
  )
  const rows = await tx.bayClosure.findMany({ where: { bayId: input.bayId, ...over } })
  return rows.map(row => ({ from: row.fromAt, to: row.toAt }))
}
