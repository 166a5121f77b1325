import type { Span } from '../calendar/index.ts'
import { meetsNeeds } from '../shop/index.ts'
import type { Booked, FloorBay } from './floor.ts'
import { type FloorStep, jobStays } from './floorJobs.ts'

/** Whether a bay has what a step needs and is neither closed nor stood in during the time, by any car. */
export function meetsBay(floor: Booked, bay: FloorBay, step: Pick<FloorStep, 'needs'>, span: Span): boolean {
  const over = (from: number, to: number) => from < Math.max(span.to, span.from + 1) && span.from < to
  return (
    !bay.archived &&
    meetsNeeds([...bay.capabilities, ...bay.offers], step.needs) &&
    !bay.closures.some(({ fromAt, toAt }) => over(fromAt, toAt)) &&
    !floor.jobs.some(job => jobStays(job).some(stay => stay.bay === bay.id && over(stay.from, stay.to)))
  )
}
