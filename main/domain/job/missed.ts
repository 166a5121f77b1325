/** A step that came too late for the one before it: what its template says that costs, as work added to the chain. */
import { say } from '../language/index.ts'
import type { MissedWork } from '../shop/index.ts'

/** A step as far as its wait goes; times are epoch minutes, as now projected. */
export interface WaitingStep {
  readonly kind: string
  readonly name: string
  readonly stage: string
  readonly minutes: number
  readonly productId: string | null
  readonly actualStartAt: number | null
  readonly actualEndAt: number | null
  readonly missed: string | null
  readonly missedMin: number | null
  /** Why the step is done although it comes too late; null: nobody has said so. */
  readonly missedReason: string | null
}

export interface Missed {
  /** The place of the step that comes too late, and of the work it should have followed in time. */
  readonly late: number
  readonly kept: number
  readonly work: MissedWork
}

/**
 * What the first of the steps that come too late (`lateAt`: their places) costs: the work before it is done, it is not
 * begun itself, and nobody has said why it is done all the same. Null: nothing to settle.
 */
export function missedOf(steps: readonly WaitingStep[], lateAt: readonly number[]): Missed | null {
  for (const late of lateAt) {
    const step = steps[late]
    if (step?.kind !== 'work' || step.actualStartAt !== null || step.missedReason !== null) continue
    const kept = steps.findLastIndex((each, i) => i < late && each.kind === 'work')
    const before = steps[kept]
    if (before?.missed && before.actualEndAt !== null)
      return { late, kept, work: before.missed as MissedWork }
  }
  return null
}

/** The step that is added, made of a `before` one: what differs from it. */
export type Added<S> = S & { readonly name: string; readonly from: number; readonly takesOff?: boolean }

/**
 * The steps that a missed wait adds before the late one: those since the work that waited, again; its surface abraded by
 * hand where it stands; or it taken off, then those again. `from` is the step each is made of.
 */
export function addedWork<S extends WaitingStep>(
  steps: readonly S[],
  { late, kept, work }: Missed,
): Added<S>[] {
  const waited = steps[kept]
  if (!waited) return []
  const again = steps.slice(kept, late).map((step, i) => ({ ...step, name: againName(step), from: kept + i }))
  const rough = {
    ...waited,
    name: say(work === 'redo' ? 'Take off {name}' : 'Abrade {name}', { name: waited.name }),
    stage: 'correct',
    minutes: waited.missedMin ?? 0,
    productId: null,
    help: null,
    missed: null,
    missedMin: null,
    takesOff: work === 'redo',
    from: kept,
  }
  return { again, abrade: [rough], redo: [rough, ...again] }[work]
}

function againName({ kind, name }: WaitingStep): string {
  const ending = say('{name} again', { name: '' })
  return kind === 'hold' || name.endsWith(ending) ? name : say('{name} again', { name })
}

/** What the added work is, for a key: `Panel wipe again, 30 min`. */
export function addedWords(added: readonly WaitingStep[], duration: (minutes: number) => string): string {
  return added.map(({ name, minutes }) => `${name}, ${duration(minutes)}`).join('; ')
}
