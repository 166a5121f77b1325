/** Whether the chemicals of a wished job would be there: what an offer has to know of the shelf. */

import { dateOfDay } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import {
  amountWords,
  availabilityOf,
  type DrawAvailability,
  deliveryWindow,
  unitsOf,
  type WantedDraw,
} from '../../domain/shelf/index.ts'
import type { SizeClass } from '../../domain/vehicle/index.ts'
import { listWords } from '../../domain/words.ts'
import { keptUntilSaved } from '../../store/kept.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type ProductAhead, type ShelfAhead, shelfAhead } from './ahead.ts'
import { drawnBack } from './dilutions.ts'
import { nearDayWords } from './lotViews.ts'
import { dueDays } from './orders/dueDays.ts'
import { type ExpectedDraw, expectedDraws } from './stepDraws.ts'
import type { Buying } from './underWay.ts'

/** A step as far as its draws need it, at the time an offer gives it. */
export interface PlacedStep {
  readonly kind: string
  readonly stage: string
  readonly name: string
  readonly startAt: number
}

/** What an offer knows of the shelf. */
export interface ShelfAvailability {
  /** Goods that would lack by the place offered, each with the earliest day they could be there; empty: all there. */
  short: ReturnType<typeof shortView>[]
  /** The same in one line; null where nothing lacks. */
  words: string | null
  /** What to put on today's order for it. */
  proposal: ReturnType<typeof proposal>
}

export interface Judged {
  readonly shelf: ShelfAvailability
  /** What holds the booking up at this place; null where nothing does, or ordering would not help. */
  readonly wait: {
    /** The first date from which all of it could be there. */
    readonly couldBeOn: string
    /** When the first step that lacks something starts. */
    readonly lackingAt: number
    /** `If 50 ml of Ovrel Two is here by Thursday` */
    readonly ifHereWords: string
  } | null
}

export const nothingShort: Judged = { shelf: { short: [], words: null, proposal: [] }, wait: null }

export interface ShelfCheck {
  /** Judges the steps as an offer places them. */
  judge(steps: readonly PlacedStep[]): Judged
}

interface ShelfWish {
  treatments: readonly { readonly id: string; readonly share: number }[]
  sizeClass: SizeClass
  untilAt: number
  /** The booking that changes, whose own draws are not in its way. */
  exceptJobId?: string | undefined
}

/**
 * Looks up what the treatments draw for this size of vehicle, and the shelf until `untilAt`. Null where they draw
 * nothing that is counted: then there is nothing to know.
 */
export const shelfCheck = keptUntilSaved(
  readCheck,
  (desk: Desk, { treatments, sizeClass, untilAt, exceptJobId }: ShelfWish) =>
    JSON.stringify([
      desk.now(),
      treatments.map(({ id, share }) => [id, share]),
      sizeClass,
      untilAt,
      exceptJobId,
    ]),
)

async function readCheck(tx: Tx, desk: Desk, wish: ShelfWish): Promise<ShelfCheck | null> {
  const shares = new Map(wish.treatments.map(({ id, share }) => [id, share]))
  const rows = await tx.treatment.findMany({
    where: { id: { in: [...shares.keys()] } },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    select: { id: true, name: true, steps: { orderBy: { position: 'asc' } } },
  })
  const treatments = rows.map(row => ({ ...row, share: shares.get(row.id) ?? 1 }))
  const drawn = new Set(
    treatments.flatMap(each =>
      each.steps.flatMap(step => (step.draws as { productId: string }[]).map(line => line.productId)),
    ),
  )
  if (drawn.size === 0) return null
  const made = await tx.dilution.findMany()
  const looked = [...drawn].map(productId => drawnBack({ productId, expectedCenti: 0 }, made).productId)
  const days = Math.min(390, Math.max(28, Math.ceil((wish.untilAt - desk.now()) / 1440) + 21))
  const { exceptJobId } = wish
  const shelf = await shelfAhead(desk, tx, { productIds: looked, days, unadvised: true, exceptJobId })
  if (shelf.products.size === 0) return null
  const reorders = reorderDays(shelf)
  const judge = (steps: readonly PlacedStep[]) => {
    const chain = steps.map((step, position) => ({ ...step, position }))
    const { draws } = expectedDraws(treatments, chain, wish.sizeClass)
    return judgeDraws(
      shelf,
      reorders,
      draws.map(draw => drawnBack(draw, made)).filter(draw => shelf.products.has(draw.productId)),
      steps,
    )
  }
  return { judge }
}

function judgeDraws(
  shelf: ShelfAhead,
  reorders: ReadonlyMap<string, number | null>,
  draws: readonly ExpectedDraw[],
  steps: readonly PlacedStep[],
): Judged {
  const wanted = draws.map((draw): WantedDraw => {
    const { product, projection } = aheadOf(shelf, draw.productId)
    return {
      productId: product.id,
      holdsUp: product.holdsUpBookings,
      centi: draw.expectedCenti,
      day: shelf.days.dayOf(startOf(steps, draw)),
      projection,
      reorderDay: reorders.get(product.id) ?? null,
    }
  })
  const found = availabilityOf(wanted)
  const lacking = found.draws.filter(draw => draw.state !== 'there')
  const waitedFor = lacking.filter(draw => draw.holdsUp && draw.state === 'short')
  const starts = draws
    .filter(draw => waitedFor.some(each => each.productId === draw.productId))
    .map(draw => startOf(steps, draw))
  return {
    shelf: {
      short: lacking.map(draw => shortView(shelf, draw, wanted)),
      words: lackWords(shelf, lacking),
      proposal: lacking.flatMap(draw => proposal(shelf, draw)),
    },
    wait:
      found.ok || found.couldBeOn === null
        ? null
        : {
            couldBeOn: found.couldBeOn,
            lackingAt: Math.min(...starts),
            ifHereWords: say('If {goods} {count, plural, one {is} other {are}} here by {day}', {
              goods: goodsWords(shelf, waitedFor),
              count: waitedFor.length,
              day: byWords(shelf, waitedFor),
            }),
          },
  }
}

function aheadOf(shelf: ShelfAhead, productId: string): ProductAhead {
  const found = shelf.products.get(productId)
  if (!found) throw new Error(`Product ${productId} was not looked up`)
  return found
}

function startOf(steps: readonly PlacedStep[], draw: ExpectedDraw): number {
  const step = steps[draw.position]
  if (!step) throw new Error(`A draw of step ${draw.position} of ${steps.length}`)
  return step.startAt
}

/** Of each product that can be bought, the day it would be here by. */
function reorderDays(shelf: ShelfAhead): Map<string, number | null> {
  return new Map(
    [...shelf.products].map(([id, { buying }]) => [id, buying === null ? null : reorderDay(shelf, buying)]),
  )
}

/** The day by which goods ordered today are here nine times in ten. */
function reorderDay({ ground }: ShelfAhead, { supplier, lead }: Buying): number {
  const { placedOn } = dueDays(supplier, lead, ground.nowAt, ground.zone)
  return deliveryWindow(supplier, { placedOn, promisedOn: null }, ground.day).lateDay
}

function shortView(shelf: ShelfAhead, draw: DrawAvailability, wanted: readonly WantedDraw[]) {
  const { name, unit } = aheadOf(shelf, draw.productId).product
  const need = wanted.reduce((sum, each) => sum + (each.productId === draw.productId ? each.centi : 0), 0)
  return {
    productId: draw.productId,
    productName: name,
    need: unitsOf(need),
    have: unitsOf(Math.max(0, need - draw.missingCenti)),
    unit,
    holdsUp: draw.holdsUp,
    couldBeThere: draw.couldBeOn,
  }
}

/** One line on everything that lacks: `Needs 3 pieces of Grenn Pads by Monday: put on today's order.` */
function lackWords(shelf: ShelfAhead, lacking: readonly DrawAvailability[]): string | null {
  if (lacking.length === 0) return null
  const needs = say('Needs {goods} by {day}', {
    goods: goodsWords(shelf, lacking),
    day: byWords(shelf, lacking),
  })
  const unsold = lacking.filter(draw => aheadOf(shelf, draw.productId).buying === null)
  if (unsold.length > 0)
    return say('{needs}; no supplier is entered for {names}.', { needs, names: namesOf(shelf, unsold) })
  const late = lacking.filter(draw => draw.state === 'short').map(draw => draw.couldBeOn ?? '')
  const latest = late.sort().at(-1)
  return latest
    ? say('{needs}: ordered today, it could be there {latest}.', {
        needs,
        latest: nearDayWords(latest, shelf.ground.day),
      })
    : say('{needs}: put on today’s order.', { needs })
}

function goodsWords(shelf: ShelfAhead, draws: readonly DrawAvailability[]): string {
  return listWords(
    draws.map(({ productId, missingCenti }) => {
      const { name, unit } = aheadOf(shelf, productId).product
      // Rounded up: two and a half pieces short are three to buy.
      return say('{missingCenti} of {name}', {
        missingCenti: amountWords(Math.ceil(missingCenti / 100) * 100, unit, 0),
        name,
      })
    }),
  )
}

function namesOf(shelf: ShelfAhead, draws: readonly DrawAvailability[]): string {
  return listWords(draws.map(draw => aheadOf(shelf, draw.productId).product.name))
}

/** The day the first of them is drawn on. */
function byWords(shelf: ShelfAhead, draws: readonly DrawAvailability[]): string {
  return nearDayWords(dateOfDay(Math.min(...draws.map(draw => draw.day))), shelf.ground.day)
}

/** What to order so that it would be there: whole packs for what lacks. */
function proposal(shelf: ShelfAhead, draw: DrawAvailability) {
  const { product, buying } = aheadOf(shelf, draw.productId)
  if (!buying) return []
  const packs = Math.max(1, Math.ceil(draw.missingCenti / buying.offer.packCenti))
  const amount = amountWords(packs * buying.offer.packCenti, product.unit, 0)
  return [
    {
      supplierId: buying.supplier.id,
      supplierName: buying.supplier.name,
      offerId: buying.offer.id,
      packs,
      words: say(
        'Order {packs} {packs, plural, one {pack} other {packs}} ({amount}) of {name} from {name2}.',
        { packs, amount, name: product.name, name2: buying.supplier.name },
      ),
    },
  ]
}
