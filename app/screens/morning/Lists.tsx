import { Link } from '@tanstack/react-router'
import type { ReactNode } from 'react'
import type { MorningView } from '../../../main/api/views.ts'
import { isAmiss, standingWords } from '../../../main/domain/floor/index.ts'
import { say } from '../../../main/domain/language/index.ts'
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
      <List title={say('Coming in')} empty={say('Nobody is due.')}>
        {sheet.arrivals.map(car => {
          const missing = car.arrivedAt === null && car.dueAt < nowAt
          return (
            <Line key={car.jobId} time={when(car.dueAt)} car={car}>
              {car.arrivedAt !== null ? (
                <span className={pieces.kept}>{say('✓ here')}</span>
              ) : (
                <>
                  {missing && <b className={pieces.late}>{say('⚑ not here')} </b>}
                  {car.customerName} <Phone number={car.phone} />{' '}
                  {say('to {bayName}', { bayName: car.bayName })}
                  {car.lent.length > 0 && say(', gets {lent}', { lent: listWords(car.lent) })}
                </>
              )}
            </Line>
          )
        })}
      </List>
      <List title={say('Going home')} empty={say('No car goes home today.')}>
        {sheet.handovers.map(car => (
          <Line key={car.jobId} time={when(car.leftAt ?? car.handoverAt)} car={car}>
            {car.leftAt !== null ? (
              <span className={pieces.kept}>{say('✓ gone')}</span>
            ) : (
              <>
                {isAmiss(car) && <b className={pieces.late}>{standingWords(car, when)} </b>}
                {car.customerName} <Phone number={car.phone} />
                {car.lent.length > 0 && say(', brings back {lent}', { lent: listWords(car.lent) })}
              </>
            )}
          </Line>
        ))}
      </List>
      {sheet.toAsk.length > 0 && (
        <List title={say('Ask today')} empty="">
          {sheet.toAsk.map(ask => (
            <Line key={`${ask.jobId}-${ask.at}-${ask.name}`} time={when(ask.at)} car={ask}>
              {say('{name} for {step}', { name: ask.name, step: ask.step })}
            </Line>
          ))}
        </List>
      )}
      <List title={say('Hands off until')} empty={say('No car is curing.')}>
        {sheet.cures
          .filter(cure => cure.touchAt > nowAt)
          .map(cure => (
            <Line key={`${cure.jobId}-${cure.touchAt}`} time={when(cure.touchAt)} car={cure}>
              {cure.bayName}
              {!cure.marks.actual && say(', as planned')}
            </Line>
          ))}
      </List>
      <List title={say('Milestones')} empty={say('No coat reaches one today.')}>
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
