import { useQuery } from '@tanstack/react-query'
import { monthNames } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { Earned } from '../../../main/domain/money/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { ScreenTitle } from '../../parts/ScreenTitle.tsx'
import { Table } from '../../parts/Table.tsx'
import { Waiting } from '../../parts/Waiting.tsx'
import { Bar } from './Bar.tsx'
import styles from './Money.module.css'

const hours = (minutes: number) => `${Math.round(minutes / 60)} h`

/** What each treatment, person and month brought in, for each hour of a bay. */
export function Earns() {
  const { data, error } = useQuery(trpc.money.earns.queryOptions())
  if (!data) return <Waiting error={error} words={say('Adding it up')} />
  const show = (minor: number) => money(minor, data.currency)
  const { whole } = data
  const months = data.months.map(each => ({ ...each, name: monthWords(each.name) }))
  return (
    <>
      <ScreenTitle title={say('What earns')}>
        {whole.perBayHourMinor !== null && (
          <b>{say('{perBayHourMinor} a bay hour', { perBayHourMinor: show(whole.perBayHourMinor) })}</b>
        )}
        <span className={pieces.soft}>
          {say('{visits} {visits, plural, one {visit} other {visits}} of the last twelve months, tax aside', {
            visits: whole.visits,
          })}
        </span>
      </ScreenTitle>
      {whole.visits === 0 && (
        <p className={pieces.empty}>
          {say('Nothing to add up yet: it counts the cars that were handed over.')}
        </p>
      )}
      {whole.visits > 0 && (
        <>
          <div className={pieces.two}>
            <Bars title={say('Treatments')} rows={data.treatments} show={show} />
            <div className={pieces.column}>
              <Bars title={say('Crew')} rows={data.crew} show={show} />
              <Bars title={say('Months')} rows={months} show={show} />
            </div>
          </div>
          <p className={pieces.soft}>
            {data.overnightMinor !== null &&
              `${say('Cures outside opening hours: {overnightMin}, worth {overnightMinor} of bay time.', { overnightMin: hours(data.overnightMin), overnightMinor: show(data.overnightMinor) })} `}
            {data.labourMinor === 0 &&
              `${say('Work counts nothing: what an hour costs is set under Settings, Prices and tax.')} `}
            {say('A visit of several treatments is shared out by what each brought in.')}
          </p>
          <Figures title={say('Treatments')} rows={data.treatments} show={show} />
          <Figures title={say('Crew')} rows={data.crew} show={show} />
          <Figures title={say('Months')} rows={months} show={show} />
        </>
      )}
    </>
  )
}

/** "2026-04" is "April 2026". */
function monthWords(month: string): string {
  const [year, number] = month.split('-')
  return `${say(monthNames[Number(number) - 1]!)} ${year}`
}

interface Props {
  title: string
  rows: readonly Earned[]
  show(minor: number): string
}

function Bars({ title, rows, show }: Props) {
  const most = Math.max(1, ...rows.map(row => row.perBayHourMinor ?? 0))
  return (
    <Card title={title} about={say('contribution a bay hour, blocked hours included')}>
      <div className={styles.bars}>
        {rows.map(row => (
          <Bar
            key={row.name}
            name={row.few ? `${row.name} (${row.visits})` : row.name}
            share={Math.max(0, row.perBayHourMinor ?? 0) / most}
            amount={row.perBayHourMinor === null ? '—' : show(row.perBayHourMinor)}
          />
        ))}
      </div>
      {rows.some(row => row.few) && (
        <p className={pieces.soft}>{say('In brackets: too few visits to lean on.')}</p>
      )}
    </Card>
  )
}

function Figures({ title, rows, show }: Props) {
  return (
    <Card>
      <details>
        <summary>{say('{title} in figures', { title })}</summary>
        <Table
          rows={rows}
          keyOf={row => row.name}
          columns={[
            { head: title, cell: row => row.name },
            { head: say('Visits'), number: true, cell: row => row.visits },
            { head: say('Revenue'), number: true, cell: row => show(row.revenueMinor) },
            { head: say('Chemicals'), number: true, cell: row => show(row.chemicalsMinor) },
            { head: say('Labour'), number: true, cell: row => show(row.labourMinor) },
            { head: say('Contribution'), number: true, cell: row => show(row.contributionMinor) },
            {
              head: say('Bay, blocked'),
              number: true,
              cell: row => `${hours(row.bayMin)}, ${hours(row.blockedMin)}`,
            },
          ]}
        />
      </details>
    </Card>
  )
}
