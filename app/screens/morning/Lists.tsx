import { Link } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import type { MorningView } from '../../../main/api/views.ts'
import { listWords } from '../../../main/domain/words.ts'
import pieces from '../../parts/pieces.module.css'
import { clockWords, nearWords } from '../../parts/time.ts'
import styles from './Morning.module.css'

interface LineProps {
  time: string
  car: { jobId: string; plate: string }
  children?: ReactNode
}

/** One line: when, which car, and what of it. */
function Line({ time, car, children }: LineProps) {
  return (
    <li>
      <b>{time}</b>{' '}
      <Link to="/jobs/$id" params={{ id: car.jobId }} className={styles.plate}>
        {car.plate}
      </Link>{' '}
      <span>{children}</span>
    </li>
  )
}

/** A number is dialled off the sheet: it stays in one piece. */
function Phone({ number }: { number: string | null }) {
  return number === null ? null : <span className={styles.phone}>{number}</span>
}

function List({ title, empty, children }: { title: string; empty: string; children: ReactNode[] }) {
  return (
    <section className={styles.list}>
      <h2>{title}</h2>
      {children.length === 0 ? <p>{empty}</p> : <ul>{children}</ul>}
    </section>
  )
}

/** Who comes and goes, and which cars are not touched until when: red for what is wrong, and for nothing else. */
export function Lists({ sheet }: { sheet: MorningView }) {
  const { zone, nowAt, fromAt, toAt } = sheet
  const when = (at: number) => (at >= fromAt && at < toAt ? clockWords(at, zone) : nearWords(at, zone, nowAt))
  return (
    <div className={styles.lists}>
      <List title="Coming in" empty="Nobody is due.">
        {sheet.arrivals.map(car => {
          const missing = car.arrivedAt === null && car.dueAt < nowAt
          return (
            <Line key={car.jobId} time={when(car.dueAt)} car={car}>
              {car.arrivedAt !== null ? (
                <span className={pieces.kept}>✓ here</span>
              ) : (
                <>
                  {missing && <b className={pieces.late}>⚑ not here </b>}
                  {car.customerName} <Phone number={car.phone} /> to {car.bayName}
                  {car.lent.length > 0 && `, gets ${listWords(car.lent)}`}
                </>
              )}
            </Line>
          )
        })}
      </List>
      <List title="Going home" empty="No car goes home today.">
        {sheet.handovers.map(car => (
          <Line key={car.jobId} time={when(car.leftAt ?? car.handoverAt)} car={car}>
            {car.leftAt !== null ? (
              <span className={pieces.kept}>✓ gone</span>
            ) : (
              <>
                {car.late && <b className={pieces.late}>⚑ late, promised {when(car.promisedAt)} </b>}
                {car.unfetchedAt !== null && (
                  <b className={pieces.late}>⚑ not fetched since {when(car.unfetchedAt)} </b>
                )}
                {car.uncovered && <b className={pieces.late}>⚑ {car.uncovered} </b>}
                {car.customerName} <Phone number={car.phone} />
                {car.lent.length > 0 && `, brings back ${listWords(car.lent)}`}
              </>
            )}
          </Line>
        ))}
      </List>
      {sheet.toAsk.length > 0 && (
        <List title="Ask today" empty="">
          {sheet.toAsk.map(ask => (
            <Line key={`${ask.jobId}-${ask.at}-${ask.name}`} time={when(ask.at)} car={ask}>
              {ask.name} for {ask.step}
            </Line>
          ))}
        </List>
      )}
      <List title="Hands off until" empty="No car is curing.">
        {sheet.cures
          .filter(cure => cure.touchAt > nowAt)
          .map(cure => (
            <Line key={`${cure.jobId}-${cure.touchAt}`} time={when(cure.touchAt)} car={cure}>
              {cure.bayName}
              {!cure.marks.actual && ', as planned'}
            </Line>
          ))}
      </List>
      <List title="Milestones" empty="No coat reaches one today.">
        {sheet.moments
          .filter(moment => moment.at >= nowAt && !moment.what.startsWith('▲'))
          .map(moment => (
            <Line key={`${moment.jobId}-${moment.at}-${moment.what}`} time={when(moment.at)} car={moment}>
              {moment.what}
            </Line>
          ))}
      </List>
    </div>
  )
}
