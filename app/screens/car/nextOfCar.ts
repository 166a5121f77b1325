import type { CarView, VisitView } from '../../../main/api/views.ts'

/** The one act a car asks for next. */
export type NextOfCar = { act: 'book'; visit: VisitView } | { act: 'look' | 'layer' }

/**
 * What comes next for a car: its earliest visit that is not booked, in time or soon; else a look at what lies on it; with
 * nothing on file, the entry of that.
 */
export function nextOfCar({
  plans,
  layers,
  soldOn,
}: Pick<CarView, 'plans' | 'layers' | 'soldOn'>): NextOfCar {
  const [visit] = plans
    .flatMap(({ next }) => (next && next.booking === null ? [next] : []))
    .sort((a, b) => a.dueOn.localeCompare(b.dueOn))
  if (visit && soldOn === null) return { act: 'book', visit }
  return { act: layers.length > 0 ? 'look' : 'layer' }
}
