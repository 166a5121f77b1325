import { hasMovedSince } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
import { bookingRules, type SendQuestion } from '../../domain/upkeep/index.ts'
import type { JobWords } from '../../store/rows.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'
import { jobOnFloor } from '../job/jobOnFloor.ts'
import { maySay } from '../job/toldCustomer.ts'
import { addressKey, reachOf } from '../upkeep/reach.ts'
import { sendRules, upkeepRules } from '../upkeep/settings.ts'
import { outboxOfWords, saveWords } from '../upkeep/wordsRows.ts'
import { letterOf } from './letterOf.ts'
import { addressMoved, nextMail } from './nextMail.ts'
import type { Queue } from './queue.ts'

/** Words to customers about their bookings, as the outbox sends them. */
export const wordsQueue: Queue<JobWords> = {
  sending: tx => tx.jobWords.findMany({ where: { state: 'sending' } }),
  approved: (tx, nowAt) => tx.jobWords.findMany(nextMail(nowAt)),
  row: (tx, id) => tx.jobWords.findUniqueOrThrow({ where: { id } }),
  outboxOf: outboxOfWords,
  save: saveWords,
  async voidWords(tx, { jobId, kind, customerId, address, ...row }, nowAt) {
    const moved = await addressMoved(tx, { customerId, address })
    if (moved !== null) return moved
    const { job } = await jobOnFloor(tx, nowAt, jobId)
    // A car that has changed hands, or is not booked any more, is nobody's news.
    if (!maySay(job, kind) || job.customerId !== customerId) return say('That no longer applies to this job.')
    const says = {
      dropOffAt: row.saysDropOffAt,
      promisedAt: row.saysPromisedAt,
      readyAt: row.saysReadyAt,
    }
    return hasMovedSince(says, job)
      ? say('The times have moved since it was written: read the new draft, then send that.')
      : null
  },
  question: wordsQuestion,
  letter: (desk, row, sender) => letterOf(desk, { ...row, slots: [], vehicleId: '' }, sender),
  withdrawn: async () => {},
  audited: row => ({ entity: 'job', entityId: row.jobId }),
}

/** The question whether words about a booking may go out now; whether they still hold is asked before it. */
export async function wordsQuestion(tx: Tx, row: JobWords, nowAt: number): Promise<SendQuestion> {
  const { zone } = await shopOf(tx)
  const reach = (await reachOf(tx, [row.customerId])).get(row.customerId)
  const bounced = await tx.bounce.findMany({ where: { address: addressKey(row.address), voidedAt: null } })
  return {
    message: outboxOfWords(row),
    consents: reach?.consents ?? [],
    soldAt: null,
    visitOpen: true,
    sends: [],
    bounced: bounced.map(each => each.address),
    rules: bookingRules(await sendRules(tx, await upkeepRules(tx))),
    ownerZone: reach?.owner.zone ?? zone,
    shopZone: zone,
    nowAt,
  }
}
