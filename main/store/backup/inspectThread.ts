/* Runs beside the desk, for inspectBeside.ts: reads one database file over and sends back what it found. */
import { parentPort, workerData } from 'node:worker_threads'
import { type Depth, inspect } from './inspect.ts'

const { file, depth } = workerData as { file: string; depth: Depth }
try {
  parentPort?.postMessage({ findings: inspect(file, depth) })
} catch (error) {
  const { message, code } = error as Error & { code?: string }
  parentPort?.postMessage({ message, code })
}
