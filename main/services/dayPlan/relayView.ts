import { say } from '../../domain/language/index.ts'
import { type CarChange, changesOf, presentCost, together } from '../../domain/relay/index.ts'
import { type FloorObjective, type Plan, staysOf } from '../../domain/schedule/index.ts'
import type { LaidCar, Run } from './runs.ts'

/** The names a proposal is told by. */
export interface Names {
  readonly bays: ReadonlyMap<string, string>
  readonly crew: ReadonlyMap<string, string>
}

export type LaidView = ReturnType<typeof laidView>
export type CarChangeView = LaidView['changes'][number]

/** How far a laying is and what it proposes, beside the floor as it stood when it began. */
export function laidView<Asked>(run: Run<Asked>, working: boolean, names: Names) {
  const { laying, cars, task } = run
  const plan = laying?.plan
  const changes = plan ? changesOf(task, plan) : []
  return {
    runId: run.id,
    startedAt: run.startedAt,
    working,
    stopped: run.stopped,
    cars: task.floor.jobs.length,
    /** Nothing better exists. Without a plan: nothing fits at all. */
    proven: laying?.proven ?? false,
    found: plan !== undefined,
    /** What all cars together cost as they stand, as proposed, and the least they can. */
    present: costsOf(presentCost(task)),
    objective: costsOf(laying?.objective),
    bound: costsOf(laying?.bound),
    /** Cars that cannot stay as they are. */
    broken: cars
      .filter(car => car.broken.length > 0)
      .map(({ jobId, plate, broken }) => ({ jobId, plate, words: broken.join(' ') })),
    changes: changes.map(change => changeView(change, changes, cars, names)),
  }
}

function costsOf(cost: FloorObjective | undefined) {
  if (!cost) return null
  const { weightedTardiness, blockedOpen, moves, changes = 0 } = cost
  return { lateMin: weightedTardiness, blockedMin: blockedOpen, moves, changes }
}

function changeView(change: CarChange, all: readonly CarChange[], cars: readonly LaidCar[], names: Names) {
  const car = cars.find(one => one.jobId === change.jobId)
  return {
    jobId: change.jobId,
    version: car?.version ?? null,
    plate: car?.plate ?? say('The rush car'),
    vehicle: car?.vehicle ?? '',
    customerName: car?.customerName ?? '',
    promisedAt: car?.promisedAt ?? null,
    was: change.was,
    becomes: change.becomes,
    from: change.from && placeView(change.from, names),
    to: placeView(change.to, names),
    /** Nobody outside notices: only bays or people inside differ. */
    sameTimes:
      change.from !== null &&
      change.from.steps[0]?.start === change.to.steps[0]?.start &&
      change.from.handover === change.to.handover,
    /** Everything that is accepted with it, itself not included. */
    with: [...together(all, [change.jobId])].filter(id => id !== change.jobId),
  }
}

/** A plan as a row says it: when it comes and goes, through which bays, by whom. */
function placeView(plan: Plan, { bays, crew }: Names) {
  const people = plan.steps.flatMap(step => [...step.crew, ...(step.help ?? [])])
  return {
    dropOffAt: plan.steps[0]!.start,
    handoverAt: plan.handover,
    bays: staysOf(plan).map(stay => bays.get(stay.bay) ?? ''),
    people: [...new Set(people)].map(id => crew.get(id) ?? ''),
  }
}
