import { Button, Group } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { InvoiceView } from '../../../main/api/views.ts'
import { decimalNow, say } from '../../../main/domain/language/index.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { DocumentButton } from '../../parts/DocumentButton.tsx'
import { Facts } from '../../parts/Facts.tsx'
import { Lookup } from '../../parts/Lookup.tsx'
import { money } from '../../parts/money.ts'
import pieces from '../../parts/pieces.module.css'
import { Table } from '../../parts/Table.tsx'
import { fullDateWords } from '../../parts/time.ts'
import { CreditForm } from './CreditForm.tsx'
import { Totals } from './Totals.tsx'
import { paperWords } from './words.ts'

/** One invoice or credit note, as it was issued. */
export function InvoiceSheet({ id }: { id: string }) {
  const { data: invoice, error } = useQuery(trpc.money.invoice.queryOptions({ id }))
  const [crediting, setCrediting] = useState(false)
  if (!invoice)
    return <Lookup error={error} what={say('the invoice')} to="/money" label={say('To what is owed')} />
  const left = invoice.kind === 'invoice' && invoice.lines.some(line => line.leftMinor > 0)
  return (
    <>
      <Card title={`${paperWords[invoice.kind]} ${invoice.name}`} about={fullDateWords(invoice.issuedOn)}>
        <Facts
          of={{
            [say('For')]: invoice.buyer.name,
            [say('Car')]: (
              <Link to="/money/$section/$id" params={{ section: 'bill', id: invoice.jobId }}>
                {say('{carWords}, job {jobNumber}', {
                  carWords: invoice.carWords,
                  jobNumber: invoice.jobNumber,
                })}
              </Link>
            ),
            [say('To be paid by')]: invoice.kind === 'invoice' && fullDateWords(invoice.dueOn),
            [say('Corrects')]: invoice.corrects && <PaperLink of={invoice.corrects} />,
            [say('Because')]: invoice.reason || null,
            [say('No tax because')]: invoice.exemption || null,
            [say('Credited')]:
              invoice.credits.length > 0 &&
              invoice.credits.map(credit => (
                <div key={credit.id}>
                  <PaperLink of={credit} /> {money(credit.withTaxMinor, invoice.currency)}
                </div>
              )),
            [say('Note')]: invoice.note || null,
          }}
        />
        <Lines invoice={invoice} />
        <Totals of={invoice} />
        <Electronic lacks={invoice.lacks} />
        <Group mt="sm">
          <DocumentButton
            path={`/documents/invoice/${id}.pdf`}
            aria-label={say('{name} as PDF', { name: invoice.name })}
          >
            {say('PDF')}
          </DocumentButton>
          {invoice.lacks.length === 0 && (
            <DocumentButton
              path={`/documents/electronic/${id}.xml`}
              aria-label={say('{name} as UBL', { name: invoice.name })}
            >
              {say('UBL (XML)')}
            </DocumentButton>
          )}
          {left && !crediting && (
            <Button variant="default" onClick={() => setCrediting(true)}>
              {say('Credit it')}
            </Button>
          )}
        </Group>
      </Card>
      {crediting && left && <CreditForm invoice={invoice} onDone={() => setCrediting(false)} />}
    </>
  )
}

/** Whether the paper is an electronic invoice too, and if not, what it lacks. */
function Electronic({ lacks }: { lacks: readonly string[] }) {
  if (lacks.length === 0)
    return <p className={pieces.soft}>{say('The PDF holds the electronic invoice (EN 16931).')}</p>
  return (
    <details className={pieces.soft}>
      <summary>{say('⚑ Paper only: no electronic invoice (EN 16931)')}</summary>
      <ul>
        {lacks.map(words => (
          <li key={words}>{words}</li>
        ))}
      </ul>
    </details>
  )
}

function PaperLink({ of }: { of: { id: string; name: string } }) {
  return (
    <Link to="/money/$section/$id" params={{ section: 'invoices', id: of.id }}>
      {of.name}
    </Link>
  )
}

function Lines({ invoice }: { invoice: InvoiceView }) {
  const show = (minor: number) => money(minor, invoice.currency)
  return (
    <Table
      rows={invoice.lines}
      keyOf={line => line.id}
      columns={[
        {
          cell: line => (line.quantity === '1' ? line.name : `${decimalNow(line.quantity)} × ${line.name}`),
          small: line =>
            line.discountMinor > 0 && (
              <span className={pieces.soft}>
                {say('{discountMinor} off: {discountReason}', {
                  discountMinor: show(line.discountMinor),
                  discountReason: line.discountReason,
                })}
              </span>
            ),
        },
        { number: true, cell: line => (line.category === 'S' ? `${decimalNow(line.ratePercent)} %` : '') },
        { number: true, cell: line => show(line.amountMinor) },
      ]}
    />
  )
}
