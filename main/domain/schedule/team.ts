import { clip, minutesIn } from '../calendar/spans.ts'
import { openBetween } from './openTime.ts'
import type { Prepared } from './prepare.ts'
import { skilledFor, teamSize } from './steps.ts'
import type { Step } from './types.ts'

/**
 * Who does a step planned for `[start, end)`: people with its skill who are free in every opening minute of it.
 * Preferred people come first, then those already on this car, then by id; undefined where too few are free.
 */
export function chooseTeam(
  prepared: Prepared,
  step: Step,
  { start, end }: { readonly start: number; readonly end: number },
  already: ReadonlySet<string>,
): string[] | undefined {
  const size = teamSize(step)
  if (step.kind === 'hold' || size === 0) return []
  const needed = openBetween(prepared.hours, start, end)
  const preferred = step.preferCrew ?? []
  const rank = (id: string) => (preferred.includes(id) ? 0 : already.has(id) ? 1 : 2)
  const able = skilledFor(step, prepared.crew)
    .filter(({ free }) => minutesIn(clip(free, start, end)) === needed)
    .map(person => person.id)
    .sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1))
  return able.length < size ? undefined : able.slice(0, size)
}
