import { Alert, Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { SpreadView, WeekView } from '../../../../main/api/views.ts'
import { useAct } from '../../../data/saving.ts'
import { faultOf, trpc } from '../../../data/trpc.ts'
import { faultsOf } from '../../../parts/faults.ts'
import { dateWords } from '../../../parts/time.ts'
import styles from '../Upkeep.module.css'
import type { Acts } from '../useActs.tsx'
import own from './Year.module.css'
import { YearChart } from './YearChart.tsx'

/** The coming year of visits against the room for them, as it stands and as the spread would have it. */
export function Year({ acts }: { acts: Acts }) {
  const [spreading, setSpreading] = useState(false)
  const query = useQuery(trpc.upkeep.year.queryOptions())
  const preview = useQuery({ ...trpc.upkeep.spread.preview.queryOptions(), enabled: spreading })
  const applying = useAct(trpc.upkeep.spread.carryOut.mutationOptions())
  const year = query.data
  if (query.error) return <Alert color="red">{faultOf(query.error).message}</Alert>
  if (!year) return <p className={styles.soft}>Counting the year’s visits …</p>
  const spread = spreading ? preview.data : undefined
  const words = faultsOf(applying.error ?? preview.error).rest()
  const total = year.weeks.reduce((sum, week) => sum + week.asDue, 0)
  const close = () => {
    setSpreading(false)
    applying.reset()
  }
  return (
    <section className={styles.card} aria-labelledby="year">
      <Group justify="space-between" align="start" wrap="nowrap">
        <h2 id="year">
          The year{' '}
          <small>
            {total === 1 ? '1 visit' : `${total} visits`} due and not booked
            {year.failed.length > 0 && `, ${year.failed.length} left out that cannot be worked out`} ·{' '}
            {year.roomWords}
          </small>
        </h2>
        {!spreading && (
          <Button
            variant="default"
            size="compact-sm"
            flex="none"
            onClick={() => setSpreading(true)}
            disabled={total === 0}
          >
            Spread the load
          </Button>
        )}
      </Group>
      <YearChart
        weeks={spread?.weeks ?? year.weeks}
        before={spread ? year.weeks.map(week => week.planned) : null}
      />
      {spreading && (
        <section className={styles.stack} aria-label="Spread the load">
          {preview.isFetching && !spread && <p className={styles.soft}>Finding a week for every visit …</p>}
          {spread && <SpreadWords spread={spread} />}
          {words && (
            <Alert color="red" variant="outline" role="alert">
              {words}
            </Alert>
          )}
          <Group>
            {spread && spread.moves.length > 0 && (
              <Button
                loading={applying.busy}
                onClick={() =>
                  applying.run(act => {
                    acts.done(act)
                    close()
                  })
                }
              >
                Aim {spread.moves.length === 1 ? '1 visit' : `${spread.moves.length} visits`} at these weeks
              </Button>
            )}
            <Button variant="default" onClick={close}>
              Leave it as it is
            </Button>
          </Group>
        </section>
      )}
      <Weeks weeks={spread?.weeks ?? year.weeks} />
    </section>
  )
}

function SpreadWords({ spread }: { spread: SpreadView }) {
  const weeks = (count: number) => (count === 1 ? '1 week' : `${count} weeks`)
  const { moves, left } = spread
  return (
    <>
      <p>
        {moves.length === 0
          ? 'Every visit is aimed at its best week already.'
          : `${moves.length === 1 ? '1 visit is' : `${moves.length} visits are`} aimed at another week; taken together ` +
            `${weeks(spread.lateWeeks)} after and ${weeks(spread.earlyWeeks)} before they fall due. Due days and windows stay as they are.`}
      </p>
      {(spread.words.length > 0 || left.length > 0) && (
        <ul className={own.spreadWords}>
          {spread.words.map(each => (
            <li key={each}>{each}</li>
          ))}
          {left.map(visit => (
            <li key={`${visit.planId} ${visit.ruleOn}`}>
              <b>{visit.plate}</b> {visit.title}:{' '}
              {visit.because === 'full'
                ? 'every week of its window is full'
                : 'no week of its window is in this year'}
            </li>
          ))}
        </ul>
      )}
      {moves.length > 0 && (
        <details>
          <summary>Which visits</summary>
          <div className={own.weeks}>
            <table className={styles.table}>
              <thead>
                <tr>
                  <th scope="col">Car</th>
                  <th scope="col">Visit</th>
                  <th scope="col">Due</th>
                  <th scope="col">Aimed at, now</th>
                  <th scope="col">Would be</th>
                </tr>
              </thead>
              <tbody>
                {moves.map(move => (
                  <tr key={`${move.planId} ${move.ruleOn}`}>
                    <td>
                      {move.plate} <small>{move.customerName}</small>
                    </td>
                    <td>{move.title}</td>
                    <td>{dateWords(move.dueOn)}</td>
                    <td>{dateWords(move.fromOn)}</td>
                    <td>{dateWords(move.toOn)}</td>
                  </tr>
                ))}
              </tbody>
            </table>
          </div>
        </details>
      )}
    </>
  )
}

/** The picture's figures, for those who would rather read them. */
function Weeks({ weeks }: { weeks: readonly WeekView[] }) {
  return (
    <details>
      <summary>The weeks as a table</summary>
      <div className={own.weeks}>
        <table className={styles.table}>
          <thead>
            <tr>
              <th scope="col">Week</th>
              <th scope="col">From</th>
              <th scope="col" className={styles.number}>
                Due
              </th>
              <th scope="col" className={styles.number}>
                Aimed at
              </th>
              <th scope="col" className={styles.number}>
                Room
              </th>
            </tr>
          </thead>
          <tbody>
            {weeks.map(week => (
              <tr key={week.mondayOn}>
                <td>{week.week}</td>
                <td>{dateWords(week.mondayOn)}</td>
                <td className={styles.number}>{week.asDue}</td>
                <td className={styles.number}>
                  {week.planned > week.room && <span className={styles.late}>⚑ </span>}
                  {week.planned}
                </td>
                <td className={styles.number}>{week.room}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </details>
  )
}
