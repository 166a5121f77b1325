/** What the demo lends: a loan car to cars that stay over night, a key box and a place under cover to one each. */
import type { Tx } from '../../store/store.ts'
import type { Happened } from './happen.ts'
import { demoLendables } from './shopData.ts'

/** A customer takes the loan car only where the own one stays over night. */
const overNightMin = 16 * 60

interface Stay {
  readonly jobId: string
  readonly from: number
  readonly to: number
}

/** Writes what is lent with cars that are here or booked and stay beyond a day from now, each thing to one at a time. */
export async function writeLoans(tx: Tx, happened: readonly Happened[], nowAt: number): Promise<void> {
  const stays = happened
    .flatMap(({ job }): Stay[] =>
      job.status === 'inShop' || job.status === 'booked'
        ? [{ jobId: job.id, from: job.arrivedAt ?? job.steps[0]?.startAt ?? 0, to: job.leavesAt }]
        : [],
    )
    .filter(({ to }) => to > nowAt + 1440)
    .sort((a, b) => a.from - b.from)
  const long = stays.filter(({ from, to }) => to - from >= overNightMin)
  const lent = {
    'loan car': inTurn(long, 2),
    'key box': stays.slice(1, 2),
    'covered place': long.slice(1, 2),
  }
  await tx.jobLoan.createMany({
    data: demoLendables.flatMap(({ id, kind }) =>
      lent[kind].map(({ jobId }) => ({ id: `${id}-${jobId}`, jobId, lendableId: id })),
    ),
  })
}

/** The first so many that follow one another. */
function inTurn(stays: readonly Stay[], most: number): Stay[] {
  const taken: Stay[] = []
  for (const stay of stays) if (taken.length < most && (taken.at(-1)?.to ?? 0) <= stay.from) taken.push(stay)
  return taken
}
