import type { JobStepView, JobView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'

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

/** What the car does now and what follows, each in one sentence; `lead` where it is here, and something is so now. */
export function nowWords(
  job: JobView,
  when: (at: number) => string,
): { lead?: string; now: string; after: string } {
  const { steps, nowAt } = job
  const running = steps.find(step => step.state === 'running')
  const next = steps.find(step => step.kind === 'work' && step.state === 'planned')
  const follows = [
    next &&
      next !== running &&
      say('{name} from {nowAt}', { name: next.name, nowAt: when(Math.max(nowAt, next.startAt)) }),
    say('home from {handoverAt}', { handoverAt: when(job.handoverAt) }),
  ]
    .filter(Boolean)
    .join(', ')
  if (job.leftAt !== null) return { now: say('Went home {leftAt}.', { leftAt: when(job.leftAt) }), after: '' }
  if (job.arrivedAt === null)
    return {
      now: say('Comes in {dropOffAt}.', { dropOffAt: when(job.dropOffAt) }),
      after: say('Then: {follows}.', { follows }),
    }
  const lead = say('Now')
  if (running?.kind === 'work') {
    const crew = running.crew.map(person => person.name).join(', ')
    const values = { name: running.name, crew, endAt: when(running.endAt) }
    return {
      lead,
      now: crew ? say('{name}, {crew}, until {endAt}.', values) : say('{name}, until {endAt}.', values),
      after: say('Then: {follows}.', { follows }),
    }
  }
  const touch = running?.cure && running.cure.tackFreeAt > nowAt ? running.cure.tackFreeAt : null
  if (running)
    return {
      lead,
      now:
        touch === null
          ? say('{name} until {endAt}.', { name: running.name, endAt: when(running.endAt) })
          : say('{name}: nobody touches it before {touch}.', { name: running.name, touch: when(touch) }),
      after: say('Then: {follows}.', { follows }),
    }
  return {
    lead,
    now: next ? say('Waiting for {name}.', { name: next.name }) : say('All work is done.'),
    after: say('Then: {follows}.', { follows }),
  }
}
