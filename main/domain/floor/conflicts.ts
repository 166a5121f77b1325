/** What is booked over each other: never allowed when saving, but what really happened can bring it about. */

import { difference, indexFrom, minutesIn, minuteWords, type Span } from '../calendar/index.ts'
import { say } from '../language/index.ts'
import { sentence } from '../words.ts'
import type { Booked, FloorPerson } from './floor.ts'
import { jobStays, presenceOf } from './floorJobs.ts'
import type { Named } from './shopWords.ts'

export interface Conflict {
  readonly jobId: string
  /** The job that wants the same; left out where somebody is away or the bay is closed. */
  readonly otherId?: string
  /** Somebody is away, the bay is closed; or the same person, bay or lent thing is asked for twice. */
  readonly kind: 'away' | 'closed' | 'person' | 'bay' | 'thing'
  /** The bay, for two cars or a closure; null where it is about people. */
  readonly bayId: string | null
  /** Who is meant and on which step; left out where it is about no person. */
  readonly crewId?: string
  readonly position?: number
  /**
   * The promise hangs on it: a step has fewer people than it takes, or no bay to stand in. Of two that want the same,
   * that is the one that comes second.
   */
  readonly uncovered: boolean
  readonly fromAt: number
  readonly toAt: number
  readonly words: string
}

interface Use {
  readonly jobId: string
  readonly number: number
  readonly bayId: string | null
  readonly from: number
  readonly to: number
  readonly name: string
  /** It has begun, so nobody comes before it. */
  readonly begun: boolean
  /** The person and the step, where it is about people. */
  readonly on?: { readonly crewId: string; readonly position: number; readonly step: string }
}

export type ToldFloor = Booked & Named

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
    const own = { jobId: job.id, number: job.number, name: floor.jobNames.get(job.id)! }
    for (const { bay, from, to } of jobStays(job))
      use(bays, bay, { ...own, bayId: bay, from, to, begun: job.status === 'inShop' && from <= floor.nowAt })
    const from = job.arrivedAt ?? job.steps[0]?.startAt ?? job.leavesAt
    for (const { id } of floor.lent?.get(job.id) ?? [])
      use(things, id, { ...own, bayId: null, from, to: job.leavesAt, begun: job.arrivedAt !== null })
    for (const step of job.steps)
      if (step.actualEndAt === null)
        for (const { id, ...there } of presenceOf(floor.open, step)) {
          const on = { crewId: id, position: step.position, step: step.name }
          use(people, id, { ...own, bayId: null, ...there, begun: step.actualStartAt !== null, on })
        }
  }
  const found: Conflict[] = []
  const when = whenOn(floor)
  const tell = tellTo(floor, found, when)
  for (const bay of floor.bays) {
    const uses = bays.get(bay.id) ?? []
    eachOverlap(uses, (one, other) => tell('bay', one, other, bay.name))
    for (const closure of bay.closures)
      if (closure.toAt > floor.nowAt) found.push(...closedOver(floor, bay, closure, uses, when))
  }
  const thingNames = new Map([...(floor.lent?.values() ?? [])].flat().map(each => [each.id, each.name]))
  for (const [id, uses] of things)
    eachOverlap(uses, (one, other) => tell('thing', one, other, thingNames.get(id) ?? say('the same thing')))
  for (const [id, uses] of people)
    eachOverlap(uses, (one, other) => {
      if (one.jobId !== other.jobId)
        tell('person', one, other, floor.crewNames.get(id) ?? say('the same person'))
    })
  return [
    ...found,
    ...floor.crew.flatMap(person => absencesOf(floor, person, people.get(person.id) ?? [], when)),
  ]
}

/** What a job's promise lacks, in a few words; null: nothing. */
export function lackOf(lacks: readonly Conflict[]): string | null {
  const lacking = new Set(lacks.filter(each => each.uncovered).map(each => each.kind))
  if (lacking.has('away')) return say('somebody is missing')
  if (lacking.has('closed')) return say('its bay is closed')
  if (lacking.has('bay')) return say('its bay is taken')
  if (lacking.has('person')) return say('somebody is with another car')
  return null
}

type When = (at: number) => string

/** A minute in words; the same minutes come again and again. */
function whenOn(floor: ToldFloor): When {
  const said = new Map<number, string>()
  return at => {
    const known = said.get(at) ?? minuteWords(at, floor.zone, floor.nowAt)
    said.set(at, known)
    return known
  }
}

/** Tells an overlap to both sides; the one that comes second lacks what both want. */
function tellTo(floor: ToldFloor, found: Conflict[], when: When) {
  return (kind: 'bay' | 'person' | 'thing', one: Use, other: Use, what: string) => {
    const fromAt = Math.max(one.from, other.from)
    const toAt = Math.min(one.to, other.to)
    // A few minutes over the hour are no conflict: the next car waits at the door.
    if (toAt - Math.max(fromAt, floor.nowAt) < floor.gridMin) return
    const second = comesFirst(one, other) ? other : one
    for (const [own, its] of [
      [one, other],
      [other, one],
    ] as const)
      found.push({
        jobId: own.jobId,
        otherId: its.jobId,
        kind,
        bayId: own.bayId,
        ...(own.on && { crewId: own.on.crewId, position: own.on.position }),
        uncovered: own === second && kind !== 'thing',
        fromAt,
        toAt,
        words: sentence(
          say('{name} needs {what} too, {fromAt} to {toAt}', {
            name: its.name,
            what,
            fromAt: when(fromAt),
            toAt: when(toAt),
          }),
        ),
      })
  }
}

/** What has begun has it, then what begins sooner, then the older booking. */
function comesFirst(one: Use, other: Use): boolean {
  if (one.begun !== other.begun) return one.begun
  return (one.from - other.from || one.number - other.number) <= 0
}

function closedOver(
  floor: ToldFloor,
  bay: ToldFloor['bays'][number],
  { fromAt: from, toAt: to, reason }: ToldFloor['bays'][number]['closures'][number],
  uses: readonly Use[],
  when: When,
): Conflict[] {
  return uses
    .filter(one => one.from < to && from < one.to && one.to > floor.nowAt)
    .map(one => ({
      jobId: one.jobId,
      kind: 'closed',
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
    }))
}

/** The steps planned for somebody who is not there then; a few minutes are no conflict here either. */
function absencesOf(floor: ToldFloor, person: FloorPerson, uses: readonly Use[], when: When): Conflict[] {
  const away = difference(floor.open, person.archived ? [] : person.present)
  return uses.flatMap(({ jobId, from, to, on, begun }) => {
    // Work under way wants its person until it is finished, however long it takes.
    const until = begun ? Math.max(to, floor.nowAt + floor.gridMin) : to
    const missing = clipped(away, Math.max(from, floor.nowAt), until)
    const fromAt = missing[0]?.from ?? to
    const toAt = missing.at(-1)?.to ?? to
    if (minutesIn(missing) < floor.gridMin) return []
    const words = sentence(
      say('{name} is away {fromAt} to {toAt} and missing from "{step}"', {
        name: person.name,
        fromAt: when(fromAt),
        toAt: when(toAt),
        step: on?.step,
      }),
    )
    const { crewId, position } = on!
    return [
      { jobId, kind: 'away' as const, bayId: null, crewId, position, uncovered: true, fromAt, toAt, words },
    ]
  })
}

/** The part of a set inside `[from, to)`, looked up by halving: a booked year has many days. */
function clipped(set: readonly Span[], from: number, to: number): Span[] {
  const inside: Span[] = []
  for (let i = indexFrom(set, from), span = set[i]; span && span.from < to; span = set[++i])
    inside.push({ from: Math.max(from, span.from), to: Math.min(to, span.to) })
  return inside.filter(span => span.from < span.to)
}

function eachOverlap(uses: Use[], pair: (one: Use, other: Use) => void): void {
  uses.sort((a, b) => a.from - b.from)
  uses.forEach((one, i) => {
    for (let j = i + 1; j < uses.length && uses[j]!.from < one.to; j++) pair(one, uses[j]!)
  })
}
