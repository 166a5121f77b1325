import { Link } from '@tanstack/react-router'
import type { BoardView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Say } from '../../parts/Say.tsx'
import { longWords } from '../../parts/time.ts'
import styles from './Board.module.css'

/** Cars whose promise no longer holds or that somebody is missing for, each with the way to its offer and message. */
export function SlipStrip({ board }: { board: BoardView }) {
  if (board.slips.length === 0) return null
  return (
    <ul className={styles.slips} aria-label={say('Promises that slip')}>
      {board.slips.map(slip => (
        <li key={slip.jobId}>
          <Say
            text="<b>⚑ {plate}</b> promised {promisedAt}"
            values={{ plate: slip.plate, promisedAt: longWords(slip.promisedAt, board.zone) }}
          />
          {slip.unfetchedAt !== null &&
            `${say(', ready since {unfetchedAt}, not fetched.', { unfetchedAt: longWords(slip.unfetchedAt, board.zone) })} `}
          {slip.unfetchedAt !== null
            ? ''
            : slip.late
              ? `${say(', now expected {handoverAt}.', { handoverAt: longWords(slip.handoverAt, board.zone) })} `
              : '. '}
          {slip.uncovered}{' '}
          <Link to="/jobs/$id" params={{ id: slip.jobId }}>
            {slip.unfetchedAt !== null ? say('Call') : say('Plan it again, tell')} {slip.customerName}
          </Link>
        </li>
      ))}
    </ul>
  )
}
