import type { ReactNode } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import styles from './Board.module.css'
import legend from './Legend.module.css'
import { diamond, triangle } from './layers/Blocks.tsx'

/** What the shapes mean; none of them by colour alone. */
export function Legend() {
  return (
    <div className={legend.legend} aria-hidden="true">
      <Sign says={say('hands on')} width={26}>
        <rect className={styles.work} width="26" height="12" y="1" rx="2" />
      </Sign>
      <Sign says={say('cure')} width={26}>
        <path className={styles.hold} d="M0 13C5 5 12 3 26 2V13Z" />
      </Sign>
      <Sign says={say('waits in the bay')} width={26}>
        <rect className={styles.wait} width="26" height="12" y="1" />
      </Sign>
      <Sign says={say('touch')}>
        <path className={styles.mark} d={triangle(7, 7, 4)} />
      </Sign>
      <Sign says={say('topper')}>
        <path className={styles.mark} d={diamond(7, 7, 4.6)} />
      </Sign>
      <Sign says={say('pick-up')}>
        <circle className={styles.mark} cx="7" cy="7" r="4" />
      </Sign>
    </div>
  )
}

function Sign({ says, width = 14, children }: { says: string; width?: number; children: ReactNode }) {
  return (
    <span>
      <svg width={width} height="14" role="presentation">
        {children}
      </svg>
      {says}
    </span>
  )
}
