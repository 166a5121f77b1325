/** What the shop lends with a booking: when it is free, and which of it a job gets. */

import { difference, intersection, minuteWords, type Span } from '../../domain/calendar/index.ts'
import type { Booked, Named } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'
import type { Windows } from '../../domain/schedule/index.ts'
import type { LentKind } from '../../domain/shop/index.ts'
import { listWords } from '../../domain/words.ts'
import type { Tx } from '../../store/store.ts'

const always: Span = { from: Number.NEGATIVE_INFINITY, to: Number.POSITIVE_INFINITY }

/** Jobs that hold what they borrow: here, to come, or held and not lapsed. */
export function stillLent(nowAt: number) {
  return { OR: [{ status: { in: ['booked', 'inShop'] } }, { status: 'held', heldUntilAt: { gt: nowAt } }] }
}

/** A job as it is stored, as far as something is lent with it. */
interface Borrower {
  readonly id: string
  readonly dropOffAt: number
  readonly arrivedAt: number | null
  readonly handoverAt: number
}
/** What of a job is read to know when it is here. */
export const borrower = { id: true, dropOffAt: true, arrivedAt: true, handoverAt: true } as const

/**
 * From when to when a job is here, as the floor projects it: a car that runs late keeps what it borrowed until it
 * really leaves. As stored where the floor does not reach so far.
 */
export function stayOf({ jobs }: Pick<Booked, 'jobs'>, job: Borrower): Span {
  const live = jobs.find(each => each.id === job.id)
  return { from: job.arrivedAt ?? job.dropOffAt, to: live?.leavesAt ?? job.handoverAt }
}

/** The things in use of these kinds, each with the times it is lent, but for those of one job. */
async function thingsOf(tx: Tx, floor: Booked, kinds: readonly LentKind[], exceptJobId = '') {
  const rows = await tx.lendable.findMany({
    where: { kind: { in: [...kinds] }, archivedAt: null },
    orderBy: [{ position: 'asc' }, { id: 'asc' }],
    include: {
      loans: {
        where: { NOT: { jobId: exceptJobId }, job: stillLent(floor.nowAt) },
        select: { job: { select: borrower } },
      },
    },
  })
  return rows.map(({ id, name, kind, loans }) => ({
    id,
    name,
    kind,
    lent: loans.map(({ job }) => stayOf(floor, job)),
  }))
}

/** The times in which one of each kind is free all through; null where nothing is to be lent. One job's own loans are no hindrance. */
export async function lentWindows(
  tx: Tx,
  floor: Booked,
  kinds: readonly LentKind[],
  exceptJobId = '',
): Promise<Windows> {
  if (kinds.length === 0) return null
  const things = await thingsOf(tx, floor, kinds, exceptJobId)
  let windows: Span[] = [always]
  for (const kind of new Set(kinds)) {
    const free = things
      .filter(thing => thing.kind === kind)
      .flatMap(thing => difference([always], spans(thing.lent)))
    windows = widest(windows.flatMap(window => free.flatMap(span => intersection([window], [span]))))
  }
  return windows.filter(({ to }) => to > floor.nowAt)
}

function spans(lent: readonly Span[]): Span[] {
  return [...lent].sort((a, b) => a.from - b.from)
}

/** Without those that lie in another. */
function widest(windows: readonly Span[]): Span[] {
  return windows.filter(
    (one, i) =>
      !windows.some(
        (other, j) =>
          i !== j &&
          other.from <= one.from &&
          one.to <= other.to &&
          (other.from < one.from || one.to < other.to || j < i),
      ),
  )
}

/** What the caller is told of the things asked for. */
export function lentNotes(kinds: readonly LentKind[], windows: Windows): string[] {
  if (windows === null) return []
  const said = listWords(kinds.map(kind => say(kind)))
  return [
    windows.length === 0
      ? say('The shop has no {kinds} in use; add one under Settings, or leave it out.', { kinds: said })
      : say('With {kinds} from drop-off to handover: only days on which one is free are offered.', {
          kinds: said,
        }),
  ]
}

/**
 * Lends one thing of each kind with a job, the first that is free all the while.
 * @throws Refusal `lent` where there is none.
 */
export async function lendWith(
  tx: Tx,
  floor: Booked & Named,
  job: { readonly id: string; readonly dropOffAt: number; readonly handoverAt: number },
  kinds: readonly LentKind[],
): Promise<string[]> {
  if (kinds.length === 0) return []
  const things = await thingsOf(tx, floor, kinds, job.id)
  const when = (at: number) => minuteWords(at, floor.zone, floor.nowAt)
  const names: string[] = []
  for (const kind of new Set(kinds)) {
    const free = things.find(
      thing =>
        thing.kind === kind &&
        !thing.lent.some(({ from, to }) => from < job.handoverAt && job.dropOffAt < to),
    )
    if (!free)
      refuse(
        'lent',
        { lends: kind },
        say('No {kind} is free from {dropOffAt} to {handoverAt}: leave it out, or choose another time.', {
          kind: say(kind),
          dropOffAt: when(job.dropOffAt),
          handoverAt: when(job.handoverAt),
        }),
      )
    await tx.jobLoan.create({ data: { jobId: job.id, lendableId: free.id } })
    names.push(free.name)
  }
  return names
}

/** What else the things of a job are lent with. */
export async function otherLoans(tx: Tx, floor: Booked, jobId: string) {
  if (jobId === '') return []
  const loans = await tx.jobLoan.findMany({ where: { jobId }, include: { lendable: true } })
  const others = await tx.jobLoan.findMany({
    where: {
      lendableId: { in: loans.map(loan => loan.lendableId) },
      NOT: { jobId },
      job: stillLent(floor.nowAt),
    },
    select: { lendable: { select: { name: true } }, job: { select: { number: true, ...borrower } } },
  })
  return others.map(({ lendable, job }) => {
    const { from: dropOffAt, to: handoverAt } = stayOf(floor, job)
    return { jobId: job.id, number: job.number, plate: '', lent: lendable.name, dropOffAt, handoverAt }
  })
}
