import { Link } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import styles from './Morning.module.css'

/** A titled part of the sheet; says so where it has nothing to say. */
export function Card({
  title,
  about,
  empty,
  children,
}: {
  title: string
  about?: string
  empty: string | null
  children: ReactNode
}) {
  return (
    <section className={styles.card}>
      <h2>
        {title} {about && <small>{about}</small>}
      </h2>
      {empty ? <p className={styles.soft}>{empty}</p> : children}
    </section>
  )
}

/** One line: when, which car, and what of it. */
export function Line({
  time,
  jobId,
  plate,
  children,
}: {
  time: string
  jobId: string
  plate: string
  children: ReactNode
}) {
  return (
    <div className={styles.line}>
      <b>{time}</b>
      <div>
        <Link to="/jobs/$id" params={{ id: jobId }} className={styles.plate}>
          {plate}
        </Link>
        <small>{children}</small>
      </div>
    </div>
  )
}
