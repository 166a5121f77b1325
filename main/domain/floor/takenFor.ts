import { say } from '../language/index.ts'
import { sentence } from '../words.ts'
import type { Booked } from './floor.ts'
import { type FloorJob, type FloorStep, jobStays, presenceOf } from './floorJobs.ts'
import type { Named } from './shopWords.ts'

/**
 * What of a step to be begun at the minute `at` is taken by cars that are here, in sentences: its bay stood in, its
 * people in the middle of other work. What really happens is never refused, but it is asked about, and about the bay only
 * once: a car whose last step was begun there stands there already.
 */
export function takenFor(
  floor: Booked & Named,
  { id, steps }: FloorJob,
  step: FloorStep,
  at: number,
): string[] {
  const bay = floor.bayNames.get(step.bayId) ?? say('Its bay')
  const isThere = steps.findLast(own => own.actualStartAt !== null)?.bayId === step.bayId
  return floor.jobs
    .filter(other => other.id !== id && other.status === 'inShop')
    .flatMap(other => {
      const whose = floor.jobNames.get(other.id) ?? say('another car')
      const stands =
        !isThere && jobStays(other).some(stay => stay.bay === step.bayId && stay.from <= at && at < stay.to)
      const working = other.steps.filter(each => each.actualStartAt !== null && each.actualEndAt === null)
      const busy = working.flatMap(each =>
        presenceOf(floor.open, each)
          // Whoever has the whole of it stays while it runs over; whoever helps leaves as planned.
          .filter(({ id, to }) => step.crewIds.includes(id) && (to > at || !each.helperIds?.includes(id)))
          .map(({ id: crewId }) =>
            say('{crewNames} is still on "{name}" of {whose}', {
              crewNames: floor.crewNames.get(crewId) ?? say('somebody'),
              name: each.name,
              whose,
            }),
          ),
      )
      return [...(stands ? [say('{bay} is taken by {whose}', { bay, whose })] : []), ...busy].map(sentence)
    })
}
