import type { BatchView } from '../../../../main/api/views.ts'
import styles from '../Upkeep.module.css'

/** Who is due and is not written to, and why: usually for the desk to mend. */
export function NotWritten({ lines }: { lines: BatchView['notWritten'] }) {
  if (lines.length === 0) return null
  return (
    <section className={styles.card} aria-labelledby="not-written">
      <h2 id="not-written">
        Due, and not written to <small>{lines.length}</small>
      </h2>
      <table className={styles.table}>
        <thead>
          <tr>
            <th scope="col">Car</th>
            <th scope="col">Visit</th>
            <th scope="col">Why not</th>
          </tr>
        </thead>
        <tbody>
          {lines.map(line => (
            <tr key={`${line.planId} ${line.ruleOn}`}>
              <td>
                {line.plate} <small>{line.customerName}</small>
              </td>
              <td>{line.title}</td>
              <td>{line.why}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  )
}
