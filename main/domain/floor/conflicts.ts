/** What is booked over each other: never allowed when saving, but what really happened can bring it about. */

import { clip, difference, minutesIn, minuteWords } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import { sentence } from '../words.ts'
import type { Booked, FloorPerson } from './floor.ts'
import { jobStays, presenceOf } from './floorJobs.ts'
import type { Named } from './shopWords.ts'

export interface Conflict {
  readonly jobId: string
  /** The bay, for two cars or a closure; null where it is about people. */
  readonly bayId: string | null
  /** The promise hangs on it: a step has fewer people than it takes, or its bay is closed meanwhile. */
  readonly uncovered: boolean
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
  /** The step, where it is about people. */
  readonly step?: string
}

type ToldFloor = Booked & Named

/** All conflicts still to come, of every job on the floor, each told to both sides. */
export function conflictsOn(floor: ToldFloor): Conflict[] {
  const bays = new Map<string, Use[]>()
  const people = new Map<string, Use[]>()
  const things = new Map<string, Use[]>()
  const use = (uses: Map<string, Use[]>, key: string, one: Use) => {
    const list = uses.get(key)
    if (list) list.push(one)
    else uses.set(key, [one])
  }
  for (const job of floor.jobs) {
    const name = floor.jobNames.get(job.id)!
    for (const { bay, from, to } of jobStays(job))
      use(bays, bay, { jobId: job.id, bayId: bay, from, to, name })
    const from = job.arrivedAt ?? job.steps[0]?.startAt ?? job.leavesAt
    for (const { id } of floor.lent?.get(job.id) ?? [])
      use(things, id, { jobId: job.id, bayId: null, from, to: job.leavesAt, name })
    for (const step of job.steps)
      if (step.actualEndAt === null)
        for (const { id, ...there } of presenceOf(floor.open, step))
          use(people, id, { jobId: job.id, bayId: null, ...there, name, step: step.name })
  }
  const when = (at: number) => minuteWords(at, floor.zone, floor.nowAt)
  const found: Conflict[] = []
  const tell = (one: Use, other: Use, what: string) => {
    const fromAt = Math.max(one.from, other.from)
    const toAt = Math.min(one.to, other.to)
    // A few minutes over the hour are no conflict: the next car waits at the door.
    if (toAt - Math.max(fromAt, floor.nowAt) < floor.gridMin) return
    const words = (other: Use) =>
      sentence(
        say('{name} wants {what} too, {fromAt} to {toAt}', {
          name: other.name,
          what,
          fromAt: when(fromAt),
          toAt: when(toAt),
        }),
      )
    found.push({ jobId: one.jobId, bayId: one.bayId, uncovered: false, fromAt, toAt, words: words(other) })
    if (other.jobId !== '')
      found.push({
        jobId: other.jobId,
        bayId: other.bayId,
        uncovered: false,
        fromAt,
        toAt,
        words: words(one),
      })
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
            uncovered: true,
            fromAt: Math.max(from, one.from),
            toAt: Math.min(to, one.to),
            words: sentence(
              say('{name} is closed {from} to {to}{reason}', {
                name: bay.name,
                from: when(from),
                to: when(to),
                reason: reason ? ` (${reason})` : '',
              }),
            ),
          })
  }
  const thingNames = new Map([...(floor.lent?.values() ?? [])].flat().map(each => [each.id, each.name]))
  for (const [id, uses] of things)
    eachOverlap(uses, (one, other) => tell(one, other, thingNames.get(id) ?? say('the same thing')))
  for (const [id, uses] of people)
    eachOverlap(uses, (one, other) => {
      if (one.jobId !== other.jobId) tell(one, other, floor.crewNames.get(id) ?? say('the same person'))
    })
  return [...found, ...floor.crew.flatMap(person => absencesOf(floor, person, people.get(person.id) ?? []))]
}

/** What a job's promise lacks, in a few words; null: nothing. */
export function lackOf(conflicts: readonly Conflict[], jobId: string): string | null {
  const lacks = conflicts.filter(conflict => conflict.jobId === jobId && conflict.uncovered)
  if (lacks.length === 0) return null
  return lacks.some(({ bayId }) => bayId === null) ? say('somebody is missing') : say('its bay is closed')
}

/** The steps planned for somebody who is not there then; a few minutes are no conflict here either. */
function absencesOf(floor: ToldFloor, person: FloorPerson, uses: readonly Use[]): Conflict[] {
  const present = person.archived ? [] : person.present
  const when = (at: number) => minuteWords(at, floor.zone, floor.nowAt)
  return uses.flatMap(({ jobId, from, to, step }) => {
    const missing = difference(clip(floor.open, Math.max(from, floor.nowAt), to), present)
    const fromAt = missing[0]?.from ?? to
    const toAt = missing.at(-1)?.to ?? to
    if (minutesIn(missing) < floor.gridMin) return []
    const words = sentence(
      say('{name} is away {fromAt} to {toAt} and missing from "{step}"', {
        name: person.name,
        fromAt: when(fromAt),
        toAt: when(toAt),
        step,
      }),
    )
    return [{ jobId, bayId: null, uncovered: true, fromAt, toAt, words }]
  })
}

function eachOverlap(uses: Use[], pair: (one: Use, other: Use) => void): void {
  uses.sort((a, b) => a.from - b.from)
  uses.forEach((one, i) => {
    for (let j = i + 1; j < uses.length && uses[j]!.from < one.to; j++) pair(one, uses[j]!)
  })
}
