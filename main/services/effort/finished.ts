/** The shop's own finished visits, as what is learned from them. */
import { openMinutesBetween, openSpans } from '../../domain/calendar/index.ts'
import { type FinishedVisit, mostLearned } from '../../domain/effort/index.ts'
import { isLaying } from '../../domain/treatment/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { calendarOf } from '../desk/shopView.ts'

export interface Finished extends FinishedVisit {
  readonly jobNumber: number
  readonly promisedAt: number
  /** When its last step was over, which is when the promise was kept or not; an owner may come later. */
  readonly readyAt: number
}

const weights: Readonly<Record<string, number>> = { light: 1, moderate: 2, severe: 4 }
/** Marks that together make a badly worn car. */
const manyMarks = 12

/** What an intake marked, as the effort is told: 0 nothing, 1 and more badly worn. */
function severityOf(draft: unknown): number {
  const { defects = [] } = fromJson<{ defects?: { severity: string }[] } | null>(draft) ?? {}
  return defects.reduce((sum, { severity }) => sum + (weights[severity] ?? 0), 0) / manyMarks
}

/** The last visits handed over whose hands-on steps were all recorded, oldest first. Laying is no part of their minutes. */
export async function finishedVisits(tx: Tx): Promise<Finished[]> {
  const jobs = await tx.job.findMany({
    where: { status: 'handedOver', leftAt: { not: null } },
    orderBy: { leftAt: 'desc' },
    take: mostLearned,
    select: {
      number: true,
      condition: true,
      stretch: true,
      promisedAt: true,
      vehicle: { select: { sizeClass: true } },
      treatments: { select: { share: true } },
      intake: { select: { draft: true } },
      steps: {
        orderBy: { position: 'asc' },
        select: {
          kind: true,
          stage: true,
          minutes: true,
          endAt: true,
          actualStartAt: true,
          actualEndAt: true,
          crew: true,
        },
      },
    },
  })
  const starts = jobs.flatMap(({ steps }) => steps.flatMap(({ actualStartAt }) => actualStartAt ?? []))
  if (starts.length === 0) return []
  const ends = jobs.flatMap(({ steps }) => steps.flatMap(({ actualEndAt }) => actualEndAt ?? []))
  const open = openSpans(await calendarOf(tx), Math.min(...starts), Math.max(...ends, ...starts) + 1440)
  return jobs.reverse().flatMap(({ steps, vehicle, treatments, intake, ...job }): Finished[] => {
    const work = steps.filter(step => step.kind === 'work' && !isLaying(step))
    const times = work.map(step => realMinutes(step, open))
    const plannedMin = work.reduce((sum, { minutes }) => sum + minutes, 0) / job.stretch
    const realMin = times.reduce((sum: number, each) => sum + (each ?? 0), 0)
    if (times.includes(null) || plannedMin <= 0 || realMin <= 0) return []
    const last = steps.at(-1)!
    return [
      {
        jobNumber: job.number,
        promisedAt: job.promisedAt,
        readyAt: last.actualEndAt ?? last.endAt,
        sizeClass: vehicle.sizeClass,
        condition: job.condition,
        ...workOf(work, treatments),
        severity: severityOf(intake?.draft ?? null),
        who: mostly(work),
        plannedMin,
        realMin,
      },
    ]
  })
}

/** How much of the paint, and how much of it correction: what of a chain the effort is told. */
export function workOf(
  steps: readonly { kind?: string; stage: string; minutes: number }[],
  treatments: readonly { share: number }[],
): { share: number; correction: number } {
  const work = steps.filter(step => step.kind !== 'hold' && !isLaying(step))
  const all = work.reduce((sum, { minutes }) => sum + minutes, 0)
  const corrected = work
    .filter(({ stage }) => stage === 'correct')
    .reduce((sum, { minutes }) => sum + minutes, 0)
  // Of several treatments the one over most of the paint.
  const share = Math.max(...treatments.map(each => each.share))
  return { share: share > 0 && share <= 1 ? share : 1, correction: all > 0 ? corrected / all : 0 }
}

interface Step {
  actualStartAt: number | null
  actualEndAt: number | null
  minutes: number
  crew: { crewId: string; helps: boolean }[]
}

/** Opening minutes from its start to its end; work done outside of them counts as the clock went. Null: not recorded. */
function realMinutes(
  { actualStartAt, actualEndAt }: Step,
  open: ReturnType<typeof openSpans>,
): number | null {
  if (actualStartAt === null || actualEndAt === null) return null
  return openMinutesBetween(open, actualStartAt, actualEndAt) || actualEndAt - actualStartAt
}

/** Who was there for most of the minutes, without those who only helped. */
function mostly(work: readonly Step[]): string | null {
  const minutes = new Map<string, number>()
  for (const step of work)
    for (const { crewId, helps } of step.crew)
      if (!helps) minutes.set(crewId, (minutes.get(crewId) ?? 0) + step.minutes)
  return [...minutes].sort((a, b) => b[1] - a[1])[0]?.[0] ?? null
}
