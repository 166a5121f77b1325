/** The life of a job, from the held place to the handover: what may be done with it when, and what it is then. */

/**
 * `lapsed`: a held place whose time ran out. `cancelled`: called off, or a held place let go. `noShow`: booked, and nobody
 * came.
 */
export type JobStatus = 'held' | 'booked' | 'inShop' | 'handedOver' | 'cancelled' | 'noShow' | 'lapsed'

/**
 * `work`: start and finish steps, record what heats. `takeBack`: undo the last time recorded, at last the arrival.
 * `rebook`: another day, or other work. `noShow`: nobody came. `comesLater`: they will, at another time. `fetchLater`: it is
 * fetched at another time than promised.
 */
export type JobAct =
  | 'confirm'
  | 'letGo'
  | 'arrive'
  | 'work'
  | 'takeBack'
  | 'handOver'
  | 'promise'
  | 'cancel'
  | 'move'
  | 'rebook'
  | 'noShow'
  | 'comesLater'
  | 'fetchLater'

/** The one table of what may follow what: a status, an act, and the status the job has after it. */
const follows: Readonly<Record<JobStatus, Partial<Record<JobAct, JobStatus>>>> = {
  held: { confirm: 'booked', letGo: 'cancelled', cancel: 'cancelled', move: 'held' },
  lapsed: { confirm: 'booked' },
  booked: {
    arrive: 'inShop',
    promise: 'booked',
    cancel: 'cancelled',
    move: 'booked',
    rebook: 'booked',
    noShow: 'noShow',
    comesLater: 'booked',
  },
  inShop: {
    work: 'inShop',
    takeBack: 'inShop',
    handOver: 'handedOver',
    promise: 'inShop',
    move: 'inShop',
    rebook: 'inShop',
    fetchLater: 'inShop',
  },
  handedOver: {},
  cancelled: { rebook: 'booked' },
  noShow: { rebook: 'booked' },
}

/** Whether an act is open to a job of this status; what else it needs (a time, a reason) is for the act to say. */
export function can({ status }: { readonly status: JobStatus }, act: JobAct): boolean {
  return follows[status][act] !== undefined
}

/** It holds no place any more; all that can happen to it is that a place is found for it again. */
export function isOver({ status }: { readonly status: JobStatus }): boolean {
  return !can({ status }, 'move')
}

/** The car never came: nothing of the job stands on the board. */
export function isCalledOff({ status }: { readonly status: JobStatus }): boolean {
  return status === 'cancelled' || status === 'noShow' || status === 'lapsed'
}

/**
 * A stored status as it stands at the minute `nowAt`: a held place is lapsed from the minute its time runs out, also
 * before anybody has written so.
 * @throws Error for a word that is no status: the database then holds what no version has written.
 */
export function statusAt(
  { status, heldUntilAt }: { readonly status: string; readonly heldUntilAt: number | null },
  nowAt: number,
): JobStatus {
  if (!isStatus(status)) throw new Error(`"${status}" is no status of a job`)
  return status === 'held' && (heldUntilAt ?? 0) <= nowAt ? 'lapsed' : status
}

/** The status after an act that is open to the job; as it is where it is not. */
export function statusAfter(status: JobStatus, act: JobAct): JobStatus {
  return follows[status][act] ?? status
}

function isStatus(word: string): word is JobStatus {
  return Object.hasOwn(follows, word)
}
