import { Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import { dateOf } from '../../../main/domain/calendar/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useNowAt } from '../../data/now.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { DateField } from '../../parts/DateField.tsx'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { Facts } from '../../parts/Facts.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { ScreenTitle } from '../../parts/ScreenTitle.tsx'
import { Table } from '../../parts/Table.tsx'
import { clockWords, fullDateWords } from '../../parts/time.ts'
import { Waiting } from '../../parts/Waiting.tsx'
import { Bar } from './Bar.tsx'
import styles from './Money.module.css'
import { methodWords } from './words.ts'

/** What came in today, or on another day, and the journal for the bookkeeper. */
export function Takings() {
  const nowAt = useNowAt()
  const { zone } = useShop()
  return nowAt === null ? null : <Day today={dateOf(nowAt, zone)} />
}

function Day({ today }: { today: string }) {
  const [date, setDate] = useState(today)
  const [from, setFrom] = useState(`${today.slice(0, 8)}01`)
  const [to, setTo] = useState(today)
  const { data: day, error } = useQuery({
    ...trpc.money.takings.queryOptions({ date }),
    placeholderData: before => before,
  })
  if (!day) return <Waiting error={error} words={say('Counting it')} />
  const show = (minor: number) => money(minor, day.currency)
  const most = Math.max(1, ...day.ways.map(way => Math.abs(way.minor)))
  return (
    <>
      <ScreenTitle title={say('Takings')}>
        <b>{show(day.totalMinor)}</b>
        <DateField aria-label={say('Day')} value={date} onChange={setDate} w={170} />
      </ScreenTitle>
      <div className={pieces.two}>
        <Card title={fullDateWords(day.date)}>
          <div className={styles.bars}>
            {day.ways.map(way => (
              <Bar
                key={way.method}
                name={methodWords[way.method]}
                share={Math.abs(way.minor) / most}
                amount={show(way.minor)}
              />
            ))}
          </div>
          <Facts
            of={{
              [say('Deposits in it')]: show(day.depositsMinor),
              [say('Tips in it')]: show(day.tipsMinor),
              [say('Cash rounding')]: day.roundingMinor !== 0 && show(day.roundingMinor),
              [say('Issued')]: say('{count, plural, one {1 invoice} other {{count} invoices}}, {amount}', {
                count: day.invoices.count,
                amount: show(day.invoices.minor),
              }),
              [say('Credited')]: day.credits.count > 0 && show(day.credits.minor),
            }}
          />
        </Card>
        <Card title={say('Journal for the bookkeeper')} about={say('double entry, as a list')}>
          <Group align="end">
            <DateField label={say('From')} value={from} onChange={setFrom} w={170} />
            <DateField label={say('To')} value={to} onChange={setTo} w={170} />
            <DocumentButton path={`/documents/journal.csv?fromDate=${from}&toDate=${to}`}>
              {say('Save as CSV')}
            </DocumentButton>
          </Group>
        </Card>
      </div>
      <Card title={say('Payments')}>
        <Table
          rows={day.payments}
          keyOf={each => each.id}
          empty={say('Nothing came in on this day: payments are taken on a job’s bill.')}
          columns={[
            { head: say('At'), cell: each => clockWords(each.at, day.zone) },
            {
              head: say('From||whom'),
              cell: each => (
                <Link to="/money/$section/$id" params={{ section: 'bill', id: each.jobId }}>
                  {each.customerName}
                </Link>
              ),
              small: each =>
                [
                  say('job {jobNumber}', { jobNumber: each.jobNumber }),
                  each.before && say('deposit'),
                  each.note,
                ]
                  .filter(Boolean)
                  .join(' · '),
            },
            { head: say('How||it is paid'), cell: each => methodWords[each.method] },
            { head: say('Amount'), number: true, cell: each => show(each.amountMinor) },
            {
              head: say('Tip'),
              number: true,
              cell: each => (each.tipMinor === 0 ? '' : show(each.tipMinor)),
            },
          ]}
        />
      </Card>
    </>
  )
}
