/** A promise that slips: the next one possible, a sooner place for the rest of the job, and words for the owner. */
import { promise } from '../../domain/schedule/index.ts'
import { dayWords } from '../desk/shopWords.ts'
import { leavingTimes, type ProductsById } from '../floor/cureMarks.ts'
import type { Floor } from '../floor/floor.ts'
import { gridDown } from '../floor/floorGrid.ts'
import type { JobRow } from '../floor/jobRows.ts'
import { plateWords, vehicleWords } from '../floor/jobRows.ts'
import { moveCase, moveGround } from '../floor/movePlan.ts'
import { isMovable } from '../floor/stayViews.ts'
import type { SlipView } from './jobCureViews.ts'

/** What to do about a promise no longer kept; null where it is kept. */
export function slipOf(floor: Floor, job: JobRow, products: ProductsById): SlipView | null {
  const lateMin = job.handoverAt - job.promisedAt
  if (lateMin <= 0 || (job.status !== 'inShop' && job.status !== 'booked')) return null
  return {
    lateMin,
    nextAt: job.handoverAt,
    sooner: soonerPlace(floor, job),
    message: messageOf(floor, job, products),
  }
}

/** Lays what has not begun anew, wherever it gets the car home soonest, everything booked kept as it is. */
function soonerPlace(floor: Floor, job: JobRow): SlipView['sooner'] {
  const index = job.steps.findIndex(step => step.kind === 'work' && step.actualStartAt === null)
  const step = job.steps[index]
  if (!step || !isMovable(job, step.position)) return null
  const ground = moveGround(floor, job, index)
  const to = ground.latestAt === null ? null : gridDown(floor, ground.latestAt)
  if (to !== null && to < ground.earliestAt) return null
  const offer = promise(moveCase(ground, { bays: ground.bays, from: ground.earliestAt, to })).soonest
  if (!offer.feasible || offer.handover >= job.handoverAt) return null
  const first = offer.plan.steps[0]!
  return {
    position: step.position,
    bayId: first.bay,
    bayName: floor.bayNames.get(first.bay) ?? '',
    startAt: first.start,
    handoverAt: offer.handover,
  }
}

/** A draft for the desk to send by hand. It says when, and whose figure it is; never that a coating is safe. */
function messageOf(floor: Floor, job: JobRow, products: ProductsById): SlipView['message'] {
  const when = (at: number) => dayWords(at, floor.zone)
  const car = [
    vehicleWords(job.vehicle),
    job.vehicle.plate === '' ? '' : `(${plateWords(job.vehicle.plate)})`,
  ]
  const cold = curesSlower(job, products)
  const why = cold
    ? 'The coating is curing more slowly than planned, because the bay is colder than the temperature its figures hold at. We keep the car until the time its maker gives has passed.'
    : 'The work is taking longer than planned, and the coating needs its full time to cure after it.'
  return {
    to: job.customer.email,
    subject: `Your car: ready ${when(job.handoverAt)}`,
    text: [
      `Dear ${job.customer.name},`,
      '',
      `we promised your ${car.filter(Boolean).join(' ')} for ${when(job.promisedAt)}. ${why}`,
      '',
      `As it stands you can have it from ${when(job.handoverAt)}. Please tell us whether that suits you, or call us and we find another time.`,
      '',
      floor.shop.name,
    ].join('\n'),
  }
}

/** The cold has moved the earliest handover against the profile's own figure. */
function curesSlower(job: JobRow, products: ProductsById): boolean {
  const atReference = job.steps.map(({ laid: _, ...step }) => step)
  return leavingTimes(job.steps, products).safeAt > leavingTimes(atReference, products).safeAt
}
