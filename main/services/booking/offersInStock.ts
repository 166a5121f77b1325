/** The three offers with the shelf looked at: where the chemicals would not be there, the offer moves to when they are. */
import { startOfDay } from '../../domain/calendar/index.ts'
import { type Case, type NoOffer, type Offer, type Offers, promise } from '../../domain/schedule/index.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { gridUp } from '../floor/floorGrid.ts'
import type { Sold } from '../setUp/soldTreatments.ts'
import { type Judged, nothingShort, type ShelfCheck, shelfCheck } from '../shelf/availability.ts'
import type { ShelfAvailability } from '../shelf/views/value.ts'

/** An offer with the case it was found in, and what it knows of the shelf. */
export interface StockedOffer {
  readonly offer: Offer | NoOffer
  readonly kase: Case
  readonly shelf: ShelfAvailability
}

interface Ground {
  readonly floor: Floor
  readonly sold: Sold
  readonly kase: Case
  readonly sizeClass: SizeClass
}

/**
 * Looks at the shelf for each offer. What can be there in time if ordered today makes a proposal; what cannot moves the
 * offer to the first place from the day it could be there on. Where it never can, the offer stands and says so.
 */
export async function offersInStock(
  desk: Desk,
  tx: Tx,
  ground: Ground,
  found: Offers,
): Promise<Record<keyof Offers, StockedOffer>> {
  const { sold, kase, sizeClass } = ground
  const ends = Object.values(found).flatMap(offer => (offer.feasible ? [offer.handover] : []))
  const treatmentIds = sold.treatments.map(each => each.id)
  const untilAt = Math.max(desk.now(), ...ends)
  const check = ends.length === 0 ? null : await shelfCheck(desk, tx, { treatmentIds, sizeClass, untilAt })
  const moved = new Map<number, Offers>()
  const stocked = (kind: keyof Offers): StockedOffer => {
    const offer = found[kind]
    if (!check || !offer.feasible) return { offer, kase, shelf: nothingShort.shelf }
    const judged = judgeOffer(check, sold, offer)
    if (judged.ok || judged.couldBeOn === null) return { offer, kase, shelf: judged.shelf }
    return laterOffer(kind, offer, judged, check, ground, moved) ?? { offer, kase, shelf: judged.shelf }
  }
  return { soonest: stocked('soonest'), leastBlocked: stocked('leastBlocked'), askedDay: stocked('askedDay') }
}

function judgeOffer(check: ShelfCheck, sold: Sold, offer: Offer): Judged {
  return check.judge(
    sold.steps.map(({ kind, stage, name }, i) => ({
      kind,
      stage,
      name,
      startAt: offer.plan.steps[i]!.start,
    })),
  )
}

/**
 * The same kind of offer, begun so late that the step that lacked something comes when it could be there: first by as
 * much as that step came after the drop-off, and, where the shorter way round brings it too early again, from that very
 * day on. Null where nothing fits then.
 */
function laterOffer(
  kind: keyof Offers,
  offer: Offer,
  judged: Judged,
  check: ShelfCheck,
  { floor, sold, kase }: Ground,
  moved: Map<number, Offers>,
): StockedOffer | null {
  const dayAt = startOfDay(judged.couldBeOn!, floor.zone)
  for (const wait of [judged.lackingAt! - offer.dropOff, 0]) {
    const release = Math.max(kase.newJob.release, gridUp(floor, dayAt - wait))
    const later: Case = {
      ...kase,
      newJob: { ...kase.newJob, release, asked: Math.max(release, kase.newJob.asked) },
    }
    const offers = moved.get(release) ?? promise(later)
    moved.set(release, offers)
    const next = offers[kind]
    if (!next.feasible) continue
    const again = judgeOffer(check, sold, next)
    if (!again.ok) continue
    const words = judged.shelf.short.map(each => each.words).join(' ')
    return {
      offer: next,
      kase: later,
      shelf: { ...again.shelf, moved: `Later than bays and crew allow: ${words}` },
    }
  }
  return null
}

/** What an offer's reasons say of the shelf. */
export function shelfReasons({ short, moved, proposal }: ShelfAvailability): string[] {
  return [
    ...(moved === null ? [] : [moved]),
    ...short.map(each => each.words),
    ...(proposal ?? []).map(each => each.words),
  ]
}
