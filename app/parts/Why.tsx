import type { ReactNode } from 'react'
import { say } from '../../main/domain/language/index.ts'
import pieces from './pieces.module.css'
import styles from './Why.module.css'

/** The one reason that binds, and the rest behind "why". */
export function Why({ line, rest }: { line: ReactNode; rest: readonly string[] }) {
  return (
    <div className={styles.why}>
      {rest.length === 0 ? (
        line
      ) : (
        <details>
          <summary>
            {line} <span className={`${styles.more} ${pieces.unprinted}`}>{say('why')}</span>
          </summary>
          <ul>
            {rest.map(words => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </details>
      )}
    </div>
  )
}
