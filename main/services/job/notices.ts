/** What the desk is told of held cars as it falls due, once, whatever slept or was shut meanwhile. */

import { minuteWords } from '../../domain/calendar/index.ts'
import {
  type CureProfile,
  clockMilestones,
  type LaidCoat,
  type Leaving,
  leavingAge,
  type MilestoneName,
  type NoticeKind,
  noticesSince,
  ruleOf,
} from '../../domain/cure/index.ts'
import { type FloorStep, leavingOf } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import type { UnitSystem } from '../../domain/measure/index.ts'
import type { Tx } from '../../store/store.ts'
import type { Desk } from '../desk/desk.ts'
import { type JobRow, jobRows, plateWords } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'

export interface NoticeView {
  jobId: string
  kind: NoticeKind
  at: number
  title: string
  /** What is due, by which rule; where it is told late, that too. */
  words: string
}

interface Due extends NoticeView {
  coatEndAt: number
  moment: string
}

const reachMin = 14 * 1440

/**
 * The notices that fell due since the desk was last told, each answered once and marked as told in the same
 * transaction: two windows, a restart or a night asleep change nothing.
 */
export function takeNotices(desk: Desk): Promise<NoticeView[]> {
  const nowAt = desk.now()
  return desk.store.transact({ who: desk.who, at: nowAt }, async tx => {
    const due = await tellDue(tx, nowAt)
    return due.map(({ coatEndAt: _, moment: __, ...notice }) => notice).sort((a, b) => a.at - b.at)
  })
}

/** Marks what is due as told, and gives it. */
export async function tellDue(tx: Tx, nowAt: number): Promise<Due[]> {
  const due = await dueNotices(tx, nowAt)
  if (due.length > 0)
    await tx.noticeSeen.createMany({
      data: due.map(({ jobId, coatEndAt, moment }) => ({ jobId, coatEndAt, moment, toldAt: nowAt })),
    })
  return due
}

/** What is due and not told. A minute that has brought nothing costs reads only. */
async function dueNotices(tx: Tx, nowAt: number): Promise<Due[]> {
  if ((await tx.job.count({ where: { status: 'inShop' } })) === 0) return []
  const floor = await loadFloor(tx, nowAt, nowAt + reachMin)
  const jobs = await jobRows(tx, floor, { status: 'inShop' })
  const seen = await tx.noticeSeen.findMany({ where: { jobId: { in: jobs.map(job => job.id) } } })
  const told = new Set(seen.map(({ jobId, coatEndAt, moment }) => `${jobId} ${coatEndAt} ${moment}`))
  const when = (at: number) => minuteWords(at, floor.zone, nowAt)
  return jobs
    .flatMap(job => noticesOf(job, nowAt, when, floor.bayNames, floor.shop.units))
    .filter(({ jobId, coatEndAt, moment }) => !told.has(`${jobId} ${coatEndAt} ${moment}`))
}

/** A warning that a window closes and the word that it has closed are one moment: either is told, not both. */
const moments: Readonly<Record<NoticeKind, string>> = {
  'topper opens': 'opens',
  'topper closes soon': 'closes',
  'topper closed': 'closes',
  release: 'release',
}

function noticesOf(
  job: JobRow,
  nowAt: number,
  when: (at: number) => string,
  bayNames: ReadonlyMap<string, string>,
  units: UnitSystem,
): Due[] {
  const laid = job.steps.flatMap(step => (step.laid ? [{ ...step, laid: step.laid }] : []))
  const last = laid.at(-1)
  // The car is let go of when nothing is to be laid any more.
  const ahead = job.steps.filter(step => isCoat(step) && step.actualEndAt === null)
  return laid.flatMap(step => {
    const { clock, profile } = step.laid
    const over = ahead[0]
    const at = clockMilestones(step.laid, over ? over.endAt - over.startAt : 0)
    const topperNext =
      step === last && step.stage === 'coat' && over?.stage === 'topper' && over.actualStartAt === null
    const release = step === last && ahead.length === 0 ? latestRelease(laid, leavingOf(job)) : null
    const own = {
      ...at,
      ...(!topperNext && { topperOpens: null, topperCloses: null }),
      handoverSafe: release,
    }
    return noticesSince(own, clock.coatEndAt, nowAt).map((notice): Due => {
      const rule =
        ruleOf(
          profile,
          notice.kind === 'release' ? releaseRule(profile, leavingOf(job)) : ruleName[notice.kind],
          units,
        )?.words ?? ''
      const place = bayNames.get(step.movedToBayId ?? step.bayId) ?? ''
      return {
        jobId: job.id,
        kind: notice.kind,
        at: notice.at,
        coatEndAt: clock.coatEndAt,
        moment: moments[notice.kind],
        title: `${plateWords(job.vehicle.plate)}, ${place}: ${titles[notice.kind](when(notice.at), when(at.topperCloses?.at ?? 0))}`,
        words: `${notice.late ? `${say('Told late: it was due {at}.', { at: when(notice.at) })} ` : ''}${rule}`,
      }
    })
  })
}

const ruleName: Readonly<Record<Exclude<NoticeKind, 'release'>, MilestoneName>> = {
  'topper opens': 'topperOpens',
  'topper closes soon': 'topperCloses',
  'topper closed': 'topperCloses',
}

/** What a car is held for last: its handover figure, or that it has to stay dry. */
function releaseRule(profile: CureProfile, leaving: Leaving): 'handoverSafe' | 'keepDryEnds' {
  return leavingAge(profile, leaving) > profile.handoverMin ? 'keepDryEnds' : 'handoverSafe'
}

const titles: Readonly<Record<NoticeKind, (at: string, closes: string) => string>> = {
  'topper opens': at => say('the topper may go on since {at}', { at }),
  'topper closes soon': (_, closes) => say('the topper’s window closes {closes}', { closes }),
  'topper closed': at => say('the topper’s window closed {at}', { at }),
  release: at => say('the profile’s earliest handover is reached, {at}', { at }),
}

function isCoat({ stage, kind }: FloorStep): boolean {
  return kind === 'work' && (stage === 'coat' || stage === 'topper')
}

/** The last of the coats' earliest handovers; null where one of them is never reached in this cold. */
function latestRelease(laid: readonly { laid: LaidCoat }[], leaving: Leaving) {
  const each = laid.map(({ laid: coat }) => clockMilestones(coat)[releaseRule(coat.profile, leaving)])
  return each.reduce((a, b) => (a && b ? (b.at > a.at ? b : a) : null))
}
