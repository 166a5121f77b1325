import type { Desk } from '../desk/desk.ts'
import { shopOf } from '../desk/shopView.ts'
import { nameOfCar } from '../floor/jobRows.ts'

/** How long a hold that ran out is still shown, in minutes: the caller may ring back. */
const shownAfterMin = 60

/** The places held for callers, and those whose hold ran out within the last hour: the one that runs out first leads. */
export async function heldPlaces(desk: Desk) {
  const tx = desk.store.read
  const nowAt = desk.now()
  const { zone } = await shopOf(tx)
  const jobs = await tx.job.findMany({
    where: { status: { in: ['held', 'lapsed'] }, heldUntilAt: { gt: nowAt - shownAfterMin } },
    orderBy: [{ heldUntilAt: 'asc' }, { id: 'asc' }],
    take: 50,
    include: { customer: { select: { name: true } }, vehicle: true },
  })
  return {
    nowAt,
    zone,
    places: jobs.map(({ id, number, version, vehicle, customer, dropOffAt, promisedAt, heldUntilAt }) => ({
      jobId: id,
      jobNumber: number,
      version,
      carName: nameOfCar(vehicle),
      customerName: customer.name,
      dropOffAt,
      promisedAt,
      heldUntilAt: heldUntilAt ?? 0,
      over: (heldUntilAt ?? 0) <= nowAt,
    })),
  }
}
