/** The real times a reminder proposes: offered by the promise, and lightly held until a date. */
import { setImmediate as nextTurn } from 'node:timers/promises'
import { addDays, atWall, closingFrom, dateOf } from '../../domain/calendar/index.ts'
import type { Finish, SizeClass } from '../../domain/shop/index.ts'
import type { AuditEntry, Tx } from '../../store/store.ts'
import { holdPlaceIn } from '../booking/booking.ts'
import { type OffersView, type OfferView, offers } from '../booking/offers.ts'
import type { Desk } from '../desk/desk.ts'
import { calendarOf } from '../desk/shopView.ts'
import type { MessageSlot } from '../upkeep/messageRows.ts'
import type { UpkeepRules } from '../upkeep/settings.ts'
import { standingJobs, type VisitView } from '../upkeep/visits.ts'
import { treatmentFor } from '../upkeep/visitTreatment.ts'

/** How many times a reminder proposes. */
const timesProposed = 2
/** Days between the two, so that one of them suits. */
const daysApart = 2
/** How late after what was asked a time may be and still count as an answer to it, in minutes. */
const reachMin = 21 * 1440
/** How many places are looked at in which the car is here anyway, before fewer are proposed. */
const mostLooks = 8

/** When the times are let go: as the shop closes after so many days, on a day it is open to hear the answer. */
export async function heldUntil(tx: Tx, rules: UpkeepRules, nowAt: number): Promise<number> {
  const calendar = await calendarOf(tx)
  const on = dateOf(addDays(nowAt, rules.holdDays, calendar.zone), calendar.zone)
  return closingFrom(calendar, on) ?? atWall(on, rules.toMin, calendar.zone)
}

/** Times found for a visit and not held yet. */
export interface FoundTimes {
  readonly heldUntilAt: number
  readonly places: readonly {
    readonly askedDate: string
    readonly vehicleId: string
    readonly condition: 'good'
    readonly treatmentIds: string[]
    readonly offer: OfferView
  }[]
}

/**
 * Finds the times for a visit: from its target or due day on, never before the hold has run out, so that a place is
 * free again before it would be needed, and while the car is not here anyway. Fewer than two where the shop has no more
 * room. The second is found as if the first were not held: only one of them will be taken.
 * @throws Refusal where no treatment fits.
 */
export async function findTimes(
  desk: Desk,
  rules: UpkeepRules,
  visit: Pick<VisitView, 'kind' | 'vehicleId' | 'targetOn' | 'dueOn'>,
): Promise<FoundTimes> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { vehicleId } = visit
  const { sizeClass, finish } = await tx.vehicle.findUniqueOrThrow({ where: { id: vehicleId } })
  const treatment = await treatmentFor(tx, rules, visit.kind)
  const here = await tx.job.findMany({
    where: { vehicleId, handoverAt: { gt: nowAt }, ...standingJobs(nowAt) },
    select: { dropOffAt: true, handoverAt: true },
  })
  const wish = { condition: 'good' as const, treatmentIds: [treatment.id] }
  const heldUntilAt = await heldUntil(tx, rules, nowAt)
  const { zone } = await calendarOf(tx)
  const after = (at: number, days: number) => dateOf(addDays(at, days, zone), zone)
  const places: FoundTimes['places'][number][] = []
  let freeAt = heldUntilAt
  let askedDate = [visit.targetOn ?? visit.dueOn, after(heldUntilAt, 1)].sort().at(-1) ?? visit.dueOn
  for (let look = 0; look < mostLooks && places.length < timesProposed; look++) {
    // Looking for an offer is the long part of a reminder: between two, others come to their turn.
    await nextTurn()
    const found = await offers(desk, {
      ...wish,
      vehicleId,
      sizeClass: sizeClass as SizeClass,
      finish: finish as Finish,
      askedDate,
    })
    const offer = offerAfter(found, freeAt)
    if (!offer) break
    const other = here.find(job => job.dropOffAt < offer.handoverAt && job.handoverAt > offer.dropOffAt)
    if (!other) places.push({ ...wish, vehicleId, askedDate, offer })
    freeAt = Math.max(freeAt, (other ?? offer).handoverAt)
    askedDate = after(freeAt, daysApart)
  }
  return { heldUntilAt, places }
}

/** The offer that comes nearest to the day asked for and not before a moment. */
function offerAfter(found: OffersView, afterAt: number): OfferView | null {
  const askedAt = atWall(found.askedDate, 0, found.zone)
  const good = [found.askedDay, found.leastBlocked, found.soonest].filter(
    (offer): offer is OfferView =>
      offer.feasible && offer.dropOffAt >= Math.max(afterAt, askedAt) && offer.dropOffAt < askedAt + reachMin,
  )
  return good[0] ?? null
}

/**
 * Holds the times found, as part of the act that writes the message proposing them: a place is never held for nobody.
 * @throws Refusal `stale` at `plan` where another desk has taken one meanwhile.
 */
export async function holdTimes(
  tx: Tx,
  audit: (entry: AuditEntry) => void,
  nowAt: number,
  { heldUntilAt, places }: FoundTimes,
): Promise<MessageSlot[]> {
  const slots: MessageSlot[] = []
  for (const { offer, ...wish } of places) {
    const held = await holdPlaceIn(tx, audit, nowAt, {
      ...wish,
      plan: offer.plan,
      holdMin: heldUntilAt - nowAt,
    })
    const { dropOffAt, handoverAt } = offer
    slots.push({ jobId: held.jobId, dropOffAt, handoverAt, heldUntilAt: held.heldUntilAt })
  }
  return slots
}
