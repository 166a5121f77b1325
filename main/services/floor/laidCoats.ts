/** The running clocks of what is really laid, from the weather of the bays the cars stood in. */

import {
  type CureProfile,
  type Heating,
  type LaidCoat,
  laidCoat,
  type Reading,
  type UsualFrom,
  usualTemperature,
} from '../../domain/cure/index.ts'
import { type FloorStep, jobStays } from '../../domain/floor/index.ts'
import { type CuringLog, curingLog } from '../../store/readingRows.ts'
import type { Tx } from '../../store/store.ts'

interface CuringJob {
  readonly id: string
  readonly status: string
  readonly leavesAt: number
  readonly handoverAt: number
  readonly leftAt?: number | null
  readonly steps: readonly FloorStep[]
}

const weekMin = 7 * 1440

/** Puts to every coat that is laid its running clock. Jobs on which nothing is laid stay as they are. */
export async function withLaidCoats<J extends CuringJob>(
  tx: Tx,
  nowAt: number,
  jobs: readonly J[],
): Promise<J[]> {
  const curing = jobs.filter(job => coatSteps(job).length > 0)
  if (curing.length === 0) return [...jobs]
  const [profiles, heatings] = await Promise.all([
    profilesOf(tx, curing),
    tx.forcedCure.findMany({
      where: { jobId: { in: curing.map(job => job.id) }, voidedAt: null },
      orderBy: { fromAt: 'asc' },
    }),
  ])
  const bays = await baysSince(tx, nowAt, earliestNeeds(curing, nowAt))
  return jobs.map(job => {
    const until = job.leftAt ?? nowAt
    const steps = job.steps.map(step => {
      const profile = profiles.get(step.productId ?? '')
      const { actualEndAt } = step
      if (!profile || step.kind !== 'work' || actualEndAt === null) return step
      const heated = heatings.filter(each => each.jobId === job.id && each.toAt > actualEndAt)
      const laying = { fromAt: step.actualStartAt ?? actualEndAt, toAt: actualEndAt }
      return { ...step, laid: coatIn(job, laying, profile, bays, heated, until) }
    })
    return { ...job, steps }
  })
}

function coatSteps(job: CuringJob): FloorStep[] {
  return job.steps.filter(
    step => step.kind === 'work' && step.productId !== null && step.actualEndAt !== null,
  )
}

async function profilesOf(tx: Tx, jobs: readonly CuringJob[]): Promise<Map<string, CureProfile>> {
  const ids = [...new Set(jobs.flatMap(job => coatSteps(job).flatMap(step => step.productId ?? [])))]
  const rows = await tx.product.findMany({
    where: { id: { in: ids } },
    select: { id: true, cureProfile: true },
  })
  return new Map(
    rows.flatMap(({ id, cureProfile }) => (cureProfile ? [[id, cureProfile as unknown as CureProfile]] : [])),
  )
}

/** From when on each bay's log is needed: the first coat that cured in it, and a week for what is usual. */
function earliestNeeds(jobs: readonly CuringJob[], nowAt: number): Map<string, number> {
  const needs = new Map<string, number>()
  for (const job of jobs) {
    const laidFromAt = Math.min(
      ...coatSteps(job).flatMap(step => step.actualStartAt ?? step.actualEndAt ?? []),
    )
    for (const { bay } of staysSince(job, laidFromAt))
      needs.set(bay, Math.min(needs.get(bay) ?? nowAt - weekMin, laidFromAt))
  }
  return needs
}

interface BayWeather extends CuringLog {
  readonly usualC: number | null
  readonly usualFrom: UsualFrom
}

async function baysSince(
  tx: Tx,
  nowAt: number,
  needs: ReadonlyMap<string, number>,
): Promise<Map<string, BayWeather>> {
  const set = await tx.bayUsual.findMany({ where: { bayId: { in: [...needs.keys()] } } })
  const owners = new Map(set.map(({ bayId, celsius }) => [bayId, celsius]))
  const bays = await Promise.all(
    [...needs].map(async ([bayId, fromAt]): Promise<BayWeather> => {
      const log = await curingLog(tx, bayId, fromAt, nowAt)
      const own = owners.get(bayId)
      if (own !== undefined) return { ...log, usualC: own, usualFrom: 'set' }
      return { ...log, usualC: usualTemperature(log.readings, nowAt), usualFrom: 'last week' }
    }),
  )
  return new Map(bays.map(bay => [bay.bayId, bay]))
}

/** The bays the car stood in since then, in order; in the last one until it leaves, whenever that is. */
function staysSince(job: CuringJob, sinceAt: number): { bay: string; from: number; to: number }[] {
  const stays = jobStays(job)
  return stays
    .map((stay, i) => ({ ...stay, to: i === stays.length - 1 ? Number.POSITIVE_INFINITY : stay.to }))
    .filter(stay => stay.to > sinceAt)
}

function coatIn(
  job: CuringJob,
  laying: LaidCoat['laying'],
  profile: CureProfile,
  bays: ReadonlyMap<string, BayWeather>,
  heatings: readonly Heating[],
  until: number,
): LaidCoat {
  const stays = staysSince(job, laying.fromAt)
  const last = bays.get((stays.findLast(stay => stay.from <= until) ?? stays.at(-1))?.bay ?? '')
  const usualFrom = last?.usualC == null ? 'profile' : last.usualFrom
  const usualC = last?.usualC ?? profile.referenceC
  return laidCoat(
    profile,
    laying,
    { readings: readingsOf(stays, bays), usualC, usualFrom, nowAt: until },
    heatings,
  )
}

/** The logs of several bays as the car lived through them. */
function readingsOf(
  stays: readonly { bay: string; from: number; to: number }[],
  bays: ReadonlyMap<string, BayWeather>,
): readonly Reading[] {
  const [only, ...others] = stays
  if (only && others.length === 0) return bays.get(only.bay)?.readings ?? []
  return stays.flatMap(({ bay, from, to }, i) =>
    (bays.get(bay)?.readings ?? []).filter(({ at }) => (i === 0 || at >= from) && at < to),
  )
}
