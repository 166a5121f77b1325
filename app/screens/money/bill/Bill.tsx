import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import type { BillView } from '../../../../main/api/views.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Lookup } from '../../../parts/Lookup.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { ScreenTitle } from '../../../parts/ScreenTitle.tsx'
import type { SectionProps } from '../../../parts/Sections.tsx'
import { Table } from '../../../parts/Table.tsx'
import { fullDateWords } from '../../../parts/time.ts'
import { Totals } from '../Totals.tsx'
import { paperWords } from '../words.ts'
import { BillForm } from './BillForm.tsx'
import { IssueForm } from './IssueForm.tsx'
import { Payments } from './Payments.tsx'

/** What one visit costs, from the first price to the last payment. */
export function Bill({ id = '' }: SectionProps) {
  const { data: bill, error } = useQuery(trpc.money.bill.queryOptions({ id }))
  if (!bill) return <Lookup error={error} what="the bill" to="/money" label="To what is owed" />
  return <OneBill key={id} bill={bill} />
}

function OneBill({ bill }: { bill: BillView }) {
  const show = (minor: number) => money(minor, bill.currency)
  const billed = bill.invoiceId !== null
  return (
    <>
      <ScreenTitle title={`Bill of ${bill.carName}`}>
        <Link to="/money/$section/$id" params={{ section: 'statement', id: bill.customer.id }}>
          {bill.customer.name}
        </Link>
        <Link to="/jobs/$id" params={{ id: bill.id }}>
          job {bill.number}
        </Link>
        <b className={bill.toPayMinor > 0 ? undefined : pieces.kept}>
          {bill.toPayMinor > 0 ? `${show(bill.toPayMinor)} to pay` : '✓ Paid'}
        </b>
      </ScreenTitle>
      {bill.unpriced.length > 0 && (
        <p className={pieces.late} role="status">
          ⚑ No price yet: {bill.unpriced.join(', ')}
        </p>
      )}
      <div className={pieces.two}>
        <div className={pieces.column}>
          <Lines bill={bill} />
          {!billed && <BillForm bill={bill} />}
        </div>
        <div className={pieces.column}>
          <Payments bill={bill} />
          {billed ? null : <IssueForm bill={bill} />}
          <Papers bill={bill} />
        </div>
      </div>
    </>
  )
}

function Lines({ bill }: { bill: BillView }) {
  const show = (minor: number) => money(minor, bill.currency)
  return (
    <Card title="What it costs" about={bill.taxInPrices ? 'tax is in the prices' : undefined}>
      <Table
        rows={bill.lines}
        keyOf={line => line.name}
        columns={[
          {
            cell: line => (String(line.quantity) === '1' ? line.name : `${line.quantity} × ${line.name}`),
            small: line =>
              line.discountMinor > 0 && `${show(line.discountMinor)} off: ${line.discountReason}`,
          },
          { number: true, cell: line => show(line.amountMinor) },
        ]}
      />
      <Totals
        of={{
          ...bill,
          depositMinor: 0,
          allowanceMinor: bill.lines.reduce((sum, line) => sum + line.allowanceMinor, 0),
          allowanceReason: bill.allowanceReason,
        }}
      />
    </Card>
  )
}

/** The invoices and credit notes of the job. */
function Papers({ bill }: { bill: BillView }) {
  if (bill.papers.length === 0) return null
  return (
    <Card title="Invoices">
      <Table
        rows={bill.papers}
        keyOf={paper => paper.id}
        columns={[
          {
            cell: paper => (
              <Link to="/money/$section/$id" params={{ section: 'invoices', id: paper.id }}>
                {paperWords[paper.kind]} {paper.name}
              </Link>
            ),
            small: paper => fullDateWords(paper.issuedOn),
          },
          { number: true, cell: paper => money(paper.withTaxMinor, bill.currency) },
        ]}
      />
    </Card>
  )
}
