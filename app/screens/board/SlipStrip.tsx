import { Link } from '@tanstack/react-router'
import type { BoardView } from '../../../main/api/views.ts'
import { longWords } from '../../parts/time.ts'
import styles from './Board.module.css'

/** Cars whose promise no longer holds or that somebody is missing for, each with the way to its offer and message. */
export function SlipStrip({ board }: { board: BoardView }) {
  if (board.slips.length === 0) return null
  return (
    <ul className={styles.slips} aria-label="Promises that slip">
      {board.slips.map(slip => (
        <li key={slip.jobId}>
          <b>⚑ {slip.plate}</b> promised {longWords(slip.promisedAt, board.zone)}
          {slip.unfetchedAt !== null &&
            `, ready since ${longWords(slip.unfetchedAt, board.zone)}, not fetched. `}
          {slip.unfetchedAt !== null
            ? ''
            : slip.late
              ? `, now expected ${longWords(slip.handoverAt, board.zone)}. `
              : '. '}
          {slip.uncovered}{' '}
          <Link to="/jobs/$id" params={{ id: slip.jobId }}>
            {slip.unfetchedAt !== null ? 'Call' : 'Plan it again, tell'} {slip.customerName}
          </Link>
        </li>
      ))}
    </ul>
  )
}
