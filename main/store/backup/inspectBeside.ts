import { Worker } from 'node:worker_threads'
import { type Depth, type Findings, inspect } from './inspect.ts'

/** Bundled, the thread's program is a file beside this one. */
const program = import.meta.url.endsWith('.ts') ? './inspectThread.ts' : './inspectThread.mjs'

type Answer = { findings: Findings } | { message: string; code?: string }

/** `inspect` in a thread of its own: reading ten years takes seconds, and the desk is never deaf. */
export async function inspectBeside(file: string, depth: Depth = 'all'): Promise<Findings> {
  const answer = await new Promise<Answer | null>(resolve => {
    const thread = new Worker(new URL(program, import.meta.url), { workerData: { file, depth } })
    thread.once('message', resolve)
    // It answers whatever becomes of the file; without an answer, it is the thread that could not be had.
    thread.once('error', () => resolve(null))
    thread.once('exit', () => resolve(null))
  })
  if (answer === null) return inspect(file, depth)
  if ('findings' in answer) return answer.findings
  throw Object.assign(new Error(answer.message), { code: answer.code })
}
