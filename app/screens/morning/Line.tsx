import { Link } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import styles from './Morning.module.css'

interface Props {
  time: string
  car: { jobId: string; plate: string }
  children: ReactNode
}

/** One line of the sheet: when, which car, and what of it. */
export function Line({ time, car, children }: Props) {
  return (
    <div className={styles.line}>
      <b>{time}</b>
      <div>
        <Link to="/jobs/$id" params={{ id: car.jobId }} className={styles.plate}>
          {car.plate}
        </Link>
        <small>{children}</small>
      </div>
    </div>
  )
}
