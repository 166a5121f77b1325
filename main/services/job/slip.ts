/** A promise that slips: the next one possible, a sooner place for the rest of the job, and words for the owner. */

import { datedWords, gridDown } from '../../domain/calendar/index.ts'
import { coatsOf, leavingOf, leavingTimes, type ProductsById } from '../../domain/floor/index.ts'
import { can, isMovableFrom } from '../../domain/job/index.ts'
import { type Language, say } from '../../domain/language/index.ts'
import { promiseOf } from '../../domain/schedule/index.ts'
import { speaking } from '../desk/speaking.ts'
import type { Floor } from '../floor/floor.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { plateWords, vehicleWords } from '../floor/jobRows.ts'
import { judged } from '../floor/judged.ts'
import { moveProblem, restOfJob } from '../floor/movePlan.ts'
import { type OtherVisit, visitInTheWay } from '../floor/vehicleFree.ts'

/** What to do about a promise no longer kept, or for which somebody is missing; null where neither is so. */
export function slipOf(
  floor: Floor,
  job: JobRow,
  products: ProductsById,
  visits: readonly OtherVisit[],
  /** That the owner is written to in. */
  language: Language,
) {
  if (!can(job, 'promise')) return null
  const { lateMin, lack, expectedAt } = judged(floor).of(job)
  if (lateMin === 0 && lack === null) return null
  const place = soonestPlace(floor, job, visits)
  return {
    lateMin,
    /** The first handover possible as everything stands. */
    nextAt: expectedAt,
    /** Another place, or other people, for the rest: sooner than that, or with nobody missing. Null: none. */
    place: place && (lack !== null || place.handoverAt < expectedAt) ? placeView(floor, job, place) : null,
    /** Null where the promise still holds. */
    message:
      lateMin > 0
        ? speaking(language, () => messageOf(floor, { ...job, handoverAt: expectedAt }, products))
        : null,
  }
}

function placeView(
  floor: Floor,
  job: JobRow,
  { index, bayId, startAt, handoverAt }: NonNullable<ReturnType<typeof soonestPlace>>,
) {
  const { position } = job.steps[index]!
  return { position, bayId, bayName: floor.bayNames.get(bayId) ?? '', startAt, handoverAt }
}

/** Lays what has not begun anew, wherever it gets the car home soonest, everything booked kept as it is. */
export function soonestPlace(floor: Floor, job: JobRow, visits: readonly OtherVisit[]) {
  const index = job.steps.findIndex(step => step.kind === 'work' && step.actualStartAt === null)
  const step = job.steps[index]
  if (!step || !can(job, 'move') || !isMovableFrom(job.steps, index)) return null
  const { bays, earliestAt, latestAt, ...rest } = restOfJob(floor, job, index, visits)
  const to = latestAt === null ? null : gridDown(floor, latestAt)
  if (to !== null && to < earliestAt) return null
  const offer = promiseOf(moveProblem(rest, { bays, from: earliestAt, to }), 'soonest')
  const dropOffAt = index === 0 && offer.feasible ? offer.dropOff : job.dropOffAt
  if (!offer.feasible || visitInTheWay(floor, visits, { dropOffAt, handoverAt: offer.handover })) return null
  const first = offer.plan.steps[0]!
  return {
    index,
    plan: offer.plan,
    bayId: first.bay,
    startAt: first.start,
    handoverAt: offer.handover,
  }
}

/** A draft for the desk to send by hand. It says when, and whose figure it is; never that a coating is safe. */
function messageOf(floor: Floor, job: JobRow, products: ProductsById) {
  const when = (at: number) => datedWords(at, floor.zone, floor.nowAt)
  const car = [
    vehicleWords(job.vehicle),
    job.vehicle.plate === '' ? '' : `(${plateWords(job.vehicle.plate)})`,
  ]
  const cold = curesSlower(job, products)
  const why = cold
    ? say(
        'The coating is curing more slowly than planned, because the bay is colder than the temperature its figures hold at. We keep the car until the time its maker gives has passed.',
      )
    : coatsOf(job.steps, products).length > 0
      ? say('The work is taking longer than planned, and the coating needs its full time to cure after it.')
      : say('The work is taking longer than planned.')
  return {
    to: job.customer.email,
    subject: say('Your car: ready {handoverAt}', { handoverAt: when(job.handoverAt) }),
    text: [
      say('Dear {name},', { name: job.customer.name }),
      '',
      say('we promised your {car} for {promisedAt}. {why}', {
        car: car.filter(Boolean).join(' '),
        promisedAt: when(job.promisedAt),
        why,
      }),
      '',
      say(
        'It should be ready {handoverAt}. Please tell us whether that suits you, or call us and we find another time.',
        { handoverAt: when(job.handoverAt) },
      ),
      '',
      floor.shop.name,
    ].join('\n'),
  }
}

/** The cold has moved the earliest handover against the profile's own figure. */
function curesSlower(job: JobRow, products: ProductsById): boolean {
  const atReference = job.steps.map(({ laid: _, ...step }) => step)
  const leaving = leavingOf(job)
  return (
    leavingTimes(job.steps, products, leaving).safeAt > leavingTimes(atReference, products, leaving).safeAt
  )
}
