import { type Span, spanSet } from '../../calendar/spans.ts'
import type { FloorProblem } from './types.ts'

/** Bays, or people, between which no rule can tell: one choice with several places. */
export interface Group {
  readonly ids: readonly string[]
}

/** The bays in groups: the same capabilities as far as any step asks, the same closures and bookings. */
export function bayGroups(floor: FloorProblem): Group[] {
  const steps = floor.jobs.flatMap(job => job.steps)
  const needs = new Set(steps.map(step => step.needs))
  const lists = steps.flatMap(step => (step.bays ? [step.bays] : []))
  return grouped(floor.bays, bay => ({
    can: [...new Set(bay.can)].filter(one => needs.has(one)).sort(),
    lists: lists.map(list => list.includes(bay.id)),
    taken: takenOf(floor, bay.id),
  }))
}

/** When nothing may stand in a bay: its closures and what is booked. */
export function takenOf(floor: FloorProblem, id: string): Span[] {
  const bay = floor.bays.find(one => one.id === id)
  return spanSet([
    ...(bay?.closed ?? []),
    ...floor.fixed.filter(stay => stay.bay === id).map(({ from, to }) => ({ from, to })),
  ])
}

/** The crew in groups: the same skills as far as any step asks, the same absences. */
export function crewGroups(floor: FloorProblem): Group[] {
  const skills = new Set(
    floor.jobs.flatMap(job => job.steps.map(step => (step.kind === 'work' ? step.skill : null))),
  )
  return grouped(floor.crew, person => ({
    skills: [...new Set(person.skills)].filter(one => skills.has(one)).sort(),
    away: spanSet(person.away),
  }))
}

/** Each of them told apart from all others. */
export function singly(items: readonly { readonly id: string }[]): Group[] {
  return items.map(({ id }) => ({ ids: [id] }))
}

function grouped<T extends { readonly id: string }>(
  items: readonly T[],
  mark: (item: T) => unknown,
): Group[] {
  const groups = new Map<string, string[]>()
  for (const item of items) {
    const key = JSON.stringify(mark(item))
    const ids = groups.get(key)
    if (ids) ids.push(item.id)
    else groups.set(key, [item.id])
  }
  return [...groups.values()].map(ids => ({ ids }))
}
