import { durationWords } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import type { Verdict } from './verdicts.ts'

/** A verdict as far as a line tells it. */
export type Standing = Pick<Verdict, 'standing' | 'lateMin' | 'lack' | 'unfetchedAt'> & {
  readonly promisedAt: number
}

/** Whether a promise is anything but kept. */
export function isAmiss({ standing }: Pick<Verdict, 'standing'>): boolean {
  return standing !== 'kept' && standing !== 'none'
}

/** How a promise stands, in one line; `when` says a minute as the place that shows it does. */
export function standingWords(
  { standing, lateMin, lack, unfetchedAt, promisedAt }: Standing,
  when: (at: number) => string,
): string {
  if (standing === 'unfetched' && unfetchedAt !== null)
    return say('⚑ ready since {unfetchedAt}, not fetched', { unfetchedAt: when(unfetchedAt) })
  if (standing === 'late') {
    const late = say('⚑ running late, {lateMin}', { lateMin: durationWords(lateMin) })
    return lack === null ? late : `${late}; ${lack}`
  }
  if (standing === 'lacking') return `⚑ ${lack}`
  if (standing === 'none') return say('only held, nothing promised yet')
  return say('✓ on time for {promisedAt}', { promisedAt: when(promisedAt) })
}
