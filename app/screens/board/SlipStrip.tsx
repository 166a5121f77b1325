import { Link } from '@tanstack/react-router'
import type { BoardView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import pieces from '../../parts/pieces.module.css'
import { Say } from '../../parts/Say.tsx'
import { longWords } from '../../parts/time.ts'
import styles from './Board.module.css'

/** Cars whose promise no longer holds or that somebody is missing for, each with the way to its offer and message. */
export function SlipStrip({ board }: { board: BoardView }) {
  if (board.slips.length === 0) return null
  return (
    <ul className={styles.slips} aria-label={say('Promises that will not be kept')}>
      {board.slips.map((slip, i) => (
        <li key={slip.jobId}>
          <Standing slip={slip} zone={board.zone} /> {slip.lack}{' '}
          <span className={pieces.unprinted}>
            <Link to="/jobs/$id" params={{ id: slip.jobId }}>
              {slip.unfetchedAt !== null
                ? say('Call {customerName}', { customerName: slip.customerName })
                : say('Plan it again, tell {customerName}', { customerName: slip.customerName })}
            </Link>
            {i === board.slips.length - 1 && (
              <>
                {' · '}
                <Link to="/plan/$section" params={{ section: 'mend' }}>
                  {say('All options')}
                </Link>
              </>
            )}
          </span>
        </li>
      ))}
    </ul>
  )
}

/** What was promised, and how that stands. */
function Standing({ slip, zone }: { slip: BoardView['slips'][number]; zone: string }) {
  const values = { plate: slip.plate, promisedAt: longWords(slip.promisedAt, zone) }
  if (slip.unfetchedAt !== null)
    return (
      <Say
        text="<b>⚑ {plate}</b> promised {promisedAt}, ready since {unfetchedAt}, not fetched."
        values={{ ...values, unfetchedAt: longWords(slip.unfetchedAt, zone) }}
      />
    )
  if (slip.standing === 'late')
    return (
      <Say
        text="<b>⚑ {plate}</b> promised {promisedAt}, now expected {handoverAt}."
        values={{ ...values, handoverAt: longWords(slip.handoverAt, zone) }}
      />
    )
  return <Say text="<b>⚑ {plate}</b> promised {promisedAt}." values={values} />
}
