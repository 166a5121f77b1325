import { durationWords, minuteWords, openSpans } from '../../domain/calendar/index.ts'
import {
  cautionWords,
  coatOfHold,
  coatsOf,
  cureWords,
  layerViews,
  leavingOf,
  leavingTimes,
  type ProductsById,
  profilesIn,
  projectJob,
  wordsFor,
} from '../../domain/floor/index.ts'
import { can, isCalledOff, isMovableFrom, isOver } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { saleMinor } from '../../domain/money/index.ts'
import { reasonText, type Violation } from '../../domain/schedule/index.ts'
import {
  type Condition,
  type Finish,
  type LentKind,
  leftOutWords,
  lentKinds,
  type PaintSystem,
  type Scope,
  type SizeClass,
} from '../../domain/shop/index.ts'
import { sentence } from '../../domain/words.ts'
import type { Desk } from '../desk/desk.ts'
import { calendarOf } from '../desk/shopView.ts'
import type { Floor } from '../floor/floor.ts'
import { type JobRow, plateWords, vehicleWords } from '../floor/jobRows.ts'
import { judged } from '../floor/judged.ts'
import { stayViews } from '../floor/stayViews.ts'
import { usesOf } from '../shelf/stepsToConfirm.ts'
import { chargesOn } from './chargesOn.ts'
import { checksIn } from './checks.ts'
import { jobOnFloor } from './jobOnFloor.ts'
import { missedView } from './missedWork.ts'
import { stepViews } from './stepViews.ts'
import { spotView } from './testSpotView.ts'

export type JobView = Awaited<ReturnType<typeof getJob>>
export type JobStepView = JobView['steps'][number]

/** Everything about one job, as it now stands. */
export async function getJob(desk: Desk, { id }: { id: string }) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { floor, job, products } = await jobOnFloor(tx, nowAt, id)
  const verdict = judged(floor).of(job)
  const when = (at: number) => minuteWords(at, floor.zone, nowAt)
  const { lateMin, expectedAt } = verdict
  const { vehicle, customer } = job
  const charges = await chargesOn(tx, id)
  const lendable = await tx.lendable.findMany({ where: { archivedAt: null }, select: { kind: true } })
  return {
    id,
    number: job.number,
    version: job.version,
    status: job.status,
    nowAt,
    zone: floor.zone,
    customer: { id: customer.id, name: customer.name, phone: customer.phone, email: customer.email },
    vehicle: {
      id: vehicle.id,
      plate: plateWords(vehicle.plate),
      words: vehicleWords(vehicle),
      sizeClass: vehicle.sizeClass as SizeClass,
      finish: vehicle.finish as Finish,
      paint: vehicle.paint as PaintSystem,
      note: vehicle.note,
    },
    condition: job.condition as Condition,
    treatments: job.treatments.map(({ name, priceMinor, scope, leftOut }) => ({
      name,
      priceMinor,
      scope: scope as Scope,
      /** In words; empty: nothing is. */
      leftOut: leftOutWords(leftOut),
    })),
    charges,
    // Of a car that never came only what was put on its bill is owed.
    priceMinor: saleMinor(job.status === 'noShow' ? [] : job.treatments, charges, floor.shop.currency),
    depositMinor: job.depositMinor,
    currency: floor.shop.currency,
    note: job.note,
    heldUntilAt: job.heldUntilAt,
    createdAt: job.createdAt,
    dropOffAt: job.dropOffAt,
    arrivedAt: job.arrivedAt,
    promisedAt: job.promisedAt,
    /** As now projected. */
    handoverAt: expectedAt,
    leftAt: job.leftAt,
    /** When it is fetched, as agreed since it was ready. */
    fetchAt: job.fetchAt,
    /** As it was sold, to be changed. */
    treatmentIds: job.treatments.map(each => each.treatmentId),
    scope: (job.treatments[0]?.scope ?? 'whole') as Scope,
    /** Something that cures is laid, or is to be: `safeAt` is then its profile's figure, else when the work is done. */
    coated: coatsOf(job.steps, products).length > 0,
    ...leavingTimes(job.steps, products, leavingOf(job)),
    coveredBy: job.coveredBy,
    lateMin,
    lateWords:
      lateMin === 0 || isOver(job) ? null : lateWords({ ...job, handoverAt: expectedAt }, lateMin, when),
    /** How its promise stands, the same everywhere. */
    standing: verdict.standing,
    /** What is missing for its promise, in a few words; `conflicts` say which. Null: nothing. */
    lack: verdict.lack,
    /** Since when it is ready and nobody has come for it; null: it is not so. */
    unfetchedAt: verdict.unfetchedAt,
    conflicts: [
      ...new Set([
        ...judged(floor)
          .conflicts.filter(conflict => conflict.jobId === id)
          .map(conflict => conflict.words),
        ...verdict.lackWords,
        ...brokenWords(floor, job, products),
      ]),
    ],
    /** A wait missed whose cost is known: what the desk adds or refuses. */
    missed: missedView(floor, job),
    /** Where the job begins with a test spot: what it showed, and what follows from it. */
    testSpot: await spotView(tx, floor, job),
    /** What it borrows, and what the shop has to lend. */
    lent: job.loans.map(({ lendable }) => ({ name: lendable.name, kind: lendable.kind as LentKind })),
    lendKinds: lentKinds.filter(kind => lendable.some(each => each.kind === kind)),
    checks: await checksIn(tx, id),
    /** Who may have looked. */
    crewNames: floor.crew.filter(person => !person.archived).map(person => person.name),
    cureWords: rulingCoats(job, products).map(coat =>
      cureWords(coat, leavingOf(job), nowAt, when, floor.shop.units),
    ),
    cautions: cautionsOf(job, products),
    steps: stepViews(job, floor, products, {
      uses: await usesOf(tx, id),
      passes: await tx.stepPass.findMany({ where: { jobId: id }, orderBy: { at: 'asc' } }),
    }),
    /** Opening hours from drop-off to handover, for the line of the job. */
    open: openSpans(
      await calendarOf(tx),
      (job.arrivedAt ?? job.dropOffAt) - 60,
      Math.max(job.leavesAt, job.promisedAt) + 120,
    ),
    stays: isCalledOff(job) ? [] : stayViews(job, floor, products, judged(floor)),
    bayNames: Object.fromEntries(floor.bayNames),
    profiles: profilesIn(products),
    can: {
      confirm: can(job, 'confirm'),
      arrive: can(job, 'arrive'),
      handOver: can(job, 'handOver'),
      promise: can(job, 'promise'),
      cancel: can(job, 'cancel'),
      rebook: can(job, 'rebook') && job.steps.every(step => step.actualStartAt === null),
      noShow: can(job, 'noShow') && job.dropOffAt <= nowAt,
      comesLater: can(job, 'comesLater'),
      fetchLater:
        can(job, 'fetchLater') && job.steps.every(step => step.kind === 'hold' || step.actualEndAt !== null),
      move: can(job, 'move') && job.steps.some((_, i) => isMovableFrom(job.steps, i)),
    },
  }
}

/** The last coat of each product: what lies under one of its own kind was laid earlier and asks no more. */
function rulingCoats(job: JobRow, products: ProductsById) {
  const last = new Map(coatsOf(job.steps, products).map(coat => [coat.product.id, coat]))
  return [...last.values()]
}

function lateWords(
  job: Pick<JobRow, 'promisedAt' | 'handoverAt'>,
  lateMin: number,
  when: (at: number) => string,
): string {
  return say(
    'Promised {promisedAt}, now expected {handoverAt}: running late, {lateMin}. Tell the customer and give a new promise, or make room on the board.',
    { promisedAt: when(job.promisedAt), handoverAt: when(job.handoverAt), lateMin: durationWords(lateMin) },
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
  const broken = projectJob(floor, live)
    .broken.filter(told)
    .map(violation => {
      const coat = coatOfHold(coatsOf(job.steps, products), violation.step ?? 0, null)
      const missed = violation.code === 'waitTooLong' ? coat?.product.cureProfile.missedRecoat : undefined
      const asks =
        coat && missed
          ? ` ${say('The profile of {name} asks: {missed}', { name: coat.product.name, missed: sentence(missed) })}`
          : ''
      return sentence(reasonText(violation, words)) + asks
    })
  const shut = layerViews(
    job.steps,
    products,
    { conditions: new Map(), air: new Map() },
    floor.nowAt,
    floor.shop.units,
  )
    .filter(layer => !layer.laid && layer.verdict === 'closes before it opens')
    .map(({ name, asks }) =>
      say(
        'The window for "{name}" closes before it opens in this temperature: bring the bay nearer to the profile\'s. If it is missed, the profile asks: {asks}',
        { name, asks: sentence(asks ?? '') },
      ),
    )
  return [...broken, ...shut]
}

/** A line for each chemical still to be handled. */
function cautionsOf(job: JobRow, products: ProductsById): string[] {
  const ahead = job.steps.filter(step => step.kind === 'work' && step.actualEndAt === null && !isOver(job))
  const ids = new Set(ahead.flatMap(step => step.productId ?? []))
  return [...products.values()]
    .filter(({ id, kind }) => ids.has(id) && kind !== 'consumable')
    .map(cautionWords)
}
