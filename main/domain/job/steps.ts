/** What may be done next with the steps of a job: they are begun and finished in order, one after the other. */

/** A step as far as its turn goes; times are epoch minutes, `endAt` as now projected. */
export interface StepTimes {
  readonly kind: string
  /** Least minutes from the end of the step before to this start. */
  readonly waitMin: number | null
  readonly endAt: number
  readonly actualStartAt: number | null
  readonly actualEndAt: number | null
}

/** Why a step cannot be begun: it was, another must be finished first, or what lies before it is not over until then. */
export type NotYet<S extends StepTimes> =
  | { readonly why: 'begun'; readonly at: number }
  | { readonly why: 'notItsTurn'; readonly step: S }
  | { readonly why: 'tooEarly'; readonly step: S; readonly readyAt: number }

/** What keeps the hands-on step `index` from being begun at the minute `at`; null: nothing of the chain. */
export function notYet<S extends StepTimes>(
  steps: readonly S[],
  index: number,
  at: number,
): NotYet<S> | null {
  const step = steps[index]
  if (!step) return null
  if (step.actualStartAt !== null) return { why: 'begun', at: step.actualStartAt }
  const open = steps.slice(0, index).find(each => each.kind === 'work' && each.actualEndAt === null)
  if (open) return { why: 'notItsTurn', step: open }
  const before = steps[index - 1]
  const readyAt = before ? before.endAt + (step.waitMin ?? 0) : at
  return before && at < readyAt ? { why: 'tooEarly', step: before, readyAt } : null
}

/** The place of the step whose time was recorded last, which alone can be taken back; -1: none was. */
export function lastRecorded(steps: readonly StepTimes[]): number {
  return steps.findLastIndex(step => step.actualStartAt !== null)
}

/** The last minute recorded of the work; null: none is. What happens next cannot have happened before it. */
export function lastActual(steps: readonly StepTimes[]): number | null {
  const last = steps[lastRecorded(steps)]
  return last?.actualEndAt ?? last?.actualStartAt ?? null
}

/** A job's stay may be laid elsewhere while neither its first step nor anything after it has begun. */
export function isMovableFrom(steps: readonly StepTimes[], index: number): boolean {
  const rest = steps.slice(index)
  // A hold is where its coat was laid: the car is not dragged away from it.
  return rest[0]?.kind === 'work' && rest.every(step => step.actualStartAt === null)
}
