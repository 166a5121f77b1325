/* Runs beside the desk, for inspectBeside.ts: reads one database file over and sends back what it found. */
import { parentPort, workerData } from 'node:worker_threads'
import { inspect } from './inspect.ts'

try {
  parentPort?.postMessage({ findings: inspect(workerData as string) })
} catch (error) {
  const { message, code } = error as Error & { code?: string }
  parentPort?.postMessage({ message, code })
}
