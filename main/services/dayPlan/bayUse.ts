/** How the bays' time was used, week by week, and what each treatment blocked for what it earned. Nothing is written. */
import {
  addDays,
  dateOf,
  difference,
  minutesIn,
  openSpans,
  spanSet,
  startOfDay,
  weekStart,
} from '../../domain/calendar/index.ts'
import { jobStays } from '../../domain/floor/index.ts'
import { isCalledOff } from '../../domain/job/index.ts'
import { weekBeginsNow } from '../../domain/language/index.ts'
import { minorOf } from '../../domain/money/index.ts'
import { type BayVisit, bayTime, type TimeUsed, treatmentCosts } from '../../domain/utilisation/index.ts'
import type { JobWhere } from '../../store/jobRows.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { calendarOf, shopOf } from '../desk/shopView.ts'
import { type JobRow, jobRows } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { chargeSold, netOf } from '../money/jobBill.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import type { UseInput } from './inputs.ts'

export type UseView = Awaited<ReturnType<typeof bayUse>>

const daysOfWeek = 7

/** The present week and those before it, from the weekday the shop begins them on; what is booked for the rest of this week counts as planned. */
export async function bayUse(desk: Desk, { weeks }: UseInput) {
  const nowAt = desk.now()
  const tx = desk.store.read
  const calendar = await calendarOf(tx)
  const present = Temporal.PlainDate.from(weekStart(dateOf(nowAt, calendar.zone), weekBeginsNow()))
  const toAt = addDays(startOfDay(present.toString(), calendar.zone), daysOfWeek, calendar.zone)
  const first = present.subtract({ weeks: weeks - 1 })
  const fromAt = startOfDay(first.toString(), calendar.zone)
  const floor = await loadFloor(tx, nowAt, toAt)
  const where: JobWhere = {
    status: { in: ['booked', 'inShop', 'handedOver'] },
    dropOffAt: { lt: toAt },
    OR: [{ leftAt: { gt: fromAt } }, { leftAt: null, handoverAt: { gt: fromAt } }, { status: 'inShop' }],
  }
  const rows = await jobRows(tx, floor, where)
  const sold = await soldIn(tx, where)
  const jobs = rows.filter(row => !isCalledOff(row))
  const open = openSpans(calendar, fromAt, toAt)
  const closures = await tx.bayClosure.findMany({ where: { fromAt: { lt: toAt }, toAt: { gt: fromAt } } })
  const visits = jobs.map(job => ({ job, stays: jobStays(job) }))
  const bays = floor.bays.filter(
    bay => !bay.archived || visits.some(({ stays }) => stays.some(stay => stay.bay === bay.id)),
  )
  const visitsOf = new Map<string, BayVisit[]>(bays.map(bay => [bay.id, []]))
  for (const { job, stays } of visits)
    for (const { bay, from, to } of stays) visitsOf.get(bay)?.push({ from, to, ...spansOf(job) })
  return {
    zone: floor.zone,
    currency: floor.shop.currency,
    hundredMinor: minorOf('100', floor.shop.currency),
    weeks: Array.from({ length: weeks }, (_, w) => {
      const start = first.add({ weeks: w })
      const from = startOfDay(start.toString(), calendar.zone)
      const span = { fromAt: from, toAt: addDays(from, daysOfWeek, calendar.zone), open }
      const used = bays.map(({ id, name }) => ({
        bayId: id,
        name,
        ...bayTime(
          {
            ...span,
            closed: closures.filter(one => one.bayId === id).map(one => ({ from: one.fromAt, to: one.toAt })),
          },
          (visitsOf.get(id) ?? []).filter(visit => visit.from < span.toAt && span.fromAt < visit.to),
        ),
      }))
      return { beginsOn: start.toString(), bays: used, all: sumOf(used) }
    }),
    /** Of the visits of all these weeks. */
    treatments: treatmentCosts(
      visits.map(({ job, stays }) => ({
        blockedMin: blockedOf(stays, spansOf(job).work, open),
        treatments: sold.get(job.id) ?? [],
      })),
      minorOf('100', floor.shop.currency),
    ),
  }
}

/** What each job's treatments bring in as they would be billed: discounts and packages off, without tax and extras. */
async function soldIn(tx: Tx, where: JobWhere) {
  const [rules, shop] = await Promise.all([moneyRules(tx), shopOf(tx)])
  const jobs = await tx.job.findMany({
    where,
    select: {
      id: true,
      taxExempt: true,
      taxReversed: true,
      charges: true,
      treatments: { include: { treatment: { select: { taxKey: true } } } },
    },
  })
  return new Map(
    jobs.map(job => {
      // What is charged once, or off the whole, is in the order it was agreed.
      const charges = job.charges.toSorted((a, b) => a.position - b.position)
      const { lines } = chargeSold(rules, shop, { ...job, charges })
      return [job.id, job.treatments.map(({ name }, i) => ({ name, priceMinor: netOf(lines[i]!) }))]
    }),
  )
}

function spansOf(job: JobRow): Pick<BayVisit, 'work' | 'holds'> {
  const spans = (kind: string) =>
    job.steps
      .filter(step => step.kind === kind && step.startAt < step.endAt)
      .map(step => ({ from: step.startAt, to: step.endAt }))
  return { work: spans('work'), holds: spans('hold') }
}

/** Opening minutes of a visit in which nobody worked on the car. */
function blockedOf(
  stays: readonly { from: number; to: number }[],
  work: BayVisit['work'],
  open: Parameters<typeof difference>[0],
): number {
  const stood = spanSet(stays.map(({ from, to }) => ({ from, to })))
  const shut = difference(stood, open)
  return minutesIn(difference(difference(stood, shut), spanSet([...work])))
}

function sumOf(used: readonly TimeUsed[]): TimeUsed {
  const sum = (of: (one: TimeUsed) => number) => used.reduce((total, one) => total + of(one), 0)
  return {
    handsOnMin: sum(one => one.handsOnMin),
    blockedMin: sum(one => one.blockedMin),
    idleMin: sum(one => one.idleMin),
    freeCureMin: sum(one => one.freeCureMin),
  }
}
