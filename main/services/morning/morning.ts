import { clip, openSpans, startOfDay } from '../../domain/calendar/index.ts'
import { cautionLines, profilesIn } from '../../domain/floor/index.ts'
import type { Capability } from '../../domain/shop/index.ts'
import type { Desk } from '../desk/desk.ts'
import { calendarOf } from '../desk/shopView.ts'
import { type JobRow, jobRows, shownBetween } from '../floor/jobRows.ts'
import { judged, wholeFloor } from '../floor/judged.ts'
import { checkShown } from '../floor/reach.ts'
import { stayViews } from '../floor/stayViews.ts'
import { productsById } from '../setUp/soldTreatments.ts'
import { arrivalsOf, handoversOf, movesOf } from './morningCars.ts'
import { crewOf, toAskOf } from './morningCrew.ts'
import { cureOf } from './morningCures.ts'
import { carOf, type Day, isOn } from './morningDay.ts'
import { momentsOf } from './morningMoments.ts'

export type MorningView = Awaited<ReturnType<typeof morningSheet>>

/** The day on one sheet: who comes, what stands where, who does what, which cures end when, who goes home. */
export async function morningSheet(desk: Desk, { date }: { date: string }) {
  const tx = desk.store.read
  const nowAt = desk.now()
  checkShown(date, 'date', nowAt)
  const calendar = await calendarOf(tx)
  const { zone } = calendar
  const fromAt = startOfDay(date, zone)
  const toAt = startOfDay(Temporal.PlainDate.from(date).add({ days: 1 }).toString(), zone)
  const { _max } = await tx.crewMember.aggregate({ _max: { noticeDays: true } })
  const noticeMin = (_max.noticeDays ?? 0) * 1440
  const floor = await wholeFloor(tx, nowAt, toAt + noticeMin)
  const shown = shownBetween(fromAt, toAt, nowAt)
  // Today's sheet keeps asking for cars that never came.
  const missed = fromAt <= nowAt && nowAt < toAt ? [{ status: 'booked', dropOffAt: { lt: fromAt } }] : []
  const rows = await jobRows(tx, floor, { OR: [shown, ...missed] })
  const products = await productsById(
    tx,
    rows.flatMap(row => row.steps.flatMap(step => step.productId ?? [])),
  )
  const day: Day = { date, fromAt, toAt, floor, products, open: openSpans(calendar, fromAt, toAt) }
  const stays = rows.flatMap(row =>
    stayViews(row, floor, products, judged(floor))
      .filter(stay => stay.fromAt < toAt && stay.toAt > fromAt)
      .map(stay => ({ row, stay })),
  )
  const closures = await tx.bayClosure.findMany({
    where: { fromAt: { lt: toAt }, toAt: { gt: fromAt } },
    orderBy: { fromAt: 'asc' },
  })
  const booked = rows.filter(row => row.status !== 'held')
  const cures = booked.flatMap(row => cureOf(day, row)).sort((a, b) => a.marks.coatEndAt - b.marks.coatEndAt)
  return {
    date,
    nowAt,
    zone,
    shopName: floor.shop.name,
    fromAt,
    toAt,
    open: clip(day.open, fromAt, toAt),
    profiles: profilesIn(products),
    arrivals: arrivalsOf(day, booked),
    bays: floor.bays
      .filter(bay => !bay.archived || stays.some(({ stay }) => stay.bayId === bay.id))
      .map(bay => ({
        id: bay.id,
        name: bay.name,
        capabilities: bay.capabilities as Capability[],
        closures: closures
          .filter(closure => closure.bayId === bay.id)
          .map(({ fromAt, toAt, reason }) => ({ fromAt, toAt, reason })),
        cars: stays
          .filter(({ stay }) => stay.bayId === bay.id)
          .sort((a, b) => a.stay.fromAt - b.stay.fromAt)
          .map(({ row, stay }) => ({
            ...carOf(row),
            fromAt: stay.fromAt,
            toAt: stay.toAt,
            /** Goes home out of this bay on the day. */
            leaves: stay.toAt === row.leavesAt && isOn(day, stay.toAt),
            blocks: stay.blocks.filter(block => block.fromAt < toAt && block.toAt > fromAt),
          })),
      })),
    crew: await crewOf(tx, day, booked),
    /** Hands from outside to be asked on this day at the latest. */
    toAsk: await toAskOf(tx, day),
    moves: movesOf(day, booked),
    cures,
    moments: momentsOf(day, cures),
    handovers: handoversOf(day, booked),
    /** One line a chemical in use today. */
    cautions: cautionLines(usedOn(day, booked)),
  }
}

/** The products that somebody handles on the day. */
function usedOn({ products, fromAt, toAt }: Day, rows: readonly JobRow[]) {
  const steps = rows.flatMap(row => row.steps)
  const ids = new Set(
    steps
      .filter(step => step.kind === 'work' && step.startAt < toAt && step.endAt > fromAt)
      .flatMap(step => step.productId ?? []),
  )
  return new Map([...products].filter(([id]) => ids.has(id)))
}
