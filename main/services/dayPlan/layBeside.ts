import { setTimeout as after } from 'node:timers/promises'
import { Worker } from 'node:worker_threads'
import type { RelayTask } from '../../domain/relay/index.ts'
import type { Laying } from '../../domain/schedule/index.ts'
import type { Pace } from '../desk/beside.ts'

/** Bundled, the thread's program is a file beside this one. */
const program = import.meta.url.endsWith('.ts') ? './layThread.ts' : './layThread.mjs'

/** How often it is asked whether to stop, in milliseconds: a stop is to take less than a tenth of a second. */
const lookMs = 20

/**
 * Lays the floor in a thread of its own and tells each time it is further; ends when the plan is proven, or soon after
 * somebody asks it to. A thread can be ended in the middle of anything: what it told last stands.
 */
export async function layBeside(task: RelayTask, pace: Pace, tell: (laying: Laying) => void): Promise<void> {
  const thread = new Worker(new URL(program, import.meta.url), { workerData: task })
  let ended = false
  let failed: unknown = null
  thread.on('message', tell)
  thread.once('error', error => {
    failed = error
  })
  thread.once('exit', () => {
    ended = true
  })
  try {
    while (!ended) {
      await after(lookMs)
      if (!(await pace.turn())) break
    }
  } finally {
    await thread.terminate()
  }
  if (failed !== null) throw failed
}
