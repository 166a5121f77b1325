/** Visits as the screens list them: the rule's days with what is booked, aimed at, agreed and written about them. */
import { dateOf } from '../../domain/calendar/index.ts'
import type { JobStatus } from '../../domain/job/index.ts'
import { type ListedDue, visitKey } from '../../domain/upkeep/index.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import { vehicleWords } from '../floor/jobRows.ts'
import { type KeptVisitPlan, openDays } from './kept.ts'
import { openChannels, reachOf, whyNoCall } from './reach.ts'
import { closedWords, lastReminders } from './reminded.ts'
import { upkeepRules } from './settings.ts'
import { nextOf } from './workedOut.ts'

export interface UpkeepDay {
  readonly nowAt: number
  readonly today: string
  readonly zone: string
  readonly isOpen: (date: string) => boolean
}

/** The day upkeep is asked on, and on which days the shop takes cars. */
export async function upkeepDay(tx: Tx, nowAt: number): Promise<UpkeepDay> {
  const { zone } = await shopOf(tx)
  return { nowAt, zone, today: dateOf(nowAt, zone), isOpen: await openDays(tx) }
}

export type VisitView = Awaited<ReturnType<typeof visitViews>>[number]

/** Listed visits with everything a screen says of them. */
export async function visitViews(
  tx: Tx,
  day: UpkeepDay,
  kept: readonly KeptVisitPlan[],
  due: readonly ListedDue[],
) {
  const listed = new Set(due.map(visit => visit.planId))
  const own = kept.filter(each => listed.has(each.row.id))
  const byPlan = new Map(own.map(each => [each.row.id, each]))
  const vehicles = await vehiclesOf(tx, own)
  const names = new Map(
    (await tx.product.findMany({ select: { id: true, name: true } })).map(p => [p.id, p.name]),
  )
  const reach = await reachOf(
    tx,
    [...vehicles.values()].map(vehicle => vehicle.customer.id),
  )
  const bookings = await bookingsOf(tx, day.nowAt, own)
  const reminders = await lastReminders(tx, [...listed])
  const rules = await upkeepRules(tx)
  return due.flatMap(({ state, planId, ruleOn, dueOn, firstOn, lastOn, projected }) => {
    const its = byPlan.get(planId)
    const vehicle = its && vehicles.get(its.row.vehicleId)
    const owner = vehicle && reach.get(vehicle.customer.id)
    // Taken out by another desk between two questions to the database.
    if (!owner) return []
    const { row, plan, aimed, booked } = its
    const key = visitKey({ planId, ruleOn })
    const next = projected ? null : nextOf(its, day)
    const reminder = reminders.get(key) ?? null
    return {
      key,
      planId,
      ruleOn,
      kind: plan.kind,
      title: plan.title,
      dueOn,
      firstOn,
      lastOn,
      /** The day the spread aims it at; null: its due day. */
      targetOn: aimed.get(ruleOn) ?? null,
      state,
      /** Not the next visit of its plan but a later one, if all before are done when due. */
      projected,
      daysLate: next?.dueOn ? next.daysLate : 0,
      /** Why it is due then; null for a projected one. */
      sentence: next?.sentence ?? null,
      vehicleId: vehicle.id,
      plate: vehicle.plate,
      vehicleWords: vehicleWords(vehicle),
      customerId: vehicle.customer.id,
      customerName: vehicle.customer.name,
      productName: row.productId === null ? null : (names.get(row.productId) ?? null),
      /** The channels the owner agrees to now and has an address for. */
      channels: openChannels(owner, day.nowAt),
      /** Why the owner is not to be rung; null: they may be. */
      noCall: whyNoCall(owner, day.nowAt),
      booking: bookings.get(booked.get(ruleOn) ?? '') ?? null,
      reminder,
      /** Why nothing more is written about it, in words: they said no, all tries are used. Null: it may be. */
      closedBecause: closedWords(reminder, rules.maxTries),
    }
  })
}

async function vehiclesOf(tx: Tx, kept: readonly KeptVisitPlan[]) {
  const ids = [...new Set(kept.map(each => each.row.vehicleId))]
  const rows = await tx.vehicle.findMany({
    where: { id: { in: ids } },
    include: { customer: { select: { id: true, name: true } } },
  })
  return new Map(rows.map(row => [row.id, row]))
}

const bookedStates = ['booked', 'inShop', 'handedOver']

/** Which jobs count as a visit to come or made: booked or later, or held and not run out. */
export function standingJobs(nowAt: number) {
  return { OR: [{ status: { in: bookedStates } }, { status: 'held', heldUntilAt: { gt: nowAt } }] }
}

/** The same, of one that was read. */
function stands(job: { status: string; heldUntilAt: number | null }, nowAt: number): boolean {
  return bookedStates.includes(job.status) || (job.status === 'held' && (job.heldUntilAt ?? 0) > nowAt)
}

/** The jobs that visits were booked as, as far as they still stand, by id. */
export function bookingsOf(tx: Tx, nowAt: number, kept: readonly KeptVisitPlan[]) {
  return standingBookings(
    tx,
    nowAt,
    kept.flatMap(each => [...each.booked.values()]),
  )
}

/**
 * Those of some jobs that still stand, by id. Asked for by id alone: with their state in the question too, SQLite reads
 * every job of that state.
 */
export async function standingBookings(tx: Tx, nowAt: number, ids: string[]) {
  const rows = await tx.job.findMany({
    where: { id: { in: ids } },
    select: { id: true, number: true, status: true, dropOffAt: true, heldUntilAt: true },
  })
  return new Map(
    rows
      .filter(job => stands(job, nowAt))
      .map(({ id, number, status, dropOffAt }) => [
        id,
        { jobId: id, jobNumber: number, status: status as JobStatus, dropOffAt },
      ]),
  )
}
