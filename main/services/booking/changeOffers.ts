/** Offers anew for a booking that changes: its old place is its own until another is taken. */
import { dateOf, gridUp, startOfDay } from '../../domain/calendar/index.ts'
import { problemOf } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { saleMinor } from '../../domain/money/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { promiseWithin } from '../../domain/schedule/index.ts'
import type { Desk } from '../desk/desk.ts'
import { lentWindows } from '../floor/lent.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { chargesOn } from '../job/chargesOn.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { salePrice } from '../prices/salePrice.ts'
import { changedChain } from './changedChain.ts'
import type { ChangeOffersInput } from './inputs.ts'
import { offerView } from './offers.ts'
import { offersInStock } from './offersInStock.ts'
import { farthestAskedMin, horizonMin, reachStepMin } from './reach.ts'

export type ChangeOffersView = Awaited<ReturnType<typeof changeOffers>>

/**
 * Three places for the booking as it would be, each exact against everything else that is booked and with the shelf looked
 * at, with its price.
 */
export async function changeOffers(desk: Desk, input: ChangeOffersInput) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const days = [input.askedDate, input.notBefore].flatMap(day => day ?? [])
  const ahead = Math.max(0, ...days.map(day => startOfDay(day, 'UTC') - nowAt))
  if (ahead > farthestAskedMin)
    refuse('date-far', { askedDate: input.askedDate }, say('That is too far off; ask within two years.'))
  const aheadMin = Math.min(farthestAskedMin, Math.ceil(ahead / reachStepMin) * reachStepMin)
  const floor = await loadFloor(tx, nowAt, nowAt + horizonMin + aheadMin)
  const chain = await changedChain(tx, floor, input.id, input)
  const { job, sold, steps, work } = chain
  const today = dateOf(nowAt, floor.zone)
  const dayAt = (day: string) => gridUp(floor, Math.max(nowAt, startOfDay(day, floor.zone)))
  const release = dayAt(input.notBefore ?? today)
  const asked = Math.max(release, dayAt(input.askedDate ?? dateOf(job.dropOffAt, floor.zone)))
  const problem = problemOf(floor, {
    exceptJobId: job.id,
    job: { id: job.id, release, asked, steps },
  })
  const windows = await lentWindows(tx, floor, chain.lends, job.id)
  const treatments =
    sold?.treatments ?? job.treatments.map(each => ({ id: each.treatmentId, share: each.share }))
  const found = await offersInStock(
    desk,
    tx,
    {
      floor,
      sold: { steps, treatments },
      asked: problem,
      windows,
      sizeClass: work.sizeClass,
      exceptJobId: job.id,
    },
    promiseWithin(problem, windows),
  )
  const rules = await moneyRules(tx)
  const before = saleMinor(job.treatments, await chargesOn(tx, job.id), floor.shop.currency)
  return {
    nowAt,
    zone: floor.zone,
    work,
    before: { dropOffAt: job.dropOffAt, promisedAt: job.promisedAt, priceMinor: before },
    priceMinor: sold ? salePrice(rules, sold, {}, floor.shop.currency).totalMinor : before,
    currency: floor.shop.currency,
    notes: sold?.notes ?? [],
    soonest: offerView(floor, chain, found.soonest),
    leastBlocked: offerView(floor, chain, found.leastBlocked),
    askedDay: offerView(floor, chain, found.askedDay),
  }
}
