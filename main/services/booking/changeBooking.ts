/**
 * A booking changed in one act: another place, other work, or both. Price, places, what it draws, what is ticked off and
 * what was promised follow, and the line of the history keeps how it stood before.
 */
import { gridDown } from '../../domain/calendar/index.ts'
import { assertFits, problemOf, stepRows, timesOf } from '../../domain/floor/index.ts'
import { statusAfter } from '../../domain/job/index.ts'
import { saleMinor } from '../../domain/money/index.ts'
import { assertFresh, type Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { lendWith } from '../floor/lent.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { placedJob, writePlaces } from '../floor/placed.ts'
import { chargesOn } from '../job/chargesOn.ts'
import { moneyRules } from '../prices/moneyRules.ts'
import { salePrice } from '../prices/salePrice.ts'
import { dropStepDraws, writeStepDraws } from '../shelf/stepDraws.ts'
import { assertNear, assertNotElsewhere } from './booking.ts'
import { type ChangedChain, changedChain } from './changedChain.ts'
import type { ChangeInput } from './inputs.ts'

/** Takes the place `plan` for the booking as it now is to be; the old one is free in the same act. */
export function changeBooking(desk: Desk, input: ChangeInput): Promise<{ version: number }> {
  const { id, version, plan } = input
  return act(desk, async (tx, audit, nowAt) => {
    assertNear(plan.handover, nowAt)
    const floor = await loadFloor(tx, nowAt, Math.max(plan.handover, nowAt) + 1)
    const chain = await changedChain(tx, floor, id, input)
    const { job, steps, products, leaving, work } = chain
    if (job.version !== version) assertFresh(0, 'job', id)
    const release = gridDown(floor, nowAt)
    assertFits(
      floor,
      problemOf(floor, { exceptJobId: id, job: { id, release, asked: release, steps } }),
      plan,
      steps.map(step => step.name),
    )
    const times = timesOf(steps, plan, products, leaving)
    const priceBefore = saleMinor(job.treatments, await chargesOn(tx, id), floor.shop.currency)
    await tx.jobLoan.deleteMany({ where: { jobId: id } })
    await assertNotElsewhere(tx, floor, { ...times, vehicleId: job.vehicleId, id })
    if (work.sizeClass !== job.vehicle.sizeClass) {
      await tx.vehicle.update({
        where: { id: job.vehicleId },
        data: { sizeClass: work.sizeClass, version: { increment: 1 } },
      })
      audit({
        act: 'changed',
        entity: 'vehicle',
        entityId: job.vehicleId,
        detail: { sizeClass: [job.vehicle.sizeClass, work.sizeClass] },
      })
    }
    if (chain.sold) await writeSold(tx, floor, { ...chain, sold: chain.sold }, input)
    else await writePlaces(tx, placedJob({ job, index: 0 }, plan).steps)
    await tx.job.update({
      where: { id },
      data: {
        ...times,
        status: statusAfter(job.status, 'rebook'),
        condition: work.condition,
        promisedAt: times.handoverAt,
        ...(chain.sold && { stretch: chain.sold.stretch }),
        version: { increment: 1 },
      },
    })
    await lendWith(tx, floor, { id, ...times }, chain.lends)
    await dropStepDraws(tx, [id])
    await writeStepDraws(tx, [id], nowAt)
    const names = chain.sold?.treatments.map(each => each.name)
    const after =
      names && (await tx.jobTreatment.findMany({ where: { jobId: id }, select: { priceMinor: true } }))
    audit({
      act: 'rebooked',
      entity: 'job',
      entityId: id,
      detail: {
        from: job.dropOffAt,
        to: times.dropOffAt,
        promisedFrom: job.promisedAt,
        promisedTo: times.handoverAt,
        ...(names &&
          after && {
            treatments: [job.treatments.map(each => each.name), names],
            priceFrom: priceBefore,
            priceTo: saleMinor(after, await chargesOn(tx, id), floor.shop.currency),
          }),
      },
    })
    return { version: version + 1 }
  })
}

/** Work charged once and packages follow from what is sold; what the desk added or took off stays. */
const followKinds = ['shared', 'package']

async function writeSold(
  tx: Tx,
  floor: Floor,
  { job, sold }: ChangedChain & { sold: NonNullable<ChangedChain['sold']> },
  { plan }: ChangeInput,
): Promise<void> {
  const jobId = job.id
  const price = salePrice(await moneyRules(tx), sold, {}, floor.shop.currency)
  await tx.jobStepCrew.deleteMany({ where: { step: { jobId } } })
  await dropStepDraws(tx, [jobId])
  await tx.jobStep.deleteMany({ where: { jobId } })
  for (const row of stepRows(sold.steps, plan)) await tx.jobStep.create({ data: { ...row, jobId } })
  await tx.jobTreatment.deleteMany({ where: { jobId } })
  await tx.jobTreatment.createMany({
    data: sold.treatments.map(({ id, ...each }, position) => ({
      ...each,
      jobId,
      priceMinor: price.treatments[position]!.priceMinor,
      treatmentId: id,
      position,
    })),
  })
  const ids = sold.treatments.map(each => each.id)
  await tx.jobCharge.deleteMany({
    where: { jobId, OR: [{ kind: { in: followKinds } }, { treatmentId: { not: null, notIn: ids } }] },
  })
  const kept = await tx.jobCharge.count({ where: { jobId } })
  await tx.jobCharge.createMany({
    data: price.charges.map((charge, i) => ({ ...charge, jobId, position: kept + i })),
  })
  const ticked = await tx.jobCheck.findMany({ where: { jobId, NOT: { doneAt: null } } })
  await tx.jobCheck.deleteMany({ where: { jobId, doneAt: null } })
  await tx.jobCheck.createMany({
    data: sold.checks
      .filter(check => !ticked.some(each => each.words === check.words && each.moment === check.moment))
      .map((check, i) => ({ ...check, jobId, position: ticked.length + i })),
  })
}
