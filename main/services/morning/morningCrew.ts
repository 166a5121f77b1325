import { crewSpans, dateOf, type OpeningHours, spanSet } from '../../domain/calendar/index.ts'
import { presenceOf, stateOf } from '../../domain/floor/index.ts'
import type { Tx } from '../../store/store.ts'
import { type JobRow, plateWords } from '../floor/jobRows.ts'
import { judged } from '../floor/judged.ts'
import { carOf, type Day } from './morningDay.ts'

/** Each of the crew with when they are there and their steps of the day, in order. */
export async function crewOf(tx: Tx, day: Day, rows: readonly JobRow[]) {
  const { fromAt, toAt, floor, products, open } = day
  const people = await tx.crewMember.findMany({
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    include: { absences: { where: { fromAt: { lt: toAt }, toAt: { gt: fromAt } } } },
  })
  const steps = rows.flatMap(row =>
    row.steps.flatMap((step, i) =>
      step.kind === 'work' && step.startAt < toAt && step.endAt > fromAt
        ? { row, step, state: stateOf(step, row.steps.slice(0, i), floor.nowAt) }
        : [],
    ),
  )
  const missing = new Set(
    judged(floor)
      .conflicts.filter(each => each.kind === 'away')
      .map(each => `${each.crewId} ${each.jobId} ${each.position}`),
  )
  return people
    .map(person => ({
      id: person.id,
      name: person.name,
      // Who has left, and who comes from outside, is on the sheet of a day with work for them.
      ifBooked: person.archivedAt !== null || person.noticeDays > 0,
      present: crewSpans(open, floor.zone, {
        weekly: person.weekly as OpeningHours[] | null,
        absences: spanSet(person.absences.map(({ fromAt, toAt }) => ({ from: fromAt, to: toAt }))),
      }),
      steps: steps
        .flatMap(({ row, step, state }) => {
          const there = presenceOf(floor.open, step).find(each => each.id === person.id)
          return there ? [{ row, step, state, there }] : []
        })
        .map(({ row, step, state, there }) => ({
          ...carOf(row),
          position: step.position,
          name: step.name,
          bayName: floor.bayNames.get(step.bayId) ?? '',
          fromAt: there.from,
          toAt: there.to,
          /** For a part of the step alone. */
          helps: step.helperIds?.includes(person.id) ?? false,
          state,
          /** They are not there for it, or not for all of it. */
          missing: missing.has(`${person.id} ${row.id} ${step.position}`),
          with: step.crewIds.filter(id => id !== person.id).map(id => floor.crewNames.get(id) ?? ''),
          productName: step.productId === null ? null : (products.get(step.productId)?.name ?? null),
        }))
        .sort((a, b) => a.fromAt - b.fromAt),
    }))
    .filter(person => !person.ifBooked || person.steps.length > 0)
    .map(({ ifBooked: _, ...person }) => person)
}

/** Booked steps of hands from outside whose notice ends on the day: whoever is not asked by then does not come. */
export async function toAskOf(tx: Tx, { date, floor }: Day) {
  const people = await tx.crewMember.findMany({ where: { noticeDays: { gt: 0 } } })
  return people
    .flatMap(({ id, name, noticeDays }) =>
      floor.jobs.flatMap(job =>
        job.steps
          .filter(step => {
            const on = Temporal.PlainDate.from(dateOf(step.startAt, floor.zone))
            return (
              step.crewIds.includes(id) &&
              step.actualStartAt === null &&
              on.subtract({ days: noticeDays }).toString() === date
            )
          })
          .map(step => ({
            jobId: job.id,
            plate: plateWords(job.plate),
            name,
            step: step.name,
            at: step.startAt,
          })),
      ),
    )
    .sort((a, b) => a.at - b.at)
}
