/** Two weeks of bookings, each placed by the promise itself as it would be at the desk. */

import { addDays, dateOf, startOfDay } from '../../domain/calendar/index.ts'
import { type FloorJob, problemOf, stepRows } from '../../domain/floor/index.ts'
import { type OfferKind, type Plan, promiseOf } from '../../domain/schedule/index.ts'
import type { Condition } from '../../domain/shop/index.ts'
import type { LaidStep } from '../../domain/treatment/index.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import type { Floor } from '../floor/floor.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { type Sold, sell } from '../setUp/soldTreatments.ts'
import { curingPlan } from './curing.ts'
import type { DemoVehicle } from './customerData.ts'

interface Wish {
  treatmentIds: string[]
  condition: Condition
  kind: OfferKind
}

/** What callers ask for, over and over. */
const wishes: Wish[] = [
  { treatmentIds: ['demo-two-layers', 'demo-wheels'], condition: 'good', kind: 'leastBlocked' },
  { treatmentIds: ['demo-wash'], condition: 'good', kind: 'soonest' },
  { treatmentIds: ['demo-layer-topper'], condition: 'good', kind: 'leastBlocked' },
  { treatmentIds: ['demo-one-step'], condition: 'worn', kind: 'soonest' },
  { treatmentIds: ['demo-topper'], condition: 'good', kind: 'soonest' },
  { treatmentIds: ['demo-two-layers'], condition: 'good', kind: 'soonest' },
  { treatmentIds: ['demo-two-step'], condition: 'good', kind: 'leastBlocked' },
  { treatmentIds: ['demo-wash'], condition: 'good', kind: 'askedDay' },
  { treatmentIds: ['demo-one-layer', 'demo-wheels'], condition: 'good', kind: 'soonest' },
  { treatmentIds: ['demo-one-layer'], condition: 'worn', kind: 'leastBlocked' },
  { treatmentIds: ['demo-wheels'], condition: 'good', kind: 'askedDay' },
  { treatmentIds: ['demo-two-layers'], condition: 'good', kind: 'leastBlocked' },
  { treatmentIds: ['demo-wash'], condition: 'worn', kind: 'soonest' },
]

export interface Placed {
  readonly job: FloorJob
  readonly vehicle: DemoVehicle
  readonly condition: Condition
  readonly sold: Sold
  /** The owner fetches it at a time agreed, later than it is ready. */
  readonly fetched: boolean
}

/** How many callers each day brings, from six days ago to eight days ahead: the near days fill first. */
const callers = [2, 3, 4, 4, 5, 5, 5, 4, 4, 4, 4, 4, 3, 3, 2]
const firstDay = -6

/** The cars that cure as now stands, and when they are fetched, in minutes from now at the earliest. */
const curing: [Wish, number][] = [
  [{ treatmentIds: ['demo-two-layers'], condition: 'good', kind: 'soonest' }, 180],
  [{ treatmentIds: ['demo-one-layer'], condition: 'good', kind: 'soonest' }, 300],
]

/** Washed, and its leather restored by somebody from outside, booked ahead for the days after the notice. */
const leather: Wish = { treatmentIds: ['demo-wash', 'demo-leather'], condition: 'good', kind: 'askedDay' }
const leatherDay = 3

/** Places the bookings around `nowAt`. What fits on no day asked for is not booked, as at the desk. */
export async function placeBookings(
  tx: Tx,
  nowAt: number,
  vehicles: readonly DemoVehicle[],
): Promise<{ floor: Floor; placed: Placed[] }> {
  const { zone } = await shopOf(tx)
  const midnight = startOfDay(dateOf(nowAt, zone), zone)
  const floor = await loadFloor(tx, addDays(midnight, firstDay, zone), addDays(midnight, 30, zone))
  const waiting = [...vehicles]
  const placed: Placed[] = []
  const ahead: Placed[] = []
  const place = async (
    wish: Wish,
    fetched: boolean,
    planFor: (steps: readonly LaidStep[], jobs: FloorJob[]) => Plan | null,
    into = placed,
  ) => {
    const { condition, treatmentIds } = wish
    const polishes = treatmentIds.some(id => id.includes('-step') || id.includes('-layer'))
    const at = waiting.findIndex(vehicle => !polishes || vehicle.finish === 'gloss')
    const vehicle = waiting[at]
    if (!vehicle) return
    const { sizeClass, finish } = vehicle
    const sold = await sell(tx, { treatmentIds, condition, sizeClass, finish })
    const jobs = [...ahead, ...placed].map(each => each.job)
    const plan = planFor(sold.steps, jobs)
    if (!plan) return
    waiting.splice(at, 1)
    into.push({
      job: jobOf(placed.length + 1, vehicle, sold.steps, plan),
      vehicle,
      condition,
      sold,
      fetched,
    })
  }
  for (const [wish, fetchedMin] of curing)
    await place(wish, true, (steps, jobs) => curingPlan(floor, jobs, steps, nowAt, fetchedMin))
  // Booked ahead of all others, with the last vehicle and the last number: theirs stay as they are without it.
  waiting.unshift(...waiting.splice(-1))
  const leatherAt = addDays(midnight, leatherDay, zone)
  await place(
    leather,
    true,
    (steps, jobs) => offeredPlan({ ...floor, jobs }, steps, leatherAt, leather.kind),
    ahead,
  )
  let turn = 0
  for (const [i, count] of callers.entries()) {
    const askedAt = addDays(midnight, firstDay + i, zone)
    for (let n = 0; n < count; n++) {
      const wish = wishes[turn++ % wishes.length]!
      await place(wish, false, (steps, jobs) => offeredPlan({ ...floor, jobs }, steps, askedAt, wish.kind))
    }
  }
  const last = ahead.map(each => ({ ...each, job: { ...each.job, ...numbered(placed.length + 1) } }))
  return { floor, placed: [...last, ...placed] }
}

/** The offer of that kind, if the car can come within two days of the one asked for. */
function offeredPlan(
  floor: Floor,
  steps: readonly LaidStep[],
  askedAt: number,
  kind: OfferKind,
): Plan | null {
  const job = { id: 'new', release: askedAt, asked: askedAt, steps }
  const offer = promiseOf(problemOf(floor, { job }), kind)
  return offer.feasible && offer.dropOff < askedAt + 3 * 1440 ? offer.plan : null
}

function numbered(number: number): Pick<FloorJob, 'id' | 'number'> {
  return { id: `demo-job-${String(number).padStart(2, '0')}`, number }
}

function jobOf(number: number, vehicle: DemoVehicle, steps: readonly LaidStep[], plan: Plan): FloorJob {
  return {
    ...numbered(number),
    status: 'booked',
    plate: vehicle.plate,
    promisedAt: plan.handover,
    plannedHandoverAt: plan.handover,
    handoverAt: plan.handover,
    leavesAt: plan.handover,
    arrivedAt: null,
    coveredBy: null,
    steps: stepRows(steps, plan).map(({ crew, ...row }) => ({
      ...row,
      actualStartAt: null,
      actualEndAt: null,
      crewIds: crew.create.map(each => each.crewId),
    })),
  }
}
