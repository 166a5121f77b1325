/** Cars put at new places together: one act, checked against everything booked by then. */

import { planOf, wordsFor } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { objections, relayTask } from '../../domain/relay/index.ts'
import { type FloorPlan, reasonText } from '../../domain/schedule/index.ts'
import { listWords } from '../../domain/words.ts'
import type { Tx } from '../../store/store.ts'
import { saveMove } from '../board/moveSave.ts'
import type { Audit } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, nameOfCar } from '../floor/jobRows.ts'
import { restOfJob } from '../floor/movePlan.ts'
import { placedJob } from '../floor/placed.ts'
import { otherVisits, visitInTheWay } from '../floor/vehicleFree.ts'

/**
 * Writes the plans of these jobs, each wholly ahead. Refused as stale, saving nothing, where one of them does not fit
 * what is booked by now.
 */
export async function placeTogether(
  tx: Tx,
  audit: Audit,
  floor: Floor,
  rows: readonly JobRow[],
  plan: FloorPlan,
): Promise<void> {
  const ids = rows.map(row => row.id)
  const task = relayTask(floor, new Set(ids), { sooner: true })
  const [objection] = objections(task, plan, ids)
  if (objection) {
    const row = rows.find(each => each.id === objection.jobId)!
    const words = wordsFor(
      floor,
      row.steps.map(step => step.name),
    )
    const said = [...new Set(objection.violations.map(violation => reasonText(violation, words)))].slice(0, 2)
    const what = said.length > 0 ? listWords(said) : say('cars would have to change places')
    refuse(
      'stale',
      { jobIds: row.id },
      say('The floor has changed: {vehicle} has no room there any more, {what}. Lay the floor again.', {
        vehicle: nameOfCar(row.vehicle),
        what,
      }),
    )
  }
  const moved = new Map(rows.map(row => [row.id, placedJob({ job: row, index: 0 }, plan[row.id]!)] as const))
  const after: Floor = {
    ...floor,
    jobs: floor.jobs.map(job => {
      const now = moved.get(job.id)
      return now ? { ...job, steps: now.steps, handoverAt: now.handoverAt, leavesAt: now.leavesAt } : job
    }),
  }
  const timesOf = (number: number) => {
    const job = moved.get(rows.find(row => row.number === number)?.id ?? '')
    return job && { dropOffAt: job.dropOffAt, handoverAt: job.handoverAt }
  }
  for (const row of rows) {
    const job = moved.get(row.id)!
    // What goes with another of these cars goes with it at its new time: a loan car may be swapped.
    const visits = (await otherVisits(tx, floor, row)).map(visit => ({
      ...visit,
      ...timesOf(visit.number),
    }))
    const elsewhere = visitInTheWay(floor, visits, job)
    if (elsewhere !== null)
      refuse(
        'stale',
        { jobIds: row.id },
        say('{elsewhere}. Accept the proposal without {car}, or take back what it borrows.', {
          elsewhere,
          car: nameOfCar(row.vehicle),
        }),
      )
    await saveMove(tx, restOfJob(after, row, 0, visits), plan[row.id]!, job)
    audit({
      act: 'moved',
      entity: 'job',
      entityId: row.id,
      detail: {
        position: 0,
        bayId: job.steps[0]!.bayId,
        startAt: job.dropOffAt,
        handoverAt: job.handoverAt,
      },
    })
  }
}

/** A job's plan as it stands, to be put back to. */
export function placeOf(row: JobRow) {
  return { id: row.id, version: row.version + 1, plan: planOf(row) }
}
