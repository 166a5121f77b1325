/** The three offers with the shelf looked at: where what holds up the booking lacks, the offer comes when it could be there. */

import { gridUp, startOfDay } from '../../domain/calendar/index.ts'
import {
  type NoOffer,
  type Offer,
  type OfferKind,
  type Offers,
  type Problem,
  promiseOfWithin,
  type Windows,
  type Within,
} from '../../domain/schedule/index.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import type { Sold } from '../setUp/soldTreatments.ts'
import {
  type Judged,
  nothingShort,
  type ShelfAvailability,
  type ShelfCheck,
  shelfCheck,
} from '../shelf/availability.ts'

/** A place with the problem it was found in, and what it knows of the shelf. */
export interface Stocked<O extends Offer | NoOffer = Offer> {
  readonly offer: O
  readonly asked: Problem
  readonly shelf: ShelfAvailability
}

/** An offer, and beside one that waits for goods the place as bays and crew allow it, were they here in time. */
export interface StockedOffer extends Stocked<Offer | NoOffer> {
  readonly ifHere: (Stocked & { readonly words: string }) | null
}

/** What would be sold, as far as its draws go. */
interface Work {
  readonly steps: Sold['steps']
  readonly treatments: readonly { readonly id: string; readonly share: number }[]
}

interface Wish {
  readonly floor: Floor
  readonly sold: Work
  readonly asked: Problem
  /** When what is to be lent is free; null: nothing is. */
  readonly windows: Windows
  readonly sizeClass: SizeClass
  /** The booking that changes, whose own draws are not in its way; left out: a new one. */
  readonly exceptJobId?: string
}

/**
 * Looks at the shelf for each offer. Goods that can be there in time if ordered today, and goods that hold nothing up, make
 * a line and a proposal. Where others lack, the offer is the first place from the day they could be there on, with the
 * earlier one beside it. Where they never can, the offer stands and says so.
 */
export async function offersInStock(
  desk: Desk,
  tx: Tx,
  wish: Wish,
  found: Readonly<Record<OfferKind, Within>>,
): Promise<Record<keyof Offers, StockedOffer>> {
  const { sold, sizeClass, exceptJobId } = wish
  const ends = Object.values(found).flatMap(({ offer }) => (offer.feasible ? [offer.handover] : []))
  const untilAt = Math.max(desk.now(), ...ends)
  const check =
    ends.length === 0
      ? null
      : await shelfCheck(tx, desk, { treatments: sold.treatments, sizeClass, untilAt, exceptJobId })
  const stocked = (kind: keyof Offers): StockedOffer => {
    const { offer, asked } = found[kind]
    if (!check || !offer.feasible) return { offer, asked, shelf: nothingShort.shelf, ifHere: null }
    const { shelf, wait } = judgeOffer(check, sold, offer)
    const place = { offer, asked, shelf }
    const waiting = wait && laterPlace(kind, place, wait, check, wish)
    if (!wait || !waiting) return { ...place, ifHere: null }
    return { ...waiting, ifHere: { ...place, words: wait.ifHereWords } }
  }
  return { soonest: stocked('soonest'), leastBlocked: stocked('leastBlocked'), askedDay: stocked('askedDay') }
}

function judgeOffer(check: ShelfCheck, sold: Work, offer: Offer): Judged {
  return check.judge(
    offer.plan.steps.map(({ start }, i) => {
      const step = sold.steps[i]
      if (!step) throw new Error(`A plan of ${offer.plan.steps.length} steps for ${sold.steps.length}`)
      return { kind: step.kind, stage: step.stage, name: step.name, startAt: start }
    }),
  )
}

/**
 * The same kind of offer, begun so late that the step that lacked something comes when it could be there: first by as
 * much as that step came after the drop-off, and, where the shorter way round brings it too early again, from that very
 * day on. Null where nothing fits then.
 */
function laterPlace(
  kind: keyof Offers,
  { offer }: Stocked,
  wait: NonNullable<Judged['wait']>,
  check: ShelfCheck,
  { floor, sold, asked: wished, windows }: Wish,
): Stocked | null {
  const dayAt = startOfDay(wait.couldBeOn, floor.zone)
  for (const lead of [wait.lackingAt - offer.dropOff, 0]) {
    const release = Math.max(wished.newJob.release, gridUp(floor, dayAt - lead))
    const newJob = { ...wished.newJob, release, asked: Math.max(release, wished.newJob.asked) }
    const { offer: next, asked: then } = promiseOfWithin({ ...wished, newJob }, kind, windows)
    if (!next.feasible) continue
    const again = judgeOffer(check, sold, next)
    if (again.wait === null) return { offer: next, asked: then, shelf: again.shelf }
  }
  return null
}
