/** What the shop has learned of its own hands-on times, how its promises held, and by which share it promises. */
import { effortFactor, learnEffort } from '../../domain/effort/index.ts'
import { quantile } from '../../domain/measure/index.ts'
import { wilson } from '../../domain/upkeep/index.ts'
import { act, type Desk } from '../desk/desk.ts'
import { saveSingle } from '../desk/keep.ts'
import { finishedVisits } from './finished.ts'
import type { EffortInput } from './inputs.ts'

export type EffortView = Awaited<ReturnType<typeof getEffort>>

/** As many as a screen shows, and as many as say how promises hold now. */
const shown = 12
const judged = 100

export async function getEffort(desk: Desk) {
  const { read } = desk.store
  const [settings, visits, crew] = await Promise.all([
    read.effortSettings.findUnique({ where: { id: 1 } }),
    finishedVisits(read),
    read.crewMember.findMany({ select: { id: true, name: true } }),
  ])
  const effort = learnEffort(visits)
  const usual = { sizeClass: 'medium', condition: 'good', share: 1, correction: 0.5, severity: 0 }
  const percent = settings?.promisePercent ?? null
  const last = visits.slice(-judged)
  const kept = last.filter(({ readyAt, promisedAt }) => readyAt <= promisedAt).length
  return {
    promisePercent: percent,
    version: settings?.version ?? 0,
    visits: visits.length,
    /** Of a medium car in good order, what written minutes are multiplied with. */
    usual: {
      median: effortFactor(effort, { ...usual, who: null }, 0.5),
      safe: effortFactor(effort, { ...usual, who: null }, (percent ?? 80) / 100),
    },
    people: [...effort.people].flatMap(([who, count]) => {
      const name = crew.find(({ id }) => id === who)?.name
      return name === undefined
        ? []
        : [{ id: who, name, count, median: effortFactor(effort, { ...usual, who }, 0.5) }]
    }),
    promises: {
      of: last.length,
      kept,
      ...wilson(kept, last.length),
      /** So late nine of ten of them were at most; 0: by their promise. */
      lateMin: last.length === 0 ? 0 : Math.round(quantile(last.map(lateOf), 0.9)),
    },
    recent: visits
      .slice(-shown)
      .reverse()
      .map(({ jobNumber, plannedMin, realMin, promisedAt, readyAt }) => ({
        jobNumber,
        plannedMin: Math.round(plannedMin),
        realMin,
        lateMin: lateOf({ readyAt, promisedAt }),
      })),
  }
}

const lateOf = ({ readyAt, promisedAt }: { readyAt: number; promisedAt: number }) =>
  Math.max(0, readyAt - promisedAt)

/** Sets by which share promises are reckoned from now on; what is booked stays as it is. */
export function saveEffort(
  desk: Desk,
  { promisePercent, version }: EffortInput,
): Promise<{ version: number }> {
  return act(desk, async (tx, audit) => {
    const kept = { table: tx.effortSettings, entity: 'hands-on times' }
    const { version: now } = await saveSingle(audit, kept, { key: { id: 1 }, version }, { promisePercent })
    return { version: now }
  })
}
