/** The real times a reminder proposes: offered by the promise, and lightly held until a date. */
import { addDays, atWall, dateOf } from '../../domain/calendar/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import type { Finish, SizeClass } from '../../domain/shop/index.ts'
import { holdPlace } from '../booking/booking.ts'
import { offers } from '../booking/offers.ts'
import type { OffersView, OfferView } from '../booking/views.ts'
import type { Desk } from '../desk/desk.ts'
import type { UpkeepRules } from '../upkeep/settings.ts'
import type { MessageSlot, VisitView } from '../upkeep/views.ts'
import { treatmentFor } from '../upkeep/visitTreatment.ts'

/** How many times a reminder proposes. */
const slotCount = 2
/** Days between the two, so that one of them suits. */
const daysApart = 2
/** How late after what was asked a time may be and still count as an answer to it, in minutes. */
const reachMin = 21 * 1440

/**
 * Holds the times for a visit: from its target or due day on, never before the hold has run out, so that a place is
 * free again before it would be needed. Fewer than two where the shop has no more room.
 * @throws Refusal where no treatment fits or the car is booked already.
 */
export async function holdSlots(
  desk: Desk,
  rules: UpkeepRules,
  zone: string,
  visit: Pick<VisitView, 'kind' | 'vehicleId' | 'targetOn' | 'dueOn'>,
): Promise<MessageSlot[]> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const vehicle = await tx.vehicle.findUniqueOrThrow({ where: { id: visit.vehicleId } })
  const treatment = await treatmentFor(tx, rules, visit.kind)
  const heldUntilAt = atWall(dateOf(addDays(nowAt, rules.holdDays, zone), zone), rules.toMin, zone)
  const wish = {
    sizeClass: vehicle.sizeClass as SizeClass,
    finish: vehicle.finish as Finish,
    condition: 'good' as const,
    treatmentIds: [treatment.id],
  }
  const freeAgainOn = dateOf(addDays(heldUntilAt, 1, zone), zone)
  const wantedOn = visit.targetOn ?? visit.dueOn
  let askedDate = [wantedOn, freeAgainOn].sort().at(-1)!
  const slots: MessageSlot[] = []
  while (slots.length < slotCount) {
    const found = await offers(desk, { ...wish, askedDate })
    const offer = offerAfter(found, Math.max(heldUntilAt, slots.at(-1)?.handoverAt ?? 0))
    if (!offer) break
    try {
      const held = await holdPlace(desk, {
        ...wish,
        vehicleId: visit.vehicleId,
        askedDate,
        plan: offer.plan,
        holdMin: heldUntilAt - nowAt,
      })
      const { dropOffAt, handoverAt } = offer
      slots.push({ jobId: held.jobId, dropOffAt, handoverAt, heldUntilAt: held.heldUntilAt })
    } catch (error) {
      // Taken by another desk in this very moment, or the car is here then: the next days may do.
      if (!(error instanceof Refusal) || (error.code !== 'stale' && error.code !== 'vehicle-booked'))
        throw error
      if (askedDate > dateOf(addDays(nowAt, 120, zone), zone)) break
    }
    askedDate = dateOf(addDays(offer.handoverAt, daysApart, zone), zone)
  }
  return slots
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
