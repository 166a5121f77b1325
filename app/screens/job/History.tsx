import type { JobView } from '../../../main/api/views.ts'
import pieces from '../../parts/pieces.module.css'
import { longWords } from '../../parts/time.ts'

/** Who did what when, newest first. */
export function History({ job }: { job: JobView }) {
  return (
    <details className={pieces.card}>
      <summary>History ({job.history.length})</summary>
      <ol className={pieces.soft}>
        {job.history.map(line => (
          <li key={`${line.at}-${line.words}`}>
            {longWords(line.at, job.zone, job.nowAt)} · {line.who} · {line.words}
          </li>
        ))}
      </ol>
    </details>
  )
}
