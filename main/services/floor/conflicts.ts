/** What is booked over each other: never allowed when saving, but what really happened can bring it about. */

import { minuteWords, sentence } from '../desk/shopWords.ts'
import type { Floor } from './floor.ts'
import { jobStays } from './floorJobs.ts'

export interface Conflict {
  readonly jobId: string
  /** The bay, for two cars or a closure; null where it is about people. */
  readonly bayId: string | null
  readonly fromAt: number
  readonly toAt: number
  readonly words: string
}

interface Use {
  readonly jobId: string
  readonly bayId: string | null
  readonly from: number
  readonly to: number
  readonly name: string
}

/** All conflicts still to come, of every job on the floor, each told to both sides. */
export function conflictsOn(floor: Floor): Conflict[] {
  const bays = new Map<string, Use[]>()
  const people = new Map<string, Use[]>()
  const use = (uses: Map<string, Use[]>, key: string, one: Use) => {
    const list = uses.get(key)
    if (list) list.push(one)
    else uses.set(key, [one])
  }
  for (const job of floor.jobs) {
    const name = floor.jobNames.get(job.id)!
    for (const { bay, from, to } of jobStays(job))
      use(bays, bay, { jobId: job.id, bayId: bay, from, to, name })
    for (const step of job.steps)
      if (step.actualEndAt === null)
        for (const id of step.crewIds)
          use(people, id, { jobId: job.id, bayId: null, from: step.startAt, to: step.endAt, name })
  }
  const when = (at: number) => minuteWords(at, floor.zone, floor.nowAt)
  const found: Conflict[] = []
  const tell = (one: Use, other: Use, what: string) => {
    const fromAt = Math.max(one.from, other.from)
    const toAt = Math.min(one.to, other.to)
    // A few minutes over the hour are no conflict: the next car waits at the door.
    if (toAt - Math.max(fromAt, floor.nowAt) < floor.gridMin) return
    const words = (other: Use) =>
      sentence(`${other.name} wants ${what} too, ${when(fromAt)} to ${when(toAt)}`)
    found.push({ jobId: one.jobId, bayId: one.bayId, fromAt, toAt, words: words(other) })
    if (other.jobId !== '')
      found.push({ jobId: other.jobId, bayId: other.bayId, fromAt, toAt, words: words(one) })
  }
  for (const bay of floor.bays) {
    const uses = bays.get(bay.id) ?? []
    eachOverlap(uses, (one, other) => tell(one, other, bay.name))
    for (const { fromAt: from, toAt: to, reason } of bay.closures)
      for (const one of uses)
        if (one.from < to && from < one.to && to > floor.nowAt)
          found.push({
            jobId: one.jobId,
            bayId: bay.id,
            fromAt: Math.max(from, one.from),
            toAt: Math.min(to, one.to),
            words: sentence(
              `${bay.name} is closed ${when(from)} to ${when(to)}${reason ? ` (${reason})` : ''}`,
            ),
          })
  }
  for (const [id, uses] of people)
    eachOverlap(uses, (one, other) => {
      if (one.jobId !== other.jobId) tell(one, other, floor.crewNames.get(id) ?? 'the same person')
    })
  return found
}

function eachOverlap(uses: Use[], pair: (one: Use, other: Use) => void): void {
  uses.sort((a, b) => a.from - b.from)
  uses.forEach((one, i) => {
    for (let j = i + 1; j < uses.length && uses[j]!.from < one.to; j++) pair(one, uses[j]!)
  })
}
