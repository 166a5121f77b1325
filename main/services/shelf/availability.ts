/** Whether the chemicals of a wished job would be there: what an offer has to know of the shelf. */
import { dateOfDay } from '../../domain/calendar/index.ts'
import {
  amountWords,
  availabilityOf,
  type DrawAvailability,
  deliveryWindow,
  unitsOf,
  type WantedDraw,
} from '../../domain/shelf/index.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type ShelfAhead, shelfAhead } from './ahead.ts'
import { nearDayWords } from './lotViews.ts'
import { dueDays } from './orders/dueDays.ts'
import type { Buying } from './plans.ts'
import { type ExpectedDraw, expectedDraws } from './stepDraws.ts'
import type { ShelfAvailability } from './views/value.ts'

/** A step as far as its draws need it, at the time an offer gives it. */
export interface PlacedStep {
  readonly kind: string
  readonly stage: string
  readonly name: string
  readonly startAt: number
}

export interface Judged {
  readonly shelf: ShelfAvailability
  /** Whether everything is there, or would be if ordered today. */
  readonly ok: boolean
  /** The first date from which all of it could be; null where some never can, or nothing is short. */
  readonly couldBeOn: string | null
  /** When the first step that lacks something starts; null where none does. */
  readonly lackingAt: number | null
}

export const nothingShort: Judged = {
  shelf: { short: [], proposal: null, moved: null },
  ok: true,
  couldBeOn: null,
  lackingAt: null,
}

export interface ShelfCheck {
  /** Judges the steps as an offer places them. */
  judge(steps: readonly PlacedStep[]): Judged
}

/**
 * Looks up what the treatments draw for this size of vehicle, and the shelf until `untilAt`. Null where they draw
 * nothing that is counted: then there is nothing to know.
 */
export async function shelfCheck(
  desk: Desk,
  tx: Tx,
  wish: { treatmentIds: readonly string[]; sizeClass: SizeClass; untilAt: number },
): Promise<ShelfCheck | null> {
  const treatments = await tx.treatment.findMany({
    where: { id: { in: [...wish.treatmentIds] } },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    select: { name: true, steps: { orderBy: { position: 'asc' } } },
  })
  const drawn = new Set(
    treatments.flatMap(each =>
      each.steps.flatMap(step => (step.draws as { productId: string }[]).map(line => line.productId)),
    ),
  )
  if (drawn.size === 0) return null
  const days = Math.min(390, Math.max(28, Math.ceil((wish.untilAt - desk.now()) / 1440) + 21))
  const shelf = await shelfAhead(desk, tx, { productIds: [...drawn], days, unadvised: true })
  if (shelf.products.size === 0) return null
  const judge = (steps: readonly PlacedStep[]) => {
    const chain = steps.map((step, position) => ({ ...step, position }))
    const { draws } = expectedDraws(treatments, chain, wish.sizeClass)
    return judgeDraws(
      shelf,
      draws.filter(draw => shelf.products.has(draw.productId)),
      steps,
    )
  }
  return { judge }
}

function judgeDraws(shelf: ShelfAhead, draws: readonly ExpectedDraw[], steps: readonly PlacedStep[]): Judged {
  const wanted = draws.map((draw): WantedDraw => {
    const { product, projection, buying } = shelf.products.get(draw.productId)!
    return {
      productId: product.id,
      productName: product.name,
      unit: product.unit,
      centi: draw.expectedCenti,
      day: shelf.days.dayOf(steps[draw.position]!.startAt),
      projection,
      reorderDay: buying === null ? null : reorderDay(shelf, buying),
    }
  })
  const found = availabilityOf(wanted)
  const lacking = found.draws.filter(draw => draw.state !== 'there')
  const short = lacking.filter(draw => draw.state === 'short')
  const lackingSteps = draws.filter(draw => short.some(each => each.productId === draw.productId))
  return {
    ok: found.ok,
    couldBeOn: found.ok ? null : found.couldBeOn,
    lackingAt:
      lackingSteps.length === 0 ? null : Math.min(...lackingSteps.map(draw => steps[draw.position]!.startAt)),
    shelf: {
      short: lacking.map(draw => shortView(shelf, draw, wanted)),
      proposal: lacking.length === 0 ? null : lacking.flatMap(draw => proposal(shelf, draw)),
      moved: null,
    },
  }
}

/** The day by which goods ordered today are here nine times in ten. */
function reorderDay({ ground }: ShelfAhead, { supplier, lead }: Buying): number {
  const { placedOn } = dueDays(supplier, lead, ground.nowAt, ground.zone)
  return deliveryWindow(supplier, { placedOn, promisedOn: null }, ground.day).lateDay
}

function shortView(shelf: ShelfAhead, draw: DrawAvailability, wanted: readonly WantedDraw[]) {
  const own = wanted.filter(each => each.productId === draw.productId)
  const { productName, unit } = own[0]!
  const need = own.reduce((sum, each) => sum + each.centi, 0)
  const day = Math.min(...own.map(each => each.day))
  const say = (date: string) => nearDayWords(date, shelf.ground.day)
  const lacks = `${amountWords(draw.missingCenti, unit)} of the ${amountWords(need, unit)} of ${productName}`
  const words =
    draw.state === 'order'
      ? `${lacks} must be ordered today to be there ${say(dateOfDay(day))}.`
      : draw.couldBeOn === null
        ? `${lacks} will not be there ${say(dateOfDay(day))}, and no supplier is entered for it.`
        : `${lacks} will not be there ${say(dateOfDay(day))}; it could be there ${say(draw.couldBeOn)}.`
  return {
    productId: draw.productId,
    productName,
    need: unitsOf(need),
    have: unitsOf(Math.max(0, need - draw.missingCenti)),
    unit,
    words,
    couldBeThere: draw.couldBeOn,
  }
}

/** What to order so that it would be there: whole packs for what lacks. */
function proposal(shelf: ShelfAhead, draw: DrawAvailability): NonNullable<ShelfAvailability['proposal']> {
  const { product, buying } = shelf.products.get(draw.productId)!
  if (!buying) return []
  const packs = Math.max(1, Math.ceil(draw.missingCenti / buying.offer.packCenti))
  const amount = amountWords(packs * buying.offer.packCenti, product.unit, 0)
  return [
    {
      supplierId: buying.supplier.id,
      supplierName: buying.supplier.name,
      offerId: buying.offer.id,
      packs,
      words: `Order ${packs} ${packs === 1 ? 'pack' : 'packs'} (${amount}) of ${product.name} from ${buying.supplier.name}.`,
    },
  ]
}
