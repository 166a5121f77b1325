/** What is booked and not yet over, as a change to the shop's setting has to look at it. */

import { momentWords, openMinutesBetween, type Span } from '../../domain/calendar/index.ts'
import { say } from '../../domain/language/index.ts'
import type { Tx } from '../../store/store.ts'
import { shopOf } from '../desk/shopView.ts'

export type ComingJob = Awaited<ReturnType<typeof comingJobs>>[number]
type ComingStep = ComingJob['steps'][number]

type JobWhere = NonNullable<NonNullable<Parameters<Tx['job']['findMany']>[0]>['where']>

/** The jobs (of those `where` picks) that still hold a bay or will: booked, in the shop, or held and not lapsed. */
export async function comingJobs(tx: Tx, nowAt: number, where: JobWhere = {}) {
  const jobs = await tx.job.findMany({
    where: {
      ...where,
      OR: [{ status: { in: ['booked', 'inShop'] } }, { status: 'held', heldUntilAt: { gt: nowAt } }],
    },
    orderBy: { dropOffAt: 'asc' },
    include: {
      vehicle: { select: { plate: true } },
      // No order here: sorted rows of many parents cannot be asked for in parts, and SQLite takes a thousand at most.
      steps: { include: { crew: true } },
    },
  })
  for (const job of jobs) job.steps.sort((a, b) => a.position - b.position)
  return jobs
}

/** The unbroken times a job's car holds one bay each, from now on, in order. */
export function comingStays(job: ComingJob, nowAt: number): { bayId: string; from: number; to: number }[] {
  const entries: { bayId: string; at: number }[] = []
  const enter = (bayId: string, at: number) => {
    if (entries.at(-1)?.bayId !== bayId) entries.push({ bayId, at })
  }
  for (const step of job.steps) {
    enter(step.bayId, step.actualStartAt ?? step.startAt)
    if (step.movedToBayId !== null && step.movedAt !== null) enter(step.movedToBayId, step.movedAt)
  }
  return entries
    .map(({ bayId, at }, i) => ({ bayId, from: at, to: entries[i + 1]?.at ?? job.handoverAt }))
    .filter(stay => stay.to > nowAt)
}

/** "Job 12 (KFR 204)". */
export function jobWords(job: { number: number; vehicle: { plate: string } }): string {
  return say('Job {number} ({plate})', { number: job.number, plate: job.vehicle.plate })
}

/** A line for each job, saying when it is handed over. */
export async function handoverLines(tx: Tx, jobs: readonly ComingJob[]): Promise<string[]> {
  const { zone } = await shopOf(tx)
  return jobs.map(job =>
    say('{job}: handover {handoverAt}', {
      job: jobWords(job),
      handoverAt: momentWords(job.handoverAt, zone),
    }),
  )
}

/** One thing of a booked job that a change concerns, in words. */
export interface Touched {
  job: string
  what: string
}

/** The planned steps still to be begun that `concerns` picks. */
export function touchedSteps(
  jobs: readonly ComingJob[],
  zone: string,
  concerns: (step: ComingStep) => boolean,
): Touched[] {
  return jobs.flatMap(job =>
    job.steps
      .filter(step => step.actualStartAt === null && concerns(step))
      .map(step => ({ job: jobWords(job), what: `${step.name}, ${momentWords(step.startAt, zone)}` })),
  )
}

/** What is booked after now and does not lie in the opening hours `open`. */
export function touchedOutside(
  jobs: readonly ComingJob[],
  open: readonly Span[],
  zone: string,
  nowAt: number,
): Touched[] {
  const doorOpen = (at: number) => open.some(span => span.from <= at && at <= span.to)
  return jobs.flatMap(job => {
    const times: [number, string][] = []
    const door = (at: number, what: string) => {
      if (at > nowAt && !doorOpen(at)) times.push([at, what])
    }
    if (job.arrivedAt === null) door(job.dropOffAt, say('drop-off'))
    for (const step of job.steps) {
      const ahead = step.kind === 'work' && step.actualStartAt === null && step.startAt > nowAt
      if (ahead && openMinutesBetween(open, step.startAt, step.endAt) < step.minutes)
        times.push([step.startAt, step.name])
    }
    for (const stay of comingStays(job, nowAt).slice(1)) door(stay.from, say('change of bay'))
    door(job.handoverAt, say('handover'))
    return times
      .sort(([a], [b]) => a - b)
      .map(([at, what]) => ({ job: jobWords(job), what: `${what}, ${momentWords(at, zone)}` }))
  })
}

/** What a change has added: what was out of place before is not news. */
export function newlyTouched(before: readonly Touched[], after: readonly Touched[]): Touched[] {
  const key = ({ job, what }: Touched) => `${job}\n${what}`
  const known = new Set(before.map(key))
  return after.filter(touched => !known.has(key(touched)))
}

/** A line a job: the first of its times, and how many more. */
export function touchedLines(touched: readonly Touched[]): string[] {
  const byJob = Map.groupBy(touched, ({ job }) => job)
  return [...byJob].map(([job, [first, ...more]]) => {
    const rest =
      more.length === 0
        ? ''
        : say('{more, plural, one {, and one more time} other {, and {more} more times}}', {
            more: more.length,
          })
    return `${job}: ${first!.what}${rest}`
  })
}
