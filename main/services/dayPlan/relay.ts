/** The floor laid anew beside the desk: begun, looked at, stopped. Accepting it is an act of its own (accept.ts). */
import type { Desk } from '../desk/desk.ts'
import { loadFloor } from '../floor/loadFloor.ts'
import type { RelayInput } from './inputs.ts'
import { layable } from './relayFloor.ts'
import { laidView } from './relayView.ts'
import { runsOf } from './runs.ts'
import { lastTakeBack } from './takeBack.ts'

export type RelayView = Awaited<ReturnType<typeof relayStands>>

export const relayRuns = runsOf<RelayInput>()

/** Begins to lay the floor anew; what was found before is forgotten. */
export async function beginRelay(desk: Desk, input: RelayInput): Promise<{ runId: string }> {
  const nowAt = desk.now()
  const untilAt = nowAt + input.days * 1440
  const tx = desk.store.read
  const floor = await loadFloor(tx, nowAt, untilAt)
  const { task, cars } = await layable(tx, floor, untilAt)
  return relayRuns.begin(desk.store, { asked: input, startedAt: nowAt, task, cars })
}

/** How far it is and what it proposes; and what stays out of it. */
export async function relayStands(desk: Desk, { days }: RelayInput) {
  const nowAt = desk.now()
  const tx = desk.store.read
  const floor = await loadFloor(tx, nowAt, nowAt + days * 1440)
  const { run, working, failed } = relayRuns.stands(desk.store)
  const { pinned, cars, left } = await layable(tx, floor, nowAt + days * 1440)
  return {
    nowAt,
    zone: floor.zone,
    /** Cars that would be laid anew now. */
    coming: cars.length,
    left,
    pinned,
    broken: cars
      .filter(car => car.broken.length > 0)
      .map(({ jobId, plate, broken }) => ({ jobId, plate, words: broken.join(' ') })),
    failed,
    run: run && laidView(run, working, { bays: floor.bayNames, crew: floor.crewNames }),
    /** The last proposal accepted, where it can still be taken back. */
    takeBack: await lastTakeBack(tx),
  }
}

export function stopRelay(desk: Desk): Promise<void> {
  return relayRuns.stop(desk.store)
}

export function dropRelay(desk: Desk): Promise<void> {
  return relayRuns.drop(desk.store)
}
