import { clip, minutesIn } from '../calendar/spans.ts'
import { openBetween, partOfWork } from './openTime.ts'
import type { Prepared } from './prepare.ts'
import { helpOf, skilledFor, teamSize } from './steps.ts'
import type { Step } from './types.ts'

interface Stretch {
  readonly start: number
  readonly end: number
}

/**
 * Who does a step planned for `[start, end)`: people with its skill who are free in every opening minute of it.
 * Preferred people come first, then those already on this car, then by id; undefined where too few are free.
 */
export function chooseTeam(
  prepared: Prepared,
  step: Step,
  at: Stretch,
  already: ReadonlySet<string>,
): string[] | undefined {
  return firstFree(prepared, step, at, teamSize(step), already)
}

/** Who comes to its help, as the team is chosen, beside the `team` of the whole step; none where it asks for none. */
export function chooseHelp(
  prepared: Prepared,
  step: Step,
  { start }: Stretch,
  team: readonly string[],
): string[] | undefined {
  const help = helpOf(step)
  if (!help) return []
  const { from, to } = partOfWork(prepared.hours, start, help)
  const others = { ...prepared, crew: prepared.crew.filter(({ id }) => !team.includes(id)) }
  return firstFree(others, step, { start: from, end: to }, help.crew, new Set())
}

function firstFree(
  prepared: Prepared,
  step: Step,
  { start, end }: Stretch,
  size: number,
  already: ReadonlySet<string>,
): string[] | undefined {
  if (step.kind === 'hold' || size === 0) return []
  const needed = openBetween(prepared.hours, start, end)
  const preferred = step.preferCrew ?? []
  const rank = (id: string) => {
    const place = preferred.indexOf(id)
    return place >= 0 ? place : preferred.length + (already.has(id) ? 0 : 1)
  }
  const able = skilledFor(step, prepared.crew)
    .filter(({ free }) => minutesIn(clip(free, start, end)) === needed)
    .map(person => person.id)
    .sort((a, b) => rank(a) - rank(b) || (a < b ? -1 : 1))
  return able.length < size ? undefined : able.slice(0, size)
}
