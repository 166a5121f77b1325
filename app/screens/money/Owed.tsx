import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
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

const days = (count: number) => (count === 1 ? '1 day' : `${count} days`)

/** The open invoices, the longest overdue first. */
export function Owed() {
  const { country } = useShop()
  const { data: owed, error } = useQuery(trpc.money.owed.queryOptions())
  if (!owed) return <Waiting error={error} words="Adding it up" />
  const show = (minor: number) => money(minor, owed.currency)
  return (
    <>
      <ScreenTitle title="Owed">
        <b>{show(owed.owedMinor)}</b>
        {owed.overdueMinor > 0 && <b className={pieces.late}>⚑ {show(owed.overdueMinor)} overdue</b>}
      </ScreenTitle>
      <Card
        title="Open invoices"
        about={owed.count > owed.open.length ? `the first ${owed.open.length} of ${owed.count}` : undefined}
      >
        <Table
          rows={owed.open}
          keyOf={each => each.jobId}
          empty="Nothing is owed. A job is billed from its page, under Bill."
          columns={[
            {
              head: 'Customer',
              cell: each => (
                <Link to="/money/$section/$id" params={{ section: 'statement', id: each.customer.id }}>
                  {each.customer.name}
                </Link>
              ),
              small: ({ customer }) => customer.phone && showPhone(customer.phone, country),
            },
            {
              head: 'Invoice',
              cell: each => (
                <Link to="/money/$section/$id" params={{ section: 'bill', id: each.jobId }}>
                  {each.name}
                </Link>
              ),
              small: each => each.carWords,
            },
            {
              head: 'To be paid by',
              cell: each =>
                each.owedMinor < 0 ? (
                  'to be paid back'
                ) : each.lateDays > 0 ? (
                  <b className={pieces.late}>
                    ⚑ {dateWords(each.dueOn)}, {days(each.lateDays)} ago
                  </b>
                ) : (
                  dateWords(each.dueOn)
                ),
            },
            { head: 'Open', number: true, cell: each => show(each.owedMinor) },
          ]}
        />
      </Card>
    </>
  )
}
