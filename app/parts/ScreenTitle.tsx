import type { ReactNode } from 'react'
import styles from './ScreenTitle.module.css'

/** The head of a screen, with what stands beside it. */
export function ScreenTitle({ title, children }: { title: string; children?: ReactNode }) {
  return (
    <div className={styles.title}>
      <h1>{title}</h1>
      {children}
    </div>
  )
}
