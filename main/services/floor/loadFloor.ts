/** The shop's floor over a stretch of time: hours, bays, crew and everything booked, ready for the scheduler. */

import {
  crewSpans,
  dateOf,
  type OpeningHours,
  openSpans,
  spanSet,
  startOfDay,
} from '../../domain/calendar/index.ts'
import { type FloorJob, floorJobs, projectFloor } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import type { Capability, Skill } from '../../domain/shop/index.ts'
import { floorRows } from '../../store/floorRows.ts'
import { keptUntilSaved } from '../../store/kept.ts'
import type { Tx } from '../../store/store.ts'
import { calendarOf, shopOf } from '../desk/shopView.ts'
import type { Floor } from './floor.ts'
import { withLaidCoats } from './laidCoats.ts'

/** How far a car that is in the shop can slip past its plan and still be followed, in minutes. */
export const farthestSlipMin = 45 * 1440

/**
 * Loads the floor from now to `untilAt` or further. Cars in the shop are projected to the present, so that a step
 * that overruns pushes what follows it.
 */
export const loadFloor = keptUntilSaved(readFloor, (...asked: [nowAt: number, untilAt: number]) =>
  asked.join(),
)

async function readFloor(tx: Tx, nowAt: number, untilAt: number): Promise<Floor> {
  const toAt = Math.max(untilAt, (await lastPlannedAt(tx, nowAt)) + farthestSlipMin)
  const shop = await shopOf(tx)
  const calendar = await calendarOf(tx)
  const [bayRows, crewRows, rows] = await Promise.all([
    tx.bay.findMany({
      orderBy: [{ position: 'asc' }, { id: 'asc' }],
      include: { closures: { where: { toAt: { gt: nowAt } }, orderBy: { fromAt: 'asc' } } },
    }),
    tx.crewMember.findMany({
      orderBy: [{ position: 'asc' }, { id: 'asc' }],
      include: { absences: { where: { toAt: { gt: nowAt } } } },
    }),
    floorRows(tx, nowAt, toAt),
  ])
  // Work begun in the past is measured in the openings of then.
  const begun = rows.filter(row => row.status === 'inShop').map(row => row.actualStartAt ?? row.startAt)
  const fromAt = startOfDay(dateOf(Math.min(nowAt, ...begun), shop.zone), shop.zone)
  const open = openSpans(calendar, fromAt, toAt)
  const jobs = await withLaidCoats(tx, nowAt, floorJobs(rows))
  return projectFloor({
    shop,
    zone: shop.zone,
    nowAt,
    gridMin: shop.gridMin,
    gridFrom: startOfDay(dateOf(nowAt, shop.zone), shop.zone),
    fromAt,
    toAt,
    open,
    bays: bayRows.map(({ id, name, capabilities, offers, closures, archivedAt }) => ({
      id,
      name,
      capabilities: capabilities as Capability[],
      offers: offers as string[],
      closures,
      archived: archivedAt !== null,
    })),
    crew: crewRows.map(person => ({
      id: person.id,
      name: person.name,
      skills: person.skills as Skill[],
      present: crewSpans(open, shop.zone, {
        weekly: person.weekly as OpeningHours[] | null,
        absences: spanSet(person.absences.map(({ fromAt, toAt }) => ({ from: fromAt, to: toAt }))),
      }),
      archived: person.archivedAt !== null,
      noticeDays: person.noticeDays,
    })),
    jobs,
    lent: await lentWith(tx, jobs),
    bayNames: new Map(bayRows.map(bay => [bay.id, bay.name])),
    crewNames: new Map(crewRows.map(person => [person.id, person.name])),
    jobNames: new Map(jobs.map(job => [job.id, jobWords(job)])),
  })
}

/** When the last of the cars in the shop is planned to leave: one that came early stands until far ahead. */
async function lastPlannedAt(tx: Tx, nowAt: number): Promise<number> {
  const { _max } = await tx.job.aggregate({ where: { status: 'inShop' }, _max: { plannedHandoverAt: true } })
  return Math.max(nowAt, _max.plannedHandoverAt ?? nowAt)
}

function jobWords(job: FloorJob): string {
  return job.plate === ''
    ? say('job {number}', { number: job.number })
    : say('{plate} (job {number})', { plate: job.plate, number: job.number })
}

/** What is lent with each of the floor's jobs. */
async function lentWith(tx: Tx, jobs: readonly FloorJob[]) {
  // Most shops lend nothing, and none so much that it could not be read whole.
  const loans = await tx.jobLoan.findMany({
    where: { job: { status: { in: ['held', 'booked', 'inShop'] } } },
    select: { jobId: true, lendable: { select: { id: true, name: true } } },
  })
  const ids = new Set(jobs.map(job => job.id))
  const lent = new Map<string, { id: string; name: string }[]>()
  for (const { jobId, lendable } of loans)
    if (ids.has(jobId)) lent.set(jobId, [...(lent.get(jobId) ?? []), lendable])
  return lent
}
