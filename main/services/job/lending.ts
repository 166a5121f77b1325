/** What a job borrows, given and taken back after it was booked. */
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Desk } from '../desk/desk.ts'
import { lendWith } from '../floor/lent.ts'
import { assertCan } from './assertCan.ts'
import type { LendInput } from './inputs.ts'
import { changeJob } from './jobChange.ts'

/** Lends one thing of a kind with the job, or takes back what it has of it. */
export function lend(desk: Desk, { id, version, kind, on }: LendInput): Promise<{ version: number }> {
  return changeJob(desk, { id, version }, ({ row, job, floor }) => {
    assertCan(row, 'move')
    const had = row.loans.filter(loan => loan.lendable.kind === kind)
    if (had.length > 0 === on)
      refuse(
        'as-before',
        { kind },
        on
          ? say('This job has a {kind} already.', { kind: say(kind) })
          : say('This job has no {kind}.', { kind: say(kind) }),
      )
    const dropOffAt = row.arrivedAt ?? row.dropOffAt
    return {
      act: on ? 'lent' : 'loan taken back',
      detail: { kind, name: had[0]?.lendable.name ?? kind },
      also: tx =>
        on
          ? lendWith(tx, floor, { id, dropOffAt, handoverAt: job.leavesAt }, [kind])
          : tx.jobLoan.deleteMany({ where: { id: { in: had.map(loan => loan.id) } } }),
    }
  })
}
