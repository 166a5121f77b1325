import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { say } from '../../../main/domain/language/index.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { ScreenTitle } from '../../parts/ScreenTitle.tsx'
import { Table } from '../../parts/Table.tsx'
import { dateWords } from '../../parts/time.ts'
import { Waiting } from '../../parts/Waiting.tsx'

const days = (count: number) => say('{count, plural, one {1 day} other {{count} days}}', { count })

/** The open invoices, the longest overdue first. */
export function Owed() {
  const { country } = useShop()
  const { data: owed, error } = useQuery(trpc.money.owed.queryOptions())
  if (!owed) return <Waiting error={error} words={say('Adding it up')} />
  const show = (minor: number) => money(minor, owed.currency)
  return (
    <>
      <ScreenTitle title={say('Owed')}>
        <b>{show(owed.owedMinor)}</b>
        {owed.overdueMinor > 0 && (
          <b className={pieces.late}>
            {say('⚑ {overdueMinor} overdue', { overdueMinor: show(owed.overdueMinor) })}
          </b>
        )}
      </ScreenTitle>
      <Card
        title={say('Open invoices')}
        about={
          owed.count > owed.open.length
            ? say('the first {open} of {count}', { open: owed.open.length, count: owed.count })
            : undefined
        }
      >
        <Table
          rows={owed.open}
          keyOf={each => each.jobId}
          empty={say('Nothing is owed. A job is billed from its page, under Bill.')}
          columns={[
            {
              head: say('Customer'),
              cell: each => (
                <Link to="/money/$section/$id" params={{ section: 'statement', id: each.customer.id }}>
                  {each.customer.name}
                </Link>
              ),
              small: ({ customer }) => customer.phone && showPhone(customer.phone, country),
            },
            {
              head: say('Invoice'),
              cell: each => (
                <Link to="/money/$section/$id" params={{ section: 'bill', id: each.jobId }}>
                  {each.name}
                </Link>
              ),
              small: each => each.carWords,
            },
            {
              head: say('To be paid by'),
              cell: each =>
                each.owedMinor < 0 ? (
                  say('to be paid back')
                ) : each.lateDays > 0 ? (
                  <b className={pieces.late}>
                    {say('⚑ {dueOn}, {lateDays} ago', {
                      dueOn: dateWords(each.dueOn),
                      lateDays: days(each.lateDays),
                    })}
                  </b>
                ) : (
                  dateWords(each.dueOn)
                ),
            },
            { head: say('Open||an amount'), number: true, cell: each => show(each.owedMinor) },
          ]}
        />
      </Card>
    </>
  )
}
