import type { JobView } from '../../../main/api/views.ts'
import { longWords } from '../../parts/time.ts'
import styles from './Job.module.css'

/** Who did what when, newest first. */
export function History({ job }: { job: JobView }) {
  return (
    <details className={styles.card}>
      <summary>History ({job.history.length})</summary>
      <ol className={styles.history}>
        {job.history.map(line => (
          <li key={`${line.at}-${line.words}`}>
            {longWords(line.at, job.zone, job.nowAt)} · {line.who} · {line.words}
          </li>
        ))}
      </ol>
    </details>
  )
}
