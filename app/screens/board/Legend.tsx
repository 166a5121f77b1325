import styles from './Board.module.css'
import { diamond, triangle } from './layers/Blocks.tsx'

/** What the shapes mean; none of them by colour alone. */
export function Legend() {
  return (
    <div className={styles.legend} aria-hidden="true">
      <span>
        <svg width="26" height="14" role="presentation">
          <rect className={styles.work} width="26" height="12" y="1" rx="2" />
        </svg>
        hands on
      </span>
      <span>
        <svg width="26" height="14" role="presentation">
          <path className={styles.hold} d="M0 13C5 5 12 3 26 2V13Z" />
        </svg>
        cure
      </span>
      <span>
        <svg width="26" height="14" role="presentation">
          <rect className={styles.wait} width="26" height="12" y="1" />
        </svg>
        waits in the bay
      </span>
      <Mark path={triangle(7, 7, 4)}>touch</Mark>
      <Mark path={diamond(7, 7, 4.6)}>topper</Mark>
      <span>
        <svg width="14" height="14" role="presentation">
          <circle className={styles.mark} cx="7" cy="7" r="4" />
        </svg>
        may leave
      </span>
    </div>
  )
}

function Mark({ path, children }: { path: string; children: string }) {
  return (
    <span>
      <svg width="14" height="14" role="presentation">
        <path className={styles.mark} d={path} />
      </svg>
      {children}
    </span>
  )
}
