import { can, type JobAct, type JobStatus } from '../../domain/job/index.ts'
import { type FieldAtFault, refuse } from '../../domain/refusal.ts'

/** A job as far as what may be done with it goes. */
export interface JobState {
  readonly id: string
  readonly number: number
  readonly status: JobStatus
}

type Words = (number: number, status: JobStatus) => string

/** What is said where the table of `can` has no such act for the job. */
const refusals: Readonly<Record<JobAct, { code: string; words: Words }>> = {
  confirm: {
    code: 'not-held',
    words: (number, status) =>
      status === 'cancelled'
        ? 'This place was let go; ask for new offers.'
        : `Job ${number} is booked already.`,
  },
  letGo: { code: 'not-held', words: number => `Job ${number} is no place held; cancel it instead.` },
  arrive: {
    code: 'not-booked',
    words: (number, status) =>
      status === 'held'
        ? `Job ${number} is only held: confirm it first.`
        : `Job ${number} is not waiting for its car.`,
  },
  work: {
    code: 'not-here',
    words: (number, status) =>
      status === 'booked'
        ? `The car of job ${number} is not here yet: record its arrival first.`
        : `Job ${number} is not in the shop.`,
  },
  takeBack: {
    code: 'not-here',
    words: number => `Job ${number} is not in the shop; nothing can be taken back.`,
  },
  handOver: {
    code: 'not-here',
    words: number => `Job ${number} is not in the shop, so it cannot be handed over.`,
  },
  promise: { code: 'no-promise', words: number => `Job ${number} has no promise to change.` },
  cancel: {
    code: 'not-booked',
    words: (number, status) =>
      status === 'inShop'
        ? `The car of job ${number} is here: hand it over, with the reason.`
        : `Job ${number} is over; there is nothing to cancel.`,
  },
  move: { code: 'over', words: number => `Job ${number} is over; it stays where it was.` },
}

/**
 * Refuses an act that the life of a job has no place for now; `at` names the field that brought the job.
 * @throws Refusal with the act's own code and words.
 */
export function assertCan(job: JobState, act: JobAct, at: FieldAtFault = { id: job.id }): void {
  const { code, words } = refusals[act]
  if (!can(job, act)) refuse(code, at, words(job.number, job.status))
}
