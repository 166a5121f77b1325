import { Worker } from 'node:worker_threads'
import { say } from '../../domain/language/index.ts'
import { refuse } from '../../domain/refusal.ts'

/** Bundled, the thread's program is a file beside this one. */
const program = import.meta.url.endsWith('.ts') ? './xlsxThread.ts' : './xlsxThread.mjs'

/** Several times what a sheet of 50,000 rows takes. */
const usualLimits = { ms: 60_000, mb: 1_024 }

type Answer = { grid: string[][] } | { unread: true } | { message: string }

/**
 * The cells of an XLSX file's first sheet that has any, read in a thread of its own: unpacking takes seconds, and a file
 * that unpacks to more than any list holds ends the thread, not the desk.
 */
export async function sheetsBeside(bytes: Uint8Array, most = usualLimits): Promise<string[][]> {
  const answer = await new Promise<Answer>(resolve => {
    const thread = new Worker(new URL(program, import.meta.url), {
      workerData: bytes,
      resourceLimits: { maxOldGenerationSizeMb: most.mb },
    })
    const failed = (message: string) => {
      resolve({ message })
      void thread.terminate()
    }
    const timer = setTimeout(() => failed(say('It takes too long to read.')), most.ms)
    thread.once('message', (given: Answer) => {
      clearTimeout(timer)
      resolve(given)
      void thread.terminate()
    })
    thread.once('error', () => failed(say('It is damaged, or larger than a list can be.')))
    thread.once('exit', () => {
      clearTimeout(timer)
      resolve({ message: say('It could not be read.') })
    })
  })
  if ('grid' in answer) return answer.grid
  return refuse(
    'file-bad',
    { base64: null },
    say('This spreadsheet cannot be read. {message} Save it as XLSX or CSV again, and choose that.', {
      message: 'message' in answer ? answer.message : say('It is damaged or no spreadsheet.'),
    }),
  )
}
