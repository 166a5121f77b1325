import { addDays, clip, openSpans, startOfDay } from '../../domain/calendar/index.ts'
import { profilesIn } from '../../domain/floor/index.ts'
import type { Capability } from '../../domain/shop/index.ts'
import type { Desk } from '../desk/desk.ts'
import { calendarOf } from '../desk/shopView.ts'
import { jobRows, shownBetween } from '../floor/jobRows.ts'
import { judged, wholeFloor } from '../floor/judged.ts'
import { checkShown } from '../floor/reach.ts'
import { stayViews } from '../floor/stayViews.ts'
import { productsById } from '../setUp/soldTreatments.ts'
import type { BoardInput } from './inputs.ts'
import { slipsOf } from './slips.ts'

export type BoardView = Awaited<ReturnType<typeof boardRange>>

/** What stands where from the start of a day on: every stay that touches the range, as now projected. */
export async function boardRange(desk: Desk, { fromDate, days }: BoardInput) {
  const tx = desk.store.read
  const nowAt = desk.now()
  checkShown(fromDate, 'fromDate', nowAt)
  const calendar = await calendarOf(tx)
  const fromAt = startOfDay(fromDate, calendar.zone)
  const toAt = addDays(fromAt, days, calendar.zone)
  const floor = await wholeFloor(tx, nowAt, toAt)
  const rows = await jobRows(tx, floor, shownBetween(fromAt, toAt, nowAt))
  const products = await productsById(
    tx,
    rows.flatMap(row => row.steps.flatMap(step => step.productId ?? [])),
  )
  const stays = rows
    .flatMap(row => stayViews(row, floor, products, judged(floor)))
    .filter(stay => stay.fromAt < toAt && stay.toAt > fromAt)
  const shown = new Set(stays.map(stay => stay.bayId))
  const closures = await tx.bayClosure.findMany({
    where: { fromAt: { lt: toAt }, toAt: { gt: fromAt } },
    orderBy: { fromAt: 'asc' },
  })
  return {
    fromAt,
    toAt,
    nowAt,
    zone: floor.zone,
    gridMin: floor.gridMin,
    open: clip(openSpans(calendar, fromAt, toAt), fromAt, toAt),
    bays: floor.bays
      .filter(bay => !bay.archived || shown.has(bay.id))
      .map(({ id, name, capabilities }) => ({
        id,
        name,
        capabilities: capabilities as Capability[],
        closures: closures
          .filter(closure => closure.bayId === id)
          .map(({ fromAt, toAt, reason }) => ({ fromAt, toAt, reason })),
      })),
    stays,
    /** Promises not kept as things stand, on whatever day, soonest first. */
    slips: await slipsOf(tx, floor),
    /** The cure profiles of the products in `stays`, by product id. */
    profiles: profilesIn(products),
  }
}
