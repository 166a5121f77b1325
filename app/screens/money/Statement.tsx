import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { Lookup } from '../../parts/Lookup.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { ScreenTitle } from '../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../parts/Sections.tsx'
import { Table } from '../../parts/Table.tsx'
import { fullDateWords } from '../../parts/time.ts'

/** What one customer was billed and paid, and what is open. */
export function Statement({ id = '' }: SectionProps) {
  const { data, error } = useQuery(trpc.money.statement.queryOptions({ id }))
  if (!data)
    return <Lookup error={error} what={say('the customer')} to="/money" label={say('To what is owed')} />
  const show = (minor: number) => money(minor, data.currency)
  return (
    <>
      <ScreenTitle title={say('Statement of {name}', { name: data.customer.name })}>
        <b className={data.owedMinor > 0 ? pieces.late : pieces.kept}>
          {data.owedMinor > 0
            ? say('⚑ {owedMinor} open', { owedMinor: show(data.owedMinor) })
            : say('✓ Nothing open')}
        </b>
        <Link to="/customers/$id" params={{ id }}>
          {say('customer')}
        </Link>
        <DocumentButton path={`/documents/statement/${id}.pdf`} aria-label={say('Statement as PDF')}>
          {say('PDF')}
        </DocumentButton>
      </ScreenTitle>
      <Card>
        <Table
          rows={data.lines}
          keyOf={line => line.key}
          empty={say('Nothing was billed yet.')}
          columns={[
            { head: say('Day'), cell: line => fullDateWords(line.date) },
            {
              head: say('What'),
              cell: line =>
                line.invoiceId ? (
                  <Link to="/money/$section/$id" params={{ section: 'invoices', id: line.invoiceId }}>
                    {line.words}
                  </Link>
                ) : (
                  line.words
                ),
              small: line => line.about,
            },
            { head: say('Amount'), number: true, cell: line => show(line.minor) },
            { head: say('Open then'), number: true, cell: line => show(line.owedMinor) },
          ]}
        />
      </Card>
    </>
  )
}
