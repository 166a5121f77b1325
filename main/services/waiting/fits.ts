/** The waiting list against the floor as it stands: who fits where, each answer the promise engine's own. */
import { setImmediate as nextTurn } from 'node:timers/promises'
import { addDays, dateOf, gridUp, startOfDay } from '../../domain/calendar/index.ts'
import { problemOf } from '../../domain/floor/index.ts'
import { Refusal } from '../../domain/refusal.ts'
import { type NoOffer, type Offer, type Problem, staysOf } from '../../domain/schedule/index.ts'
import type { Condition, Finish, PanelNoted, Scope, SizeClass } from '../../domain/shop/index.ts'
import { type BaySpan, fitOf, gapUse, type WishedTimes } from '../../domain/waiting/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import type { Floor } from '../floor/floor.ts'
import { otherVisits, visitInTheWay } from '../floor/vehicleFree.ts'
import { type Sold, sell } from '../setUp/soldTreatments.ts'
import type { Entry } from './entries.ts'

export interface Fit {
  readonly entry: Entry
  /** Null: what they want is not sold any more. */
  readonly sold: Sold | null
  readonly offer: Offer | NoOffer
  readonly usedMin: number
  readonly gapMin: number
}

/** Days further off than this are nobody's who cannot wait. */
const mostDays = 120

/** Each entry's soonest place, and how much of these gaps it uses. One pass for the whole list: what is booked is read once, and what is alike laid out once. */
export async function fitsOn(
  tx: Tx,
  floor: Floor,
  entries: readonly Entry[],
  { exceptJobIds = [], gaps = [] }: { exceptJobIds?: readonly string[]; gaps?: readonly BaySpan[] } = {},
): Promise<Fit[]> {
  const around = { ...floor, jobs: floor.jobs.filter(job => !exceptJobIds.includes(job.id)) }
  const elsewhere = await booked(tx, entries)
  const laid = new Map<string, { sold: Sold; problem: Problem } | null>()
  const fits: Fit[] = []
  for (const entry of entries) {
    const key = JSON.stringify([
      entry.treatmentIds,
      entry.condition,
      entry.scope,
      entry.vehicle.sizeClass,
      entry.vehicle.finish,
      entry.vehicle.panels,
    ])
    if (!laid.has(key)) laid.set(key, await laidOut(tx, around, entry))
    const work = laid.get(key) ?? null
    const offer: Offer | NoOffer = work
      ? await freeOf(tx, floor, elsewhere, entry, fitOf(work.problem, wishedOf(floor, entry)))
      : { kind: 'soonest', feasible: false }
    const stays = offer.feasible ? staysOf(offer.plan).map(({ bay, from, to }) => ({ bay, from, to })) : []
    fits.push({ entry, sold: work?.sold ?? null, offer, ...gapUse(gaps, stays, floor.open) })
    await nextTurn()
  }
  return fits
}

async function laidOut(tx: Tx, floor: Floor, entry: Entry): Promise<{ sold: Sold; problem: Problem } | null> {
  try {
    const sold = await sell(tx, {
      treatmentIds: fromJson<string[]>(entry.treatmentIds),
      condition: entry.condition as Condition,
      sizeClass: entry.vehicle.sizeClass as SizeClass,
      finish: entry.vehicle.finish as Finish,
      over: {
        panels: fromJson<PanelNoted[] | null>(entry.vehicle.panels) ?? [],
        scope: entry.scope as Scope,
        nowAt: floor.nowAt,
      },
    })
    const release = gridUp(floor, floor.nowAt)
    return {
      sold,
      problem: problemOf(floor, { job: { id: 'new', release, asked: release, steps: sold.steps } }),
    }
  } catch (error) {
    if (error instanceof Refusal) return null
    throw error
  }
}

/** The cars among them that are booked for something else, or here. */
async function booked(tx: Tx, entries: readonly Entry[]): Promise<ReadonlySet<string>> {
  const rows = await tx.job.findMany({
    where: {
      vehicleId: { in: entries.map(entry => entry.vehicleId) },
      status: { in: ['held', 'booked', 'inShop'] },
    },
    select: { vehicleId: true },
  })
  return new Set(rows.map(row => row.vehicleId))
}

/** A car that is here for another job then has no place. */
async function freeOf(
  tx: Tx,
  floor: Floor,
  elsewhere: ReadonlySet<string>,
  entry: Entry,
  offer: Offer | NoOffer,
): Promise<Offer | NoOffer> {
  if (!offer.feasible || !elsewhere.has(entry.vehicleId)) return offer
  const visits = await otherVisits(tx, floor, { id: entry.heldJobId ?? '', vehicleId: entry.vehicleId })
  const times = { dropOffAt: offer.dropOff, handoverAt: offer.handover }
  return visitInTheWay(floor, visits, times) === null ? offer : { kind: 'soonest', feasible: false }
}

/** The days that suit, as points in time. */
export function wishedOf(floor: Floor, entry: Pick<Entry, 'fromOn' | 'toOn' | 'weekdays'>): WishedTimes {
  const { zone, nowAt } = floor
  const homeBefore = startOfDay(Temporal.PlainDate.from(entry.toOn).add({ days: 1 }).toString(), zone)
  const fromAt = Math.max(nowAt, startOfDay(entry.fromOn, zone))
  const weekdays = fromJson<number[]>(entry.weekdays)
  if (weekdays.length === 0) return { comes: [{ from: fromAt, to: homeBefore }], homeBefore }
  const first = Temporal.PlainDate.from(dateOf(fromAt, zone))
  const days = Math.min(mostDays, first.until(Temporal.PlainDate.from(entry.toOn)).days + 1)
  const comes = Array.from({ length: Math.max(0, days) }, (_, i) => first.add({ days: i }))
    .filter(day => weekdays.includes(day.dayOfWeek))
    .map(day => {
      const from = startOfDay(day.toString(), zone)
      return { from: Math.max(fromAt, from), to: addDays(from, 1, zone) }
    })
  return { comes, homeBefore }
}
