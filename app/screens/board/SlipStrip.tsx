import { Link } from '@tanstack/react-router'
import type { BoardView } from '../../../main/api/views.ts'
import { longWords } from '../../parts/time.ts'
import styles from './Board.module.css'

/** Cars in the shop whose promise no longer holds, each with the way to its offer and its message. */
export function SlipStrip({ board }: { board: BoardView }) {
  const late = new Map(
    board.stays.filter(stay => stay.late && stay.status === 'inShop').map(stay => [stay.jobId, stay]),
  )
  if (late.size === 0) return null
  return (
    <ul className={styles.slips} aria-label="Promises that slip">
      {[...late.values()].map(stay => (
        <li key={stay.jobId}>
          <b>⚑ {stay.plate}</b> promised {longWords(stay.promisedAt, board.zone)}, as it stands{' '}
          {longWords(stay.handoverAt, board.zone)}.{' '}
          <Link to="/jobs/$id" params={{ id: stay.jobId }}>
            Plan it again, tell {stay.customerName}
          </Link>
        </li>
      ))}
    </ul>
  )
}
