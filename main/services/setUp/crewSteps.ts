import { crewSpans, type OpeningHours, openMinutesBetween, openSpans } from '../../domain/calendar/index.ts'
import { type Help, openTime, partOfWork } from '../../domain/schedule/index.ts'
import { fromJson } from '../../store/json.ts'
import type { Tx } from '../../store/store.ts'
import { calendarOf } from '../desk/shopView.ts'
import { type ComingJob, comingJobs, type Touched, touchedSteps } from '../floor/comingJobs.ts'

/** The planned steps of one of the crew; all of them, or those `concerns` picks. */
export async function stepsOf(
  tx: Tx,
  crewId: string,
  nowAt: number,
  concerns: (step: ComingJob['steps'][number]) => boolean = () => true,
): Promise<Touched[]> {
  const { zone } = await calendarOf(tx)
  const jobs = await comingJobs(tx, nowAt)
  return touchedSteps(jobs, zone, step => step.crew.some(each => each.crewId === crewId) && concerns(step))
}

/** The planned steps that one of the crew, as now written, is not there for or has no skill for. */
export async function unmannedSteps(tx: Tx, crewId: string, nowAt: number): Promise<Touched[]> {
  const member = await tx.crewMember.findUnique({ where: { id: crewId }, include: { absences: true } })
  if (!member) return []
  const calendar = await calendarOf(tx)
  const skills = member.skills as string[]
  const absences = member.absences.map(({ fromAt, toAt }) => ({ from: fromAt, to: toAt }))
  const weekly = fromJson<OpeningHours[] | null>(member.weekly)
  return stepsOf(tx, crewId, nowAt, step => {
    const open = openSpans(calendar, step.startAt - 1440, step.endAt + 1440)
    const there = crewSpans(open, calendar.zone, { weekly, absences })
    const lacksSkill = step.skill !== null && !skills.includes(step.skill)
    const help = step.crew.some(each => each.crewId === crewId && each.helps)
      ? fromJson<Help | null>(step.help)
      : null
    const part = help && partOfWork(openTime(open), step.startAt, help)
    return (
      lacksSkill ||
      openMinutesBetween(there, part?.from ?? step.startAt, part?.to ?? step.endAt) < (help ?? step).minutes
    )
  })
}
