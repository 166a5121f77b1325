import type { ReactNode } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import styles from './Upkeep.module.css'

/** What was done last, in words. */
export function ActsBar({ children }: { children: ReactNode }) {
  return (
    <div role="status" aria-label={say('Last act')} className={styles.acts}>
      {children}
    </div>
  )
}
