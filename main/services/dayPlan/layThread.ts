/* Runs beside the desk, for layBeside.ts: lays the floor it was given and tells what it has found so far. */
import { parentPort, workerData } from 'node:worker_threads'
import type { RelayTask } from '../../domain/relay/index.ts'
import { layFloor } from '../../domain/schedule/index.ts'

/** How often it tells how far it is where nothing better was found, in milliseconds. */
const everyMs = 200

const { floor, present } = workerData as RelayTask
const search = layFloor(floor, { present })
let toldPlan: unknown = null
let toldAt = 0
for (;;) {
  const { value, done } = search.next()
  const now = performance.now()
  if (done || value.plan !== toldPlan || now - toldAt > everyMs) {
    parentPort?.postMessage(value)
    toldPlan = value.plan
    toldAt = now
  }
  if (done) break
}
