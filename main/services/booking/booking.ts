import { atWall } from '../../domain/calendar/index.ts'
import { statusAt } from '../../domain/job/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import type { Finish, SizeClass } from '../../domain/shop/index.ts'
import { type AuditEntry, assertFresh, type Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { sentence } from '../desk/shopWords.ts'
import type { Floor } from '../floor/floor.ts'
import { caseOf } from '../floor/floorCase.ts'
import { gridDown } from '../floor/floorGrid.ts'
import { planOf, stepOf } from '../floor/floorJobs.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { otherVisits, visitInTheWay } from '../floor/vehicleFree.ts'
import { assertCan } from '../job/assertCan.ts'
import { assertFits, stepRows, timesOf } from '../job/bookingPlan.ts'
import { sell } from '../setUp/soldTreatments.ts'
import { writeStepDraws } from '../shelf/stepDraws.ts'
import type { HeldPlace, HoldInput } from './inputs.ts'
import { farthestAskedMin, horizonMin } from './reach.ts'
import type { HoldView } from './views.ts'

/** How long a place is held unless somebody says otherwise, in minutes. */
const usualHoldMin = 30

/**
 * Holds an offered place for a while. The chain is laid out again from what the shop sells now and the plan is
 * checked against everything booked by now, in the same transaction that saves it: of two desks that want one place,
 * the second is told what took it.
 */
export function holdPlace(desk: Desk, input: HoldInput): Promise<HoldView> {
  const nowAt = desk.now()
  const { plan } = input
  return desk.store.transact({ who: desk.who, at: nowAt }, async (tx, audit) => {
    await lapseHolds(tx, nowAt, audit)
    const vehicle = found(
      await tx.vehicle.findUnique({
        where: { id: input.vehicleId, archivedAt: null },
        include: { customer: { select: { archivedAt: true } } },
      }),
      { vehicleId: input.vehicleId },
      'This vehicle is not on file; choose it again.',
    )
    assertCustomerKept(vehicle.customer, vehicle.id)
    assertNear(plan.handover, nowAt)
    const sold = await sell(tx, {
      treatmentIds: input.treatmentIds,
      condition: input.condition,
      sizeClass: vehicle.sizeClass as SizeClass,
      finish: vehicle.finish as Finish,
    })
    const floor = await loadFloor(tx, nowAt, Math.max(plan.handover, nowAt) + 1)
    // An offer for this very moment stays good for the rest of its grid step.
    const release = gridDown(floor, nowAt)
    const kase = caseOf(floor, { job: { id: 'new', release, asked: release, steps: sold.steps } })
    assertFits(
      floor,
      kase,
      plan,
      sold.steps.map(step => step.name),
    )
    const { id: vehicleId, customerId } = vehicle
    const times = timesOf(sold.steps, plan, sold.products)
    await assertNotElsewhere(tx, floor, { ...times, vehicleId, id: '' })
    const heldUntilAt = nowAt + (input.holdMin ?? usualHoldMin)
    const number = ((await tx.job.aggregate({ _max: { number: true } }))._max.number ?? 0) + 1
    const job = await tx.job.create({
      data: {
        number,
        customerId,
        vehicleId,
        status: 'held',
        heldUntilAt,
        askedAt: input.askedDate === undefined ? null : atWall(input.askedDate, 0, floor.zone),
        condition: input.condition,
        ...times,
        promisedAt: times.handoverAt,
        createdAt: nowAt,
        treatments: {
          create: sold.treatments.map(({ id, name, priceMinor }, position) => ({
            treatmentId: id,
            position,
            name,
            priceMinor,
          })),
        },
        steps: { create: stepRows(sold.steps, plan) },
      },
    })
    await writeStepDraws(tx, [job.id], nowAt)
    audit({
      act: 'held',
      entity: 'job',
      entityId: job.id,
      detail: { number, heldUntilAt, dropOffAt: job.dropOffAt, promisedAt: job.promisedAt },
    })
    return { jobId: job.id, jobNumber: number, version: job.version, heldUntilAt }
  })
}

/** One car is not here for two jobs at once. */
async function assertNotElsewhere(
  tx: Tx,
  floor: Floor,
  job: { id: string; vehicleId: string; dropOffAt: number; handoverAt: number },
): Promise<void> {
  const words = visitInTheWay(floor, await otherVisits(tx, floor.nowAt, job), job)
  if (words !== null)
    refuse('vehicle-booked', { vehicleId: job.vehicleId }, `${sentence(words)} Choose another day.`)
}

/** Nothing is booked for somebody who is put away. */
function assertCustomerKept(customer: { archivedAt: number | null }, vehicleId: string): void {
  if (customer.archivedAt !== null)
    refuse('customer-archived', { vehicleId }, 'Its owner is archived; take them back under Customers first.')
}

/** A plan is looked at as far as it goes, so it goes no further than an offer can. */
function assertNear(handover: number, nowAt: number): void {
  if (handover > nowAt + farthestAskedMin + horizonMin)
    refuse(
      'plan-far',
      { 'plan.handover': handover },
      'That is too far off to book; look at the offers again.',
    )
}

/** Places whose hold has run out are free again, and say so from then on. */
async function lapseHolds(tx: Tx, nowAt: number, audit: (entry: AuditEntry) => void): Promise<void> {
  const over = await tx.job.findMany({
    where: { status: 'held', heldUntilAt: { lte: nowAt } },
    select: { id: true },
  })
  if (over.length === 0) return
  await tx.job.updateMany({
    where: { id: { in: over.map(job => job.id) } },
    data: { status: 'lapsed', version: { increment: 1 } },
  })
  for (const { id } of over) audit({ act: 'lapsed', entity: 'job', entityId: id })
}

/**
 * Makes a held place a booking. A hold that has run out is still good when nobody took its place meanwhile; otherwise
 * it is refused with what did.
 */
export function confirmPlace(desk: Desk, { jobId, version }: HeldPlace): Promise<{ version: number }> {
  const nowAt = desk.now()
  return desk.store.transact({ who: desk.who, at: nowAt }, async (tx, audit) => {
    const stored = await tx.job.findUnique({
      where: { id: jobId },
      include: {
        steps: { orderBy: { position: 'asc' }, include: { crew: true } },
        customer: { select: { archivedAt: true } },
        vehicle: { select: { archivedAt: true } },
      },
    })
    const job = found(stored, { jobId }, 'This booking is not there; look at the board.')
    const status = statusAt(job, nowAt)
    assertCan({ ...job, status }, 'confirm', { jobId })
    assertCustomerKept(job.customer, job.vehicleId)
    if (job.vehicle.archivedAt !== null)
      refuse('vehicle-archived', { jobId }, 'Its car is archived; take it back under Customers first.')
    if (status === 'lapsed') {
      const floor = await loadFloor(tx, nowAt, Math.max(job.handoverAt, nowAt) + 1)
      const release = gridDown(floor, nowAt)
      const steps = job.steps.map(step => ({ ...step, crewIds: step.crew.map(each => each.crewId) }))
      const kase = caseOf(floor, {
        exceptJobId: job.id,
        job: { id: job.id, release, asked: release, steps: steps.map(stepOf) },
      })
      assertFits(
        floor,
        kase,
        planOf({ ...job, steps }),
        steps.map(step => step.name),
      )
      await assertNotElsewhere(tx, floor, job)
    }
    const { count } = await tx.job.updateMany({
      // A hold that has just run out may have been marked so; nothing else changes a held job's version.
      where: { id: jobId, version: job.status === 'lapsed' ? job.version : version },
      data: { status: 'booked', heldUntilAt: null, version: { increment: 1 } },
    })
    assertFresh(count, 'job', jobId)
    audit({ act: 'booked', entity: 'job', entityId: jobId, detail: { promisedAt: job.promisedAt } })
    return { version: job.version + 1 }
  })
}

/** Lets a held place go. */
export function releasePlace(desk: Desk, { jobId, version }: HeldPlace): Promise<void> {
  const nowAt = desk.now()
  return desk.store.transact({ who: desk.who, at: nowAt }, async (tx, audit) => {
    const { count } = await tx.job.updateMany({
      where: { id: jobId, version, status: 'held' },
      data: { status: 'cancelled', heldUntilAt: null, version: { increment: 1 } },
    })
    if (count === 0 && (await tx.job.count({ where: { id: jobId, status: 'lapsed' } })) === 1) return
    assertFresh(count, 'job', jobId)
    audit({ act: 'released', entity: 'job', entityId: jobId })
  })
}
