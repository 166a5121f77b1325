import { minuteWords } from '../../domain/calendar/index.ts'
import { judge } from '../../domain/floor/index.ts'
import { can, isMovableFrom } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { sentence } from '../../domain/words.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { type Desk, stampOf } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, jobRows } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { planMove, type RestOfJob, restOfJob } from '../floor/movePlan.ts'
import { placedJob } from '../floor/placed.ts'
import { farthestMin } from '../floor/reach.ts'
import { stayViews } from '../floor/stayViews.ts'
import { otherVisits } from '../floor/vehicleFree.ts'
import { productsById } from '../setUp/soldTreatments.ts'
import type { MoveInput } from './inputs.ts'
import { nearestPlace } from './moveNearest.ts'
import { saveMove } from './moveSave.ts'

/** How far past the wished start the rest of a job may reach, in minutes. */
const reachMin = 60 * 1440

export type TriedMoveView = Awaited<ReturnType<typeof tryMove>>

/** Says whether a stay may be dragged to a place, what then becomes of the rest, or why not and where instead. */
export async function tryMove(desk: Desk, input: MoveInput) {
  const tx = desk.store.read
  const rest = await restOf(tx, desk.now(), input)
  if ('reasons' in rest) return { ok: false as const, reasons: rest.reasons, nearest: null }
  const plan = planMove(rest, input)
  if (!plan.ok) return { ok: false as const, reasons: plan.reasons, nearest: nearestPlace(rest, input) }
  return movedView(tx, rest, placedJob(rest, plan.offer.plan))
}

/** Drags a stay and saves it, checked once more against everything booked by then. */
export function moveStay(desk: Desk, input: MoveInput) {
  const nowAt = desk.now()
  return desk.store.transact(stampOf(desk), async (tx, audit) => {
    const rest = await restOf(tx, nowAt, input)
    const refuse = (reasons: string[]) => new Refusal('refused', 'startAt', input.startAt, reasons.join(' '))
    if ('reasons' in rest) throw refuse(rest.reasons)
    const plan = planMove(rest, input)
    if (!plan.ok) throw refuse(plan.reasons)
    const job = placedJob(rest, plan.offer.plan)
    const view = await movedView(tx, rest, job)
    await saveMove(tx, rest, plan.offer.plan, job)
    audit({
      act: 'moved',
      entity: 'job',
      entityId: job.id,
      detail: {
        position: input.position,
        bayId: input.bayId,
        startAt: input.startAt,
        handoverAt: job.handoverAt,
      },
    })
    return { ...view, version: job.version + 1 }
  })
}

async function restOf(
  tx: Tx,
  nowAt: number,
  { jobId, version, position, bayId, startAt }: MoveInput,
): Promise<RestOfJob | { reasons: string[] }> {
  if (startAt > nowAt + farthestMin) return { reasons: [say('That is too far off; choose an earlier day.')] }
  const floor = await loadFloor(tx, nowAt, Math.max(nowAt, startAt) + reachMin)
  const [job] = await jobRows(tx, floor, { id: jobId })
  if (!job)
    throw new Refusal('missing', 'jobId', jobId, say('This job is not there; look at the board again.'))
  if (job.version !== version) assertFresh(0, 'job', jobId)
  if (!floor.bays.some(bay => bay.id === bayId && !bay.archived))
    throw new Refusal('missing', 'bayId', bayId, say('This bay is not there; choose another.'))
  const index = job.steps.findIndex(step => step.position === position)
  const step = job.steps[index]
  if (!step)
    throw new Refusal(
      'missing',
      'position',
      position,
      say('This step is not there; look at the board again.'),
    )
  if (!can(job, 'move') || !isMovableFrom(job.steps, index))
    return {
      reasons: [
        step.kind === 'hold'
          ? say('"{name}" stays where its coat was laid.', { name: step.name })
          : say('"{name}" or what follows has begun, so it stays where it is.', { name: step.name }),
      ],
    }
  return restOfJob(floor, job, index, await otherVisits(tx, floor, job))
}

async function movedView(tx: Tx, rest: RestOfJob, job: JobRow) {
  const { floor } = rest
  const products = await productsById(
    tx,
    job.steps.flatMap(step => step.productId ?? []),
  )
  const moved = {
    ...floor,
    jobs: floor.jobs.map(other => (other.id === job.id ? { ...other, ...partOf(job) } : other)),
  }
  const judged = judge(moved)
  const { standing } = judged.of(job)
  return {
    ok: true as const,
    /** All stays of the job as they would be. */
    stays: stayViews(job, moved, products, judged),
    handoverAt: job.handoverAt,
    promiseKept: standing === 'kept' || standing === 'none',
    words: changeWords(floor, rest.job, job),
  }
}

function partOf({ steps, handoverAt, leavesAt }: JobRow) {
  return { steps, handoverAt, leavesAt }
}

/** What the customer and the crew would notice. */
function changeWords(floor: Floor, before: JobRow, after: JobRow): string[] {
  const when = (at: number) => minuteWords(at, floor.zone, floor.nowAt)
  const words: string[] = []
  if (after.dropOffAt !== before.dropOffAt)
    words.push(
      say('drop-off moves from {dropOffAt} to {dropOffAt2}', {
        dropOffAt: when(before.dropOffAt),
        dropOffAt2: when(after.dropOffAt),
      }),
    )
  words.push(
    after.handoverAt === before.handoverAt
      ? say('handover stays {handoverAt}', { handoverAt: when(after.handoverAt) })
      : say('handover moves from {handoverAt} to {handoverAt2}', {
          handoverAt: when(before.handoverAt),
          handoverAt2: when(after.handoverAt),
        }),
  )
  if (after.handoverAt > after.promisedAt && before.status !== 'held')
    words.push(
      say('that is after the promise, {promisedAt}: tell the customer', {
        promisedAt: when(after.promisedAt),
      }),
    )
  return words.map(sentence)
}
