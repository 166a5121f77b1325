import { atWall, gridDown } from '../../domain/calendar/index.ts'
import { assertFits, planOf, problemOf, stepOf, stepRows, timesOf } from '../../domain/floor/index.ts'
import { statusAt } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { type Charge, splitDeposit } from '../../domain/money/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import type { Finish, PanelNoted, SizeClass } from '../../domain/shop/index.ts'
import { sentence } from '../../domain/words.ts'
import { peopleIn } from '../../store/jobRows.ts'
import { fromJson } from '../../store/json.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { type Audit, act, type Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { lendWith } from '../floor/lent.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { otherVisits, visitInTheWay } from '../floor/vehicleFree.ts'
import { assertCan } from '../job/assertCan.ts'
import type { MoneyRules } from '../prices/inputs.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { salePrice } from '../prices/salePrice.ts'
import { callersVehicle } from '../records/caller.ts'
import { vehicleInUse } from '../records/vehicles.ts'
import { sell } from '../setUp/soldTreatments.ts'
import { dropStepDraws, writeStepDraws } from '../shelf/stepDraws.ts'
import type { HeldPlace, HoldInput } from './inputs.ts'
import { farthestAskedMin, horizonMin } from './reach.ts'

export type HoldView = Awaited<ReturnType<typeof holdPlaceIn>>

/** How long a place is held unless somebody says otherwise, in minutes. */
const usualHoldMin = 30

/**
 * Holds an offered place for a while. The chain is laid out again from what the shop sells now and the plan is
 * checked against everything booked by now, in the same transaction that saves it: of two desks that want one place,
 * the second is told what took it. A new customer and a new car are written down with it, or nothing is.
 */
export function holdPlace(desk: Desk, input: HoldInput): Promise<HoldView> {
  return act(desk, (tx, audit, nowAt) => holdPlaceIn(tx, audit, nowAt, input))
}

/** Books an offered place at once: held and confirmed in one act, or neither. */
export function bookPlace(desk: Desk, input: HoldInput): Promise<HoldView> {
  return act(desk, async (tx, audit, nowAt) => {
    const held = await holdPlaceIn(tx, audit, nowAt, input)
    const { promisedAt } = await tx.job.findUniqueOrThrow({ where: { id: held.jobId } })
    return { ...held, ...(await markBooked(tx, audit, { ...held, promisedAt })) }
  })
}

/** The same as part of a larger act, which holds the place or does nothing at all. */
export async function holdPlaceIn(
  tx: Tx,
  audit: Audit,
  nowAt: number,
  input: HoldInput & { readonly quoted?: Quoted },
) {
  const { condition, treatmentIds, scope = 'whole', plan, askedDate, coveredBy, lends = [] } = input
  const { holdMin = usualHoldMin } = input
  await lapseHolds(tx, nowAt, audit)
  const { id: vehicleId, customerId, ...vehicle } = await callersVehicle(tx, audit, nowAt, input)
  assertNear(plan.handover, nowAt)
  const sold = await sell(tx, {
    treatmentIds,
    condition,
    coveredBy,
    sizeClass: vehicle.sizeClass as SizeClass,
    finish: vehicle.finish as Finish,
    over: { panels: fromJson<PanelNoted[] | null>(vehicle.panels) ?? [], scope, nowAt },
  })
  const floor = await loadFloor(tx, nowAt, Math.max(plan.handover, nowAt) + 1)
  const rules = await moneyRules(tx)
  const price = input.quoted
    ? priceQuoted(sold.treatments, input.quoted, rules)
    : salePrice(rules, sold, input, floor.shop.currency)
  const depositMinor = depositOf(input.depositMinor ?? price.depositMinor, price.totalMinor)
  // An offer for this very moment stays good for the rest of its grid step.
  const release = gridDown(floor, nowAt)
  assertFits(
    floor,
    problemOf(floor, { job: { id: 'new', release, asked: release, steps: sold.steps } }),
    plan,
    sold.steps.map(step => step.name),
  )
  const times = timesOf(sold.steps, plan, sold.products, sold.leaving)
  await assertNotElsewhere(tx, floor, { ...times, vehicleId, id: '' })
  const heldUntilAt = nowAt + holdMin
  const number = ((await tx.job.aggregate({ _max: { number: true } }))._max.number ?? 0) + 1
  const job = await tx.job.create({
    data: {
      number,
      customerId,
      vehicleId,
      status: 'held',
      heldUntilAt,
      askedAt: askedDate === undefined ? null : atWall(askedDate, 0, floor.zone),
      condition,
      stretch: sold.stretch,
      coveredBy: sold.coveredBy,
      coveredAt: sold.coveredBy === null ? null : nowAt,
      ...times,
      promisedAt: times.handoverAt,
      createdAt: nowAt,
      depositMinor,
      treatments: {
        create: sold.treatments.map(({ id, ...sold }, position) => ({
          ...sold,
          priceMinor: price.treatments[position]!.priceMinor,
          treatmentId: id,
          position,
        })),
      },
      charges: { create: price.charges.map((charge, position) => ({ ...charge, position })) },
      steps: { create: stepRows(sold.steps, plan) },
      checks: { create: sold.checks.map((check, position) => ({ ...check, position })) },
    },
  })
  await lendWith(tx, floor, job, lends)
  await writeStepDraws(tx, [job.id], nowAt)
  audit({
    act: 'held',
    entity: 'job',
    entityId: job.id,
    detail: { number, heldUntilAt, dropOffAt: job.dropOffAt, promisedAt: job.promisedAt },
  })
  return { jobId: job.id, jobNumber: number, version: job.version, heldUntilAt, customerId, vehicleId }
}

/** Prices that were promised before, whatever the shop asks today. */
interface Quoted {
  readonly treatments: readonly { readonly id: string; readonly priceMinor: number }[]
  readonly charges: readonly Charge[]
  readonly totalMinor: number
}

/** The prices of a quote in the shop's order, with the deposit the shop asks for now. */
function priceQuoted(
  sold: readonly { readonly id: string }[],
  { treatments, charges, totalMinor }: Quoted,
  rules: MoneyRules,
) {
  const prices = new Map(treatments.map(each => [each.id, each.priceMinor]))
  return {
    treatments: sold.map(({ id }) => ({ priceMinor: prices.get(id) ?? 0 })),
    charges,
    totalMinor,
    depositMinor: splitDeposit(totalMinor, rules.depositPercent).depositMinor,
  }
}

function depositOf(depositMinor: number, totalMinor: number): number {
  if (depositMinor < 0 || depositMinor > totalMinor)
    refuse('deposit-bad', { depositMinor }, say('A deposit is from 0 to the whole price.'))
  return depositMinor
}

/** One car is not here for two jobs at once. */
export async function assertNotElsewhere(
  tx: Tx,
  floor: Floor,
  job: { id: string; vehicleId: string; dropOffAt: number; handoverAt: number },
): Promise<void> {
  const words = visitInTheWay(floor, await otherVisits(tx, floor, job), job)
  if (words !== null)
    refuse(
      'vehicle-booked',
      { vehicleId: job.vehicleId },
      say('{words} Choose another day.', { words: sentence(words) }),
    )
}

/** A plan is looked at as far as it goes, so it goes no further than an offer can. */
export function assertNear(handover: number, nowAt: number): void {
  if (handover > nowAt + farthestAskedMin + horizonMin)
    refuse(
      'plan-far',
      { 'plan.handover': handover },
      say('That is too far off to book; look at the offers again.'),
    )
}

/** Places whose hold has run out are free again, and say so from then on. */
async function lapseHolds(tx: Tx, nowAt: number, audit: Audit): Promise<void> {
  const over = await tx.job.findMany({
    where: { status: 'held', heldUntilAt: { lte: nowAt } },
    select: { id: true },
  })
  if (over.length === 0) return
  const ids = over.map(job => job.id)
  await tx.job.updateMany({
    where: { id: { in: ids } },
    data: { status: 'lapsed', version: { increment: 1 } },
  })
  await dropStepDraws(tx, ids)
  for (const { id } of over) audit({ act: 'lapsed', entity: 'job', entityId: id })
}

/**
 * Makes a held place a booking. A hold that has run out is still good when nobody took its place meanwhile; otherwise
 * it is refused with what did.
 */
export function confirmPlace(desk: Desk, place: HeldPlace): Promise<{ version: number }> {
  return act(desk, (tx, audit, nowAt) => confirmPlaceIn(tx, audit, nowAt, place))
}

/** The same as part of a larger act. */
export async function confirmPlaceIn(
  tx: Tx,
  audit: Audit,
  nowAt: number,
  { jobId, version }: HeldPlace,
): Promise<{ version: number }> {
  const stored = await tx.job.findUnique({
    where: { id: jobId },
    include: { steps: { orderBy: { position: 'asc' }, include: { crew: true } } },
  })
  const job = found(stored, { jobId }, say('This booking is not there; look at the board.'))
  const status = statusAt(job, nowAt)
  assertCan({ ...job, status }, 'confirm', { jobId })
  await vehicleInUse(tx, job.vehicleId)
  if (status === 'lapsed') {
    const floor = await loadFloor(tx, nowAt, Math.max(job.handoverAt, nowAt) + 1)
    const release = gridDown(floor, nowAt)
    const steps = job.steps.map(step => ({ ...step, ...peopleIn(step.crew) }))
    const problem = problemOf(floor, {
      exceptJobId: job.id,
      job: { id: job.id, release, asked: release, steps: steps.map(stepOf) },
    })
    assertFits(
      floor,
      problem,
      planOf({ ...job, steps }),
      steps.map(step => step.name),
    )
    await assertNotElsewhere(tx, floor, job)
  }
  // A hold that has just run out may have been marked so; nothing else changes a held job's version.
  const seen = job.status === 'lapsed' ? job.version : version
  const booked = await markBooked(tx, audit, { jobId, version: seen, promisedAt: job.promisedAt })
  if (job.status === 'lapsed') await writeStepDraws(tx, [jobId], nowAt)
  return booked
}

export async function markBooked(
  tx: Tx,
  audit: Audit,
  { jobId, version, promisedAt }: HeldPlace & { promisedAt: number },
): Promise<{ version: number }> {
  const { count } = await tx.job.updateMany({
    where: { id: jobId, version },
    data: { status: 'booked', heldUntilAt: null, version: { increment: 1 } },
  })
  assertFresh(count, 'job', jobId)
  audit({ act: 'booked', entity: 'job', entityId: jobId, detail: { promisedAt } })
  return { version: version + 1 }
}

/** Lets a held place go. */
export function releasePlace(desk: Desk, place: HeldPlace): Promise<void> {
  return act(desk, (tx, audit) => releasePlaceIn(tx, audit, place))
}

/** The same as part of a larger act. */
export async function releasePlaceIn(tx: Tx, audit: Audit, { jobId, version }: HeldPlace): Promise<void> {
  const { count } = await tx.job.updateMany({
    where: { id: jobId, version, status: 'held' },
    data: { status: 'cancelled', heldUntilAt: null, version: { increment: 1 } },
  })
  if (count === 0 && (await tx.job.count({ where: { id: jobId, status: 'lapsed' } })) === 1) return
  assertFresh(count, 'job', jobId)
  await dropStepDraws(tx, [jobId])
  audit({ act: 'released', entity: 'job', entityId: jobId })
}
