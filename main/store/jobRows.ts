import type { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

const withAll = {
  customer: true,
  vehicle: true,
  treatments: { orderBy: { position: 'asc' } },
  steps: { orderBy: { position: 'asc' }, include: { crew: { select: { crewId: true } } } },
} satisfies Prisma.JobInclude

export type JobWhere = Prisma.JobWhereInput
export type FoundJob = Prisma.JobGetPayload<{ include: typeof withAll }>

/** The jobs that match, soonest first, with their customer, vehicle, treatments, steps and people. */
export function findJobs(tx: Tx, where: JobWhere): Promise<FoundJob[]> {
  return tx.job.findMany({ where, include: withAll, orderBy: [{ dropOffAt: 'asc' }, { number: 'asc' }] })
}
