import { can, type JobAct, type JobStatus } from '../../domain/job/index.ts'
import { say } from '../../domain/language/index.ts'
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
        ? say('This hold was released; ask for new offers.')
        : say('Job {number} is booked already.', { number }),
  },
  letGo: {
    code: 'not-held',
    words: number => say('Job {number} is no place held; cancel it instead.', { number }),
  },
  arrive: {
    code: 'not-booked',
    words: (number, status) =>
      status === 'held'
        ? say('Job {number} is only held: confirm it first.', { number })
        : say('Job {number} is not waiting for its car.', { number }),
  },
  work: {
    code: 'not-here',
    words: (number, status) =>
      status === 'booked'
        ? say('The car of job {number} is not here yet: record its arrival first.', { number })
        : say('Job {number} is not in the shop.', { number }),
  },
  takeBack: {
    code: 'not-here',
    words: number => say('Job {number} is not in the shop; nothing can be taken back.', { number }),
  },
  handOver: {
    code: 'not-here',
    words: number => say('Job {number} is not in the shop, so it cannot be handed over.', { number }),
  },
  promise: { code: 'no-promise', words: number => say('Job {number} has no promise to change.', { number }) },
  cancel: {
    code: 'not-booked',
    words: (number, status) =>
      status === 'inShop'
        ? say('The car of job {number} is here: hand it over, with the reason.', { number })
        : say('Job {number} is over; there is nothing to cancel.', { number }),
  },
  rebook: {
    code: 'over',
    words: number =>
      say(
        'Job {number} cannot be changed: confirm a held place first; what was handed over stays as it was.',
        {
          number,
        },
      ),
  },
  noShow: {
    code: 'not-booked',
    words: number => say('Job {number} is not waiting for its car.', { number }),
  },
  comesLater: {
    code: 'not-booked',
    words: number => say('Job {number} is not waiting for its car.', { number }),
  },
  fetchLater: {
    code: 'not-here',
    words: number => say('Job {number} is not in the shop; there is nothing to fetch.', { number }),
  },
  move: { code: 'over', words: number => say('Job {number} is over; it stays where it was.', { number }) },
}

/**
 * Refuses an act that the life of a job has no place for now; `at` names the field that brought the job.
 * @throws Refusal with the act's own code and words.
 */
export function assertCan(job: JobState, act: JobAct, at: FieldAtFault = { id: job.id }): void {
  const { code, words } = refusals[act]
  if (!can(job, act)) refuse(code, at, words(job.number, job.status))
}
