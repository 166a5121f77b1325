import type { JobStepView, JobView } from '../../../main/api/views.ts'

/** The one act that comes next; null where the job asks for none. */
export type NextAct =
  | { kind: 'confirm' | 'arrive' | 'handOver' }
  | { kind: 'start' | 'finish'; step: JobStepView }
  | { kind: 'wait'; step: JobStepView; from: number }

/** What is next on a job: the desk says yes, the car comes, its steps one after the other, it goes home. */
export function nextAct({ can, steps, nowAt }: Pick<JobView, 'can' | 'steps' | 'nowAt'>): NextAct | null {
  if (can.confirm) return { kind: 'confirm' }
  if (can.arrive) return { kind: 'arrive' }
  if (!can.handOver) return null
  const running = steps.find(step => step.can.finish)
  if (running) return { kind: 'finish', step: running }
  const next = steps.find(step => step.kind === 'work' && step.state === 'planned')
  if (!next) return { kind: 'handOver' }
  return next.can.start
    ? { kind: 'start', step: next }
    : { kind: 'wait', step: next, from: Math.max(nowAt, next.startAt) }
}

/** What the car does now and what follows, each in one sentence. */
export function nowWords(job: JobView, when: (at: number) => string): { now: string; after: string } {
  const { steps, nowAt } = job
  const running = steps.find(step => step.state === 'running')
  const next = steps.find(step => step.kind === 'work' && step.state === 'planned')
  const follows = [
    next && next !== running && `${next.name} from ${when(Math.max(nowAt, next.startAt))}`,
    `home from ${when(job.handoverAt)}`,
  ]
    .filter(Boolean)
    .join(', ')
  if (job.leftAt !== null) return { now: `Went home ${when(job.leftAt)}.`, after: '' }
  if (job.arrivedAt === null) return { now: `Due ${when(job.dropOffAt)}.`, after: `Then: ${follows}.` }
  if (running?.kind === 'work') {
    const crew = running.crew.map(person => person.name).join(', ')
    return {
      now: `${running.name}${crew && `, ${crew}`}, until ${when(running.endAt)}.`,
      after: `Then: ${follows}.`,
    }
  }
  const touch = running?.cure && running.cure.tackFreeAt > nowAt ? running.cure.tackFreeAt : null
  if (running)
    return {
      now:
        touch === null
          ? `${running.name} until ${when(running.endAt)}.`
          : `${running.name}: nobody touches it before ${when(touch)}.`,
      after: `Then: ${follows}.`,
    }
  return { now: next ? `Waiting for ${next.name}.` : 'All work is done.', after: `Then: ${follows}.` }
}
