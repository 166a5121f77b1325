/**
 * What each product will be asked for. Learned from a year of draws, which the ledger alone can change: so it is kept in
 * memory until the product's ledger goes on, the day is over, or it is bought in another way.
 */
import { dateOfDay, type ShopCalendar, startOfDay } from '../../domain/calendar/index.ts'
import {
  arrivalChances,
  type Chances,
  coverChances,
  type Demand,
  type Level,
  latticeStep,
  learnDemand,
  meanOf,
  workingDayOf,
} from '../../domain/shelf/index.ts'
import type { Store, Tx } from '../../store/store.ts'
import { type LedgerMark, ledgerMarks } from '../../store/useRows.ts'
import type { Desk } from '../desk/desk.ts'
import type { ShelfDay } from './countedProducts.ts'
import { type Made, withMade } from './dilutions.ts'
import { histories, historyDays, type PastOf } from './histories.ts'
import type { ShopDays } from './shopDays.ts'
import type { Buying } from './underWay.ts'

/** A product's demand and the time to cover, on the lattice of the pack it is bought in. */
export interface Outlook extends Covers {
  readonly demand: Demand
  readonly level: Level
  /** Something of it has been received: before, an empty shelf says nothing. */
  readonly everReceived: boolean
  /** Open days from delivery to expiry; null: it keeps. */
  readonly lifeDays: number | null
}

/** How long the shelf must last until the next delivery, and until goods ordered today are here, in open days. */
interface Covers {
  readonly cover: Chances
  readonly arrival: Chances
}

interface Terms {
  readonly ground: ShelfDay
  readonly calendar: ShopCalendar
  readonly days: ShopDays
  readonly made: readonly Made[]
  readonly buyings: ReadonlyMap<string, Buying>
}

interface Kept {
  /** The day and the hours it was learned on. */
  readonly ground: string
  readonly outlooks: Map<string, { readonly basis: string; readonly outlook: Outlook }>
}

const keptOf = new WeakMap<Store, Kept>()

/** The outlooks of these products, by id. */
export async function outlooksOf(
  desk: Desk,
  tx: Tx,
  productIds: readonly string[],
  terms: Terms,
): Promise<Map<string, Outlook>> {
  const marks = await ledgerMarks(tx)
  const outlooks = keepFor(desk, tx, terms)
  const bases = new Map(productIds.map(id => [id, basisOf(id, marks, terms)]))
  const unknown = productIds.filter(id => outlooks.get(id)?.basis !== bases.get(id))
  for (const [id, outlook] of await learn(tx, unknown, marks, terms))
    outlooks.set(id, { basis: bases.get(id) ?? '', outlook })
  return new Map(productIds.flatMap(id => [[id, outlooks.get(id)!.outlook] as const]))
}

/** What was kept of this day. Inside an act nothing is: its moves may still be taken back, and their numbers given again. */
function keepFor(desk: Desk, tx: Tx, { ground, calendar }: Terms): Kept['outlooks'] {
  if (tx !== desk.store.read) return new Map()
  const now = JSON.stringify([ground.day, calendar])
  const kept = keptOf.get(desk.store)
  if (kept?.ground === now) return kept.outlooks
  const outlooks: Kept['outlooks'] = new Map()
  keptOf.set(desk.store, { ground: now, outlooks })
  return outlooks
}

/** Everything an outlook rests on beside the day and the hours: the ledger's numbers only grow. */
function basisOf(id: string, marks: ReadonlyMap<string, LedgerMark>, { made, buyings }: Terms): string {
  const thinned = made.filter(each => each.concentrateId === id || each.productId === id)
  const buying = buyings.get(id)
  return JSON.stringify([
    marks.get(id),
    thinned.map(each => [each, marks.get(each.productId)]),
    buying && [buying.offer, buying.supplier, buying.lead],
  ])
}

async function learn(
  tx: Tx,
  ids: readonly string[],
  marks: ReadonlyMap<string, LedgerMark>,
  { ground, days, made, buyings }: Terms,
): Promise<Map<string, Outlook>> {
  if (ids.length === 0) return new Map()
  const fromAt = startOfDay(dateOfDay(ground.day - historyDays), ground.zone)
  const pastOf = await histories(tx, days, ground.day, fromAt, {
    productIds: withMade(ids, made),
    made,
    firstOf: id => marks.get(id)?.receivedOn ?? null,
  })
  const covers = new Map<string | null, Covers>()
  return new Map(
    ids.map(id => {
      const buying = buyings.get(id) ?? null
      const key = buying?.supplier.id ?? null
      const own = covers.get(key) ?? coversOf(buying, ground.day, days)
      covers.set(key, own)
      return [id, outlookOf(pastOf(id), buying, own, days)]
    }),
  )
}

/** The covers of a supplier; where nobody sells a product, a week is looked ahead. */
function coversOf(buying: Buying | null, today: number, days: ShopDays): Covers {
  if (!buying) return { cover: surely(5), arrival: surely(1) }
  const { supplier, lead } = buying
  const input = { today, lead, supplierWorks: workingDayOf(supplier), shopOpen: days.open }
  return { cover: coverChances(input), arrival: arrivalChances(input) }
}

function surely(days: number): Chances {
  const chances = new Float64Array(days + 1)
  chances[days] = 1
  return chances
}

function outlookOf(past: PastOf, buying: Buying | null, covers: Covers, days: ShopDays): Outlook {
  const { history, level, everReceived } = past
  const { draws, from, to } = history
  const sum = draws.reduce((total, draw) => total + draw.centi, 0)
  const draw = draws.length > 0 ? sum / draws.length : 100
  // Where nobody sells it, what is drawn four times stands for a pack: the lattice has to have some step.
  const packCenti = buying?.offer.packCenti ?? Math.max(1, Math.round(draw * 4))
  const aheadCenti = ((sum * level.factor) / Math.max(1, to - from)) * meanOf(covers.cover)
  const demand = learnDemand(history, {
    stepCenti: latticeStep(packCenti, draw, aheadCenti),
    horizon: covers.cover.length,
    levelFactor: level.factor,
  })
  const life = buying?.offer.shelfLifeDays ?? null
  return {
    ...covers,
    demand,
    level,
    everReceived,
    lifeDays: life === null ? null : Math.max(1, Math.round((life * days.openPerYear) / 365)),
  }
}
