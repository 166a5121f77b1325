/** Calendar feeds: bay bookings and visits, read-only, each by a secret link of its own. */

import { createHash, randomBytes } from 'node:crypto'
import { dateOfDay, dayNumber, startOfDay } from '../../domain/calendar/index.ts'
import { type FloorJob, jobStays } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import { checkText } from '../../domain/shop/index.ts'
import { type CalendarEvent, calendarFile } from '../../outbox/calendarFile.ts'
import { findJobs } from '../../store/jobRows.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { vehicleWords } from '../floor/jobRows.ts'
import { floorJobOf } from '../job/jobChange.ts'
import { standingJobs, upkeepDay } from '../upkeep/visits.ts'
import { visitsAhead } from '../upkeep/visitsAhead.ts'
import type { FeedInput } from './inputs.ts'

/** The token is random, so a plain digest of it cannot be guessed back. */
function hashOf(token: string): string {
  return createHash('sha256').update(token).digest('hex')
}

export type FeedView = Awaited<ReturnType<typeof listFeeds>>[number]

/** The feeds that are open. */
export function listFeeds(desk: Desk) {
  return desk.store.read.feedToken.findMany({
    where: { revokedAt: null },
    orderBy: { createdAt: 'asc' },
    select: { id: true, name: true, details: true, createdAt: true },
  })
}

/** A new feed; its link is answered this once and kept nowhere. Names and plates are in it only where chosen. */
export function createFeed(desk: Desk, input: FeedInput): Promise<{ id: string; path: string }> {
  const name = checkText(input.name, 'name', say("The feed's name"), 80)
  return act(desk, async (tx, audit, at) => {
    const token = randomBytes(32).toString('base64url')
    const { details } = input
    const { id } = await tx.feedToken.create({ data: { name, details, hash: hashOf(token), createdAt: at } })
    audit({ act: 'feed opened', entity: 'feed', entityId: id, detail: { name, details } })
    return { id, path: `/feed/${token}.ics` }
  })
}

/** Closes a feed: its link answers nobody any more. */
export function revokeFeed(desk: Desk, input: { id: string }): Promise<void> {
  return act(desk, async (tx, audit, at) => {
    const { count } = await tx.feedToken.updateMany({
      where: { id: input.id, revokedAt: null },
      data: { revokedAt: at },
    })
    if (count === 0) refuse('missing', { id: input.id }, say('This feed is closed already.'))
    audit({ act: 'feed closed', entity: 'feed', entityId: input.id })
  })
}

/** What the holder of a link may read; null where it is nobody's, or was closed. */
export async function feedFile(desk: Desk, token: string): Promise<string | null> {
  const row = await desk.store.read.feedToken.findUnique({ where: { hash: hashOf(token) } })
  return row && row.revokedAt === null ? shopCalendar(desk, row) : null
}

/** How far a feed looks back and ahead, in days. */
const backDays = 30
const aheadDays = 180

/** Bay bookings and visits around now as an iCalendar file; without details only bays, times and kinds of visit. */
export async function shopCalendar(desk: Desk, { details }: { details: boolean }): Promise<string> {
  const tx = desk.store.read
  const nowAt = desk.now()
  const shop = await shopOf(tx)
  const day = await upkeepDay(tx, nowAt)
  const today = Temporal.PlainDate.from(day.today)
  const fromAt = startOfDay(today.subtract({ days: backDays }).toString(), shop.zone)
  const until = today.add({ days: aheadDays })
  const { visits, failed } = await visitsAhead(desk, day, until.toString(), { details })
  // Thousands of visits share a few days and titles.
  const onDay = once((on: string) => ({ fromOn: on, untilOn: dateOfDay(dayNumber(on) + 1) }))
  const dueWords = once((title: string) => say('{title} due', { title }))
  return calendarFile(shop.name, nowAt, [
    ...(await stayEvents(tx, fromAt, startOfDay(until.toString(), shop.zone), details, nowAt)),
    ...visits.map(
      (visit): CalendarEvent => ({
        id: `${visit.planId}.${visit.ruleOn}@visit.lustrum`,
        summary: visit.whose === null ? dueWords(visit.title) : `${visit.title}: ${visit.whose}`,
        ...(visit.sentence !== null && { description: visit.sentence }),
        time: onDay(visit.on),
        status: 'tentative',
      }),
    ),
    ...failed.map(
      ({ planId, title, plate, customerName, why }): CalendarEvent => ({
        id: `${planId}@failed.lustrum`,
        summary: details
          ? say('{title}: {plate} ({customerName}) cannot be worked out', { title, plate, customerName })
          : say('{title} cannot be worked out', { title }),
        ...(details && { description: why }),
        time: onDay(day.today),
        status: 'tentative',
      }),
    ),
  ])
}

/** The same function, which works each answer out once. */
function once<Result>(work: (of: string) => Result): (of: string) => Result {
  const known = new Map<string, Result>()
  return of => {
    const result = known.get(of) ?? work(of)
    known.set(of, result)
    return result
  }
}

async function stayEvents(
  tx: Tx,
  fromAt: number,
  toAt: number,
  details: boolean,
  nowAt: number,
): Promise<CalendarEvent[]> {
  const bays = new Map((await tx.bay.findMany()).map(bay => [bay.id, bay.name]))
  const rows = await findJobs(tx, {
    dropOffAt: { lt: toAt },
    handoverAt: { gte: fromAt },
    ...standingJobs(nowAt),
  })
  return rows.flatMap(row => {
    const job: FloorJob = floorJobOf(row, nowAt)
    const { vehicle, customer } = row
    const car = [vehicle.plate, vehicleWords(vehicle), customer.name].filter(Boolean).join(', ')
    return jobStays(job).map((stay, i): CalendarEvent => {
      const bay = bays.get(stay.bay) ?? 'bay'
      return {
        id: `${row.id}.${i}@stay.lustrum`,
        summary: details
          ? say('{bay}: job {number}, {car}', { bay, number: row.number, car })
          : say('{bay} taken', { bay }),
        ...(details && { description: row.treatments.map(each => each.name).join(', ') }),
        time: { fromAt: stay.from, toAt: stay.to },
        status: row.status === 'held' ? 'tentative' : 'confirmed',
      }
    })
  })
}
