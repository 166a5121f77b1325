import { isOver, statusAt } from '../../domain/job/index.ts'
import type { Desk } from '../desk/desk.ts'
import { plateWords, vehicleWords } from '../floor/jobRows.ts'
import { findCustomers } from '../records/customersFind.ts'

/** How many jobs a search answers with. */
const most = 20

/**
 * Jobs by number ("12", "job 12"), or by whatever finds their customer or vehicle: those that are not over first, then
 * the newest. Nothing for an empty text.
 */
export async function findJobsBy(desk: Desk, { text }: { text: string }) {
  const said = text.trim()
  if (said === '') return { jobs: [] }
  const number = /^(?:job\s*)?#?(\d{1,9})$/i.exec(said)?.[1]
  const { customers } = await findCustomers(desk, { text: said, archived: true })
  const rows = await desk.store.read.job.findMany({
    where: {
      OR: [
        ...(number === undefined ? [] : [{ number: Number(number) }]),
        { customerId: { in: customers.map(customer => customer.id) } },
      ],
    },
    select: {
      id: true,
      number: true,
      status: true,
      heldUntilAt: true,
      dropOffAt: true,
      handoverAt: true,
      customer: { select: { name: true } },
      vehicle: { select: { plate: true, colour: true, make: true, model: true, sizeClass: true } },
    },
    orderBy: { number: 'desc' },
  })
  const nowAt = desk.now()
  const jobs = rows.map(({ heldUntilAt, ...row }) => ({
    ...row,
    status: statusAt({ ...row, heldUntilAt }, nowAt),
  }))
  jobs.sort((a, b) => Number(isOver(a)) - Number(isOver(b)))
  return {
    jobs: jobs.slice(0, most).map(({ customer, vehicle, ...row }) => ({
      ...row,
      customerName: customer.name,
      plate: plateWords(vehicle.plate),
      vehicleWords: vehicleWords(vehicle),
    })),
  }
}
