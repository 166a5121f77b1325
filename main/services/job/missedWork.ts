/** A step that came too late for the one before it: the work that costs is added to the job, or refused with a reason. */

import { durationWords, minuteWords } from '../../domain/calendar/index.ts'
import { clockedSteps, type FloorJob, leavingOf, projectJob } from '../../domain/floor/index.ts'
import { type Added, addedWords, addedWork, missedOf, type WaitingStep } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import type { FoundJob } from '../../store/jobRows.ts'
import { fromJson, toJson, withHelp } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { assertCan } from './assertCan.ts'
import type { MissedInput } from './inputs.ts'
import { changeJob } from './jobChange.ts'

type Row = FoundJob['steps'][number]

/** No job has so many steps but by a key held down. */
const mostSteps = 120

/** What a car in the shop has missed and nobody has settled, with the steps it would add; null: nothing. */
export function missedIn<S extends WaitingStep>(floor: Floor, job: FloorJob, steps: readonly S[]) {
  const lateAt = projectJob(floor, job).broken.flatMap(({ code, step }) =>
    code === 'waitTooLong' ? (step ?? []) : [],
  )
  const missed = missedOf(steps, lateAt)
  return missed && { ...missed, added: addedWork(steps, missed) }
}

/** The same for a screen: which step is late, in words, and what the key adds. */
export function missedView(floor: Floor, { id, steps }: JobRow) {
  const live = floor.jobs.find(job => job.id === id)
  const missed = live?.status === 'inShop' ? missedIn(floor, live, steps) : null
  if (!live || !missed) return null
  const { late, kept, added } = missed
  const names = [steps[late]!.name, steps[kept]!.name]
  const inTimeUntil = timeLeft(live, missed, floor.nowAt)
  if (inTimeUntil !== null)
    return {
      position: steps[late]!.position,
      words: say('As planned, "{names}" will come too late after "{names2}": start it by {inTimeUntil}.', {
        names: names[0],
        names2: names[1],
        inTimeUntil: minuteWords(inTimeUntil, floor.zone, floor.nowAt),
      }),
      adds: null,
    }
  return {
    position: steps[late]!.position,
    words: say('"{names}" comes too late after "{names2}".', { names: names[0], names2: names[1] }),
    adds: addedWords(added, durationWords),
  }
}

/** Until when the late step could still be begun in time; null: that has passed. */
function timeLeft(job: FloorJob, { late }: { late: number }, nowAt: number): number | null {
  const { waitMax = null } = clockedSteps(job.steps, leavingOf(job))[late] ?? {}
  const before = job.steps[late - 1]
  const until = before && waitMax !== null ? before.endAt + waitMax : null
  return until !== null && nowAt <= until ? until : null
}

/**
 * Settles the missed wait of the step at `position`: without a `reason` its work is added before it, and the job
 * projected and its promise judged anew; with one nothing is added, and the reason is kept.
 */
export function settleMissed(desk: Desk, input: MissedInput): Promise<{ version: number }> {
  const { id, version, position, reason } = input
  return changeJob(desk, { id, version }, ({ floor, row, job }) => {
    assertCan(row, 'work')
    const missed = missedIn(floor, job, row.steps)
    const late = missed && row.steps[missed.late]
    if (!missed || late?.position !== position)
      refuse(
        'not-missed',
        { position },
        say('No wait of this step is missed any more; look at the job again.'),
      )
    if (timeLeft(job, missed, floor.nowAt) !== null)
      refuse(
        'not-missed',
        { position },
        say('"{name}" can still be begun in time; nothing is to be added yet.', { name: late.name }),
      )
    const detail = { step: late.name, position }
    if (reason !== undefined) {
      const missedReason = checkText(reason, 'reason', say('The reason'), 400)
      return {
        act: 'work refused',
        detail: { ...detail, reason: missedReason },
        also: tx => tx.jobStep.update({ where: { id: late.id }, data: { missedReason } }),
      }
    }
    if (row.steps.length + missed.added.length > mostSteps)
      refuse(
        'too-many',
        { position },
        say('This job has {steps} steps already; say why it goes on as it is.', { steps: row.steps.length }),
      )
    return {
      insert: tx => insertSteps(tx, row.steps, { ...missed, nowAt: floor.nowAt }),
      act: 'work added',
      detail: { ...detail, added: addedWords(missed.added, durationWords) },
    }
  })
}

interface Insert {
  readonly late: number
  readonly added: readonly Added<Row>[]
  /** Abraded, the surface takes the next coat at once. */
  readonly work: string
  readonly nowAt: number
}

/** Writes the added steps where the car stands, with the people of the work before; what comes after moves on. */
async function insertSteps(
  tx: Tx,
  rows: readonly Row[],
  { late, added, work, nowAt }: Insert,
): Promise<void> {
  const { jobId, position: at } = rows[late]!
  const before = rows[late - 1]!
  for (const { id, position } of rows.slice(late).reverse()) {
    const to = position + added.length
    await tx.jobStep.update({ where: { id }, data: { position: to } })
    await tx.stepDraw.updateMany({ where: { jobId, position }, data: { position: to } })
  }
  await shiftDraft(tx, jobId, at, added.length)
  if (work === 'abrade') await tx.jobStep.update({ where: { id: rows[late]!.id }, data: { waitMin: null } })
  const draws = await tx.stepDraw.findMany({ where: { jobId } })
  let startAt = nowAt
  for (const [i, { id: _, crew, from, ...step }] of added.entries()) {
    const endAt = startAt + step.minutes
    const times = { plannedAt: startAt, plannedEndAt: endAt, startAt, endAt }
    const position = at + i
    await tx.jobStep.create({
      data: {
        ...withHelp(step),
        ...times,
        position,
        ...(i === 0 && { waitMin: null, waitMax: null }),
        sameBay: true,
        bayId: before.movedToBayId ?? before.bayId,
        actualStartAt: null,
        actualEndAt: null,
        movedToBayId: null,
        movedAt: null,
        crew: { create: crew },
      },
    })
    if (step.productId !== null)
      await tx.stepDraw.createMany({
        data: draws
          .filter(draw => draw.position === rows[from]!.position)
          .map(({ productId, expectedCenti, sdCenti }) => ({
            jobId,
            position,
            productId,
            expectedCenti,
            sdCenti,
          })),
      })
    startAt = endAt
  }
}

/** A record that is not signed yet names its layers by their places, which move with the steps. */
async function shiftDraft(tx: Tx, jobId: string, from: number, by: number): Promise<void> {
  const record = await tx.appliedRecord.findUnique({ where: { jobId } })
  const draft = fromJson<{ layers: { position: number }[] } | undefined>(record?.draft)
  if (!draft) return
  const layers = draft.layers.map(layer => ({
    ...layer,
    position: layer.position < from ? layer.position : layer.position + by,
  }))
  await tx.appliedRecord.update({ where: { jobId }, data: { draft: toJson({ ...draft, layers }) } })
}
