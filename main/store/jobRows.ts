import type { Prisma } from './generated/client.ts'
import type { Tx } from './store.ts'

// Nothing here is asked for in order: sorted rows of many parents cannot be read in parts, and SQLite takes only about a
// thousand parents at a time.
const withAll = {
  customer: true,
  vehicle: true,
  treatments: true,
  loans: { include: { lendable: true } },
  steps: { include: { crew: { select: { crewId: true, helps: true } } } },
} satisfies Prisma.JobInclude

export type JobWhere = Prisma.JobWhereInput
export type FoundJob = Prisma.JobGetPayload<{ include: typeof withAll }>

/** A step's people as the floor keeps them. */
export function peopleIn(crew: readonly { crewId: string; helps: boolean }[]) {
  return {
    crewIds: crew.map(each => each.crewId),
    helperIds: crew.filter(each => each.helps).map(each => each.crewId),
  }
}

/** The jobs that match, soonest first, with their customer, vehicle, treatments, steps and people. */
export async function findJobs(tx: Tx, where: JobWhere): Promise<FoundJob[]> {
  const jobs = await tx.job.findMany({
    where,
    include: withAll,
    orderBy: [{ dropOffAt: 'asc' }, { number: 'asc' }],
  })
  for (const job of jobs) {
    job.treatments.sort((a, b) => a.position - b.position)
    job.steps.sort((a, b) => a.position - b.position)
  }
  return jobs
}
