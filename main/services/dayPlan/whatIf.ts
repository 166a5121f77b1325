/** What would become of every promise if something happened: laid beside the desk, then kept or forgotten. */

import { conflictsOn } from '../../domain/floor/index.ts'
import { say } from '../../domain/language/index.ts'
import { found, refuse } from '../../domain/refusal.ts'
import {
  changesOf,
  curingAt,
  type Rush,
  type Supposition,
  suppose,
  together,
} from '../../domain/relay/index.ts'
import type { Tx } from '../../store/store.ts'
import { act, type Desk } from '../desk/desk.ts'
import type { Floor } from '../floor/floor.ts'
import { plateWords } from '../floor/jobRows.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import { writeClosure } from '../setUp/bayClosures.ts'
import { writeAbsence } from '../setUp/crewAbsences.ts'
import { sell } from '../setUp/soldTreatments.ts'
import { acceptCars } from './accept.ts'
import type { KeepInput, WhatIfInput } from './inputs.ts'
import { curedProduct, holdToLengthen, lengthenCure } from './longerCure.ts'
import { layable } from './relayFloor.ts'
import { laidView } from './relayView.ts'
import { type Run, runsOf } from './runs.ts'

export type WhatIfView = Awaited<ReturnType<typeof whatIfStands>>

/** One car's promise: as the floor stands, and if it happened and nobody did anything. */
interface PromiseSeen {
  readonly jobId: string
  readonly plate: string
  readonly promisedAt: number
  readonly expectedAt: number
  readonly supposedAt: number
  /** Why it cannot stay where it is then, in words; empty: it can. */
  readonly broken: string
}

interface Asked extends WhatIfInput {
  readonly promises: readonly PromiseSeen[]
}

export const whatIfRuns = runsOf<Asked>()

/** The job of a rush car, which is on no list yet. */
const rushId = 'rush'

/** Farthest ahead that anything may be supposed, in minutes: nothing is booked beyond. */
const farthestMin = 366 * 1440

/** Begins to lay the floor as if it had happened. Nothing is written. */
export async function beginWhatIf(desk: Desk, input: WhatIfInput): Promise<{ runId: string }> {
  const nowAt = desk.now()
  const tx = desk.store.read
  checkTimes(input.what, nowAt)
  const untilAt = nowAt + input.days * 1440
  const floor = await loadFloor(tx, nowAt, Math.max(untilAt, endOf(input.what)))
  checkThere(input.what, floor)
  const supposed = input.what.kind === 'rush' ? floor : suppose(floor, [input.what as Supposition])
  const { task, cars } = await layable(tx, supposed, untilAt, await rushOf(tx, input.what))
  const broken = new Map(cars.map(car => [car.jobId, car.broken.join(' ')]))
  for (const { jobId, words } of conflictsOn(supposed)) if (!broken.get(jobId)) broken.set(jobId, words)
  const before = new Map(floor.jobs.map(job => [job.id, job.handoverAt]))
  const promises = supposed.jobs
    .filter(job => job.status === 'booked' || job.status === 'inShop')
    .map(job => ({
      jobId: job.id,
      plate: plateWords(job.plate),
      promisedAt: job.promisedAt,
      expectedAt: before.get(job.id) ?? job.handoverAt,
      supposedAt: job.handoverAt,
      broken: broken.get(job.id) ?? '',
    }))
    .sort((a, b) => a.promisedAt - b.promisedAt)
  return whatIfRuns.begin(desk.store, { asked: { ...input, promises }, startedAt: nowAt, task, cars })
}

type What = WhatIfInput['what']

function endOf(what: What): number {
  return what.kind === 'cureLonger' ? 0 : what.toAt
}

function checkTimes(what: What, nowAt: number): void {
  if (what.kind === 'cureLonger') return
  const { fromAt, toAt } = what
  if (toAt <= fromAt) refuse('span-order', { toAt }, say('It ends before it begins; give a later end.'))
  if (toAt <= nowAt) refuse('span-past', { toAt }, say('That is over; give a time still to come.'))
  if (toAt > nowAt + farthestMin)
    refuse('span-far', { toAt }, say('That is too far off; look at most a year ahead.'))
}

function checkThere(what: What, floor: Floor): void {
  if (what.kind === 'bayClosed')
    found(
      floor.bays.find(bay => bay.id === what.bayId && !bay.archived) ?? null,
      { bayId: what.bayId },
      say('This bay is not there any more; choose another.'),
    )
  if (what.kind === 'away')
    found(
      floor.crew.find(person => person.id === what.crewId && !person.archived) ?? null,
      { crewId: what.crewId },
      say('This person is not there any more; choose another.'),
    )
  if (what.kind === 'cureLonger') holdToLengthen(floor, what)
}

async function rushOf(tx: Tx, what: What): Promise<Rush | undefined> {
  if (what.kind !== 'rush') return undefined
  const { treatmentIds, sizeClass, fromAt, toAt } = what
  const sold = await sell(tx, { treatmentIds, sizeClass, finish: 'gloss', condition: 'good' })
  return { id: rushId, steps: sold.steps, releaseAt: fromAt, dueAt: toAt }
}

const none = { run: null, what: null, promises: [], rush: null, cures: null, kept: null }

/** How far it is: every promise as it stands, as it would be, and as the best plan could have it. */
export async function whatIfStands(desk: Desk) {
  const nowAt = desk.now()
  const { run, working, failed } = whatIfRuns.stands(desk.store)
  const floor = await loadFloor(desk.store.read, nowAt, nowAt)
  if (!run) return { ...none, nowAt, zone: floor.zone, failed }
  const laid = laidView(run, working, { bays: floor.bayNames, crew: floor.crewNames })
  const plan = run.laying?.plan
  const moved = new Map(laid.changes.map(change => [change.jobId, change]))
  return {
    nowAt,
    zone: floor.zone,
    failed,
    run: { ...laid, changes: laid.changes.filter(change => change.jobId !== rushId) },
    what: run.asked.what,
    promises: run.asked.promises.map(seen => ({
      ...seen,
      /** Late or impossible where nobody does anything. */
      hit: seen.broken !== '' || (seen.supposedAt > seen.promisedAt && seen.supposedAt > seen.expectedAt),
      bestAt: plan?.[seen.jobId]?.handover ?? seen.supposedAt,
      moves: moved.has(seen.jobId),
    })),
    rush: moved.get(rushId)?.to ?? null,
    /** What cures: its profile is where every car to come would get the longer time. */
    cures:
      run.asked.what.kind === 'cureLonger'
        ? await curedProduct(desk.store.read, floor, run.asked.what.jobId)
        : null,
    /** What keeping it writes down. */
    kept: keptWords(run.asked.what),
  }
}

/** Cars of which something has still to cure, those promised first before the others. */
export async function curingCars(desk: Desk) {
  const nowAt = desk.now()
  const floor = await loadFloor(desk.store.read, nowAt, nowAt)
  return floor.jobs
    .filter(job => job.status !== 'held' && curingAt(job.steps, nowAt) >= 0)
    .sort((a, b) => a.promisedAt - b.promisedAt)
    .map(job => ({ jobId: job.id, plate: floor.jobNames.get(job.id) ?? '' }))
}

function keptWords({ kind }: What): string {
  return {
    bayClosed: say('closes the bay'),
    away: say('notes who is away'),
    cureLonger: say('gives this car the longer cure'),
    rush: say('makes room, to be booked next'),
  }[kind]
}

export function stopWhatIf(desk: Desk): Promise<void> {
  return whatIfRuns.stop(desk.store)
}

/** Forgets it: nothing was written. */
export function discardWhatIf(desk: Desk): Promise<void> {
  return whatIfRuns.drop(desk.store)
}

/**
 * Keeps it: the cars move as the plan has them, and the closure or absence is written, in one act. The cars go first,
 * because a bay is closed only once nothing is booked in it.
 */
export async function keepWhatIf(desk: Desk, { runId }: KeepInput): Promise<{ cars: number }> {
  const { run } = whatIfRuns.stands(desk.store)
  if (run?.id !== runId)
    refuse('stale', { runId }, say('This is not there any more: something else was asked. Ask again.'))
  await whatIfRuns.stop(desk.store)
  const { what } = run.asked
  const jobIds = movable(run)
  const cars = await act(desk, async (tx, audit, at) => {
    // First, so that the car is checked with the hold it will have.
    if (what.kind === 'cureLonger') {
      if (!run.laying?.plan)
        refuse(
          'no-plan',
          { runId },
          say('No place with the longer cure was found yet; ask again and let it look longer.'),
        )
      const isLaid = run.task.floor.jobs.some(job => job.id === what.jobId)
      await lengthenCure(tx, audit, at, { jobId: what.jobId, moreMin: what.moreMin, isLaid })
    }
    const moved = jobIds.length === 0 ? 0 : await acceptCars(tx, audit, at, { run, jobIds })
    if (what.kind === 'bayClosed') {
      const { bayId, fromAt, toAt } = what
      await writeClosure(tx, audit, at, { bayId, fromAt, toAt, reason: '', accepted: true })
    }
    if (what.kind === 'away') {
      const { crewId, fromAt, toAt } = what
      await writeAbsence(tx, audit, at, { crewId, fromAt, toAt, reason: '', accepted: true })
    }
    return moved
  })
  await whatIfRuns.drop(desk.store)
  return { cars }
}

/** The cars that can move now: not the rush car, which is not booked, nor one that would move only for it. */
function movable({ task, laying }: Run<Asked>): string[] {
  const changes = changesOf(task, laying?.plan ?? {})
  return changes
    .map(change => change.jobId)
    .filter(id => ![...together(changes, [id])].some(each => each === rushId))
}
