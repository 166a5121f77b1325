import { sumMinor } from '../../domain/money/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { reasonText, type Violation } from '../../domain/schedule/index.ts'
import type { Condition, Finish, SizeClass, Stage } from '../../domain/shop/index.ts'
import type { Desk } from '../desk/desk.ts'
import { dayWords, durationWords, minuteWords, sentence, wordsFor } from '../desk/shopWords.ts'
import { stateOf } from '../floor/blocks.ts'
import { conflictsOn } from '../floor/conflicts.ts'
import { coatOfHold, coatsOf, leavingTimes, marksOf, type ProductsById } from '../floor/cureMarks.ts'
import type { Floor } from '../floor/floor.ts'
import { projectJob } from '../floor/floorProjection.ts'
import { type JobRow, jobRows, plateWords, vehicleWords } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { profilesIn } from '../floor/profilesIn.ts'
import { isMovable, stayViews } from '../floor/stayViews.ts'
import type { JobStatus } from '../floor/views.ts'
import { productsById } from '../setUp/soldTreatments.ts'
import { cautionWords, cureWords } from './cautions.ts'
import { jobHistory } from './jobHistory.ts'
import type { JobStepView, JobView } from './views.ts'

/** How far a job can slip and still be followed, in minutes. */
const reachMin = 45 * 1440

/** Everything about one job, as it now stands. */
export async function getJob(desk: Desk, { id }: { id: string }): Promise<JobView> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const floor = await loadFloor(tx, nowAt, nowAt + reachMin)
  const [job] = await jobRows(tx, floor, { id })
  if (!job) throw new Refusal('missing', 'id', id, 'This job is not there; look at the board again.')
  const products = await productsById(
    tx,
    job.steps.flatMap(step => step.productId ?? []),
  )
  const conflicts = conflictsOn(floor)
  const when = (at: number) => minuteWords(at, floor.zone, nowAt)
  const lateMin = Math.max(0, job.handoverAt - job.promisedAt)
  const { vehicle, customer, status } = job
  return {
    id,
    number: job.number,
    version: job.version,
    status: status as JobStatus,
    nowAt,
    zone: floor.zone,
    customer: { id: customer.id, name: customer.name, phone: customer.phone, email: customer.email },
    vehicle: {
      id: vehicle.id,
      plate: plateWords(vehicle.plate),
      words: vehicleWords(vehicle),
      sizeClass: vehicle.sizeClass as SizeClass,
      finish: vehicle.finish as Finish,
      note: vehicle.note,
    },
    condition: job.condition as Condition,
    treatments: job.treatments.map(({ name, priceMinor }) => ({ name, priceMinor })),
    priceMinor: sumMinor(job.treatments.map(treatment => treatment.priceMinor)),
    currency: floor.shop.currency,
    note: job.note,
    heldUntilAt: job.heldUntilAt,
    createdAt: job.createdAt,
    dropOffAt: job.dropOffAt,
    arrivedAt: job.arrivedAt,
    promisedAt: job.promisedAt,
    handoverAt: job.handoverAt,
    leftAt: job.leftAt,
    ...leavingTimes(job.steps, products),
    lateMin,
    lateWords: lateMin === 0 || isOver(status) ? null : lateWords(job, lateMin, when),
    conflicts: [
      ...new Set([
        ...conflicts.filter(conflict => conflict.jobId === id).map(conflict => conflict.words),
        ...brokenWords(floor, job, products),
      ]),
    ],
    cureWords: rulingCoats(job, products).map(coat => cureWords(coat, nowAt, when)),
    cautions: cautionsOf(job, products),
    steps: stepViews(job, floor, products),
    stays: isGone(status) ? [] : stayViews(job, floor, products, conflicts),
    profiles: profilesIn(products),
    can: {
      confirm: status === 'held' || status === 'lapsed',
      arrive: status === 'booked',
      handOver: status === 'inShop',
      promise: status === 'booked' || status === 'inShop',
      cancel: status === 'booked' || status === 'held',
      move: job.steps.some(step => isMovable(job, step.position)),
    },
    history: await jobHistory(tx, id, at => dayWords(at, floor.zone)),
  }
}

/** The last coat of each product: what lies under one of its own kind was laid earlier and asks no more. */
function rulingCoats(job: JobRow, products: ProductsById) {
  const last = new Map(coatsOf(job.steps, products).map(coat => [coat.product.id, coat]))
  return [...last.values()]
}

function isGone(status: string): boolean {
  return status === 'cancelled' || status === 'lapsed'
}

function isOver(status: string): boolean {
  return isGone(status) || status === 'handedOver'
}

function lateWords(job: JobRow, lateMin: number, when: (at: number) => string): string {
  return (
    `Promised for ${when(job.promisedAt)}; as it stands the car goes home ${when(job.handoverAt)}, ` +
    `${durationWords(lateMin)} later. Tell the customer and give a new promise, or make room on the board.`
  )
}

/** Windows missed and hours run out, with what the data sheet asks where it says so. */
function brokenWords(floor: Floor, job: JobRow, products: ProductsById): string[] {
  const live = floor.jobs.find(other => other.id === job.id)
  if (live?.status !== 'inShop') return []
  const words = wordsFor(
    floor,
    job.steps.map(step => `"${step.name}"`),
  )
  // Bays run into are told with whose car it is already.
  const told = ({ code }: Violation) =>
    code === 'waitTooLong' || code === 'waitTooShort' || code === 'beyondHorizon'
  return projectJob(floor, live)
    .broken.filter(told)
    .map(violation => {
      const coat = coatOfHold(coatsOf(job.steps, products), violation.step ?? 0, null)
      const missed = violation.code === 'waitTooLong' ? coat?.product.cureProfile.missedRecoat : undefined
      const asks = missed ? ` The profile of ${coat!.product.name} asks: ${sentence(missed)}` : ''
      return sentence(reasonText(violation, words)) + asks
    })
}

/** A line for each chemical still to be handled. */
function cautionsOf(job: JobRow, products: ProductsById): string[] {
  const ahead = job.steps.filter(
    step => step.kind === 'work' && step.actualEndAt === null && !isOver(job.status),
  )
  const ids = new Set(ahead.flatMap(step => step.productId ?? []))
  return [...products.values()]
    .filter(({ id, kind }) => ids.has(id) && kind !== 'consumable')
    .map(cautionWords)
}

function stepViews(job: JobRow, floor: Floor, products: ProductsById): JobStepView[] {
  const { steps } = job
  const here = job.status === 'inShop'
  const coats = coatsOf(steps, products)
  const blockSteps = steps.map(step => ({ ...step, crew: [] }))
  const lastTimed = steps.findLastIndex(step => step.actualStartAt !== null)
  const next = steps.findIndex(step => step.kind === 'work' && step.actualEndAt === null)
  return steps.map((step, i) => {
    const before = steps[i - 1]
    const readyAt = before ? before.endAt + (step.waitMin ?? 0) : 0
    const coat = step.kind === 'hold' ? coatOfHold(coats, i, step.productId) : null
    const begun = step.actualStartAt !== null
    return {
      position: step.position,
      kind: step.kind as 'work' | 'hold',
      name: step.name,
      stage: step.stage as Stage,
      minutes: step.minutes,
      bayId: step.bayId,
      bayName: floor.bayNames.get(step.bayId) ?? '',
      startAt: step.startAt,
      endAt: step.endAt,
      actualStartAt: step.actualStartAt,
      actualEndAt: step.actualEndAt,
      state: stateOf(blockSteps, i, floor.nowAt),
      crew: step.crewIds.map(id => ({ id, name: floor.crewNames.get(id) ?? '' })),
      productId: step.productId,
      productName: step.productId === null ? null : (products.get(step.productId)?.name ?? null),
      moved:
        step.movedToBayId === null || step.movedAt === null
          ? null
          : {
              bayId: step.movedToBayId,
              bayName: floor.bayNames.get(step.movedToBayId) ?? '',
              at: step.movedAt,
            },
      cure: coat && marksOf(coat),
      can: {
        start: here && i === next && !begun && readyAt <= floor.nowAt,
        finish: here && i === next && begun,
        reopen: here && i === lastTimed,
      },
    }
  })
}
