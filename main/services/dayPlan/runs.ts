/** The laying of the floor that is under way or was last, one for each database; nothing of it is kept on disk. */

import { randomUUID } from 'node:crypto'
import { say } from '../../domain/language/index.ts'
import type { RelayTask } from '../../domain/relay/index.ts'
import type { Laying } from '../../domain/schedule/index.ts'
import type { Store } from '../../store/store.ts'
import { besideDesk } from '../desk/beside.ts'
import { layBeside } from './layBeside.ts'

/** What is kept of a car that is laid, as it was when the laying began. */
export interface LaidCar {
  readonly jobId: string
  readonly version: number
  readonly plate: string
  readonly vehicle: string
  readonly customerName: string
  readonly promisedAt: number
  readonly handoverAt: number
  readonly stepNames: readonly string[]
  /** Why it cannot stay as it is, in sentences; none: it can. */
  readonly broken: readonly string[]
}

export interface Run<Asked> {
  readonly id: string
  readonly asked: Asked
  readonly startedAt: number
  readonly task: RelayTask
  readonly cars: readonly LaidCar[]
  /** How far it is; null: nothing has been heard of it yet. */
  laying: Laying | null
  stopped: boolean
}

export type NewRun<Asked> = Omit<Run<Asked>, 'id' | 'laying' | 'stopped'>

/** One kind of laying: what was asked of it goes along. */
export function runsOf<Asked>() {
  const runs = new WeakMap<Store, Run<Asked>>()
  const work = besideDesk<null>(() =>
    say(
      'The floor could not be laid on this computer. Start again; if it stays so, tell whoever looks after the app.',
    ),
  )
  return {
    /** Begins a new one in place of what there is. */
    async begin(store: Store, run: NewRun<Asked>): Promise<{ runId: string }> {
      await work.stop(store)
      const now: Run<Asked> = { ...run, id: randomUUID(), laying: null, stopped: false }
      runs.set(store, now)
      work.begin(store, async pace => {
        await layBeside(now.task, pace, laying => {
          now.laying = laying
        })
        return null
      })
      return { runId: now.id }
    },
    async stop(store: Store): Promise<void> {
      const run = runs.get(store)
      if (run && work.stands(store).working) run.stopped = true
      await work.stop(store)
    },
    /** Forgets what was found; stops it where it is under way. */
    async drop(store: Store): Promise<void> {
      await work.stop(store)
      runs.delete(store)
    },
    ends: (store: Store) => work.ends(store),
    stands(store: Store) {
      const { working, failed } = work.stands(store)
      return { run: runs.get(store) ?? null, working: working !== null, failed }
    },
  }
}
