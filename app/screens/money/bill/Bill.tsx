import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { useState } from 'react'
import type { BillView } from '../../../../main/api/views.ts'
import { decimalNow, say } from '../../../../main/domain/language/index.ts'
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
import { nextOfBill } from './nextOfBill.ts'
import { Payments } from './Payments.tsx'

/** What one visit costs, from the first price to the last payment. */
export function Bill({ id = '' }: SectionProps) {
  const { data: bill, error } = useQuery(trpc.money.bill.queryOptions({ id }))
  if (!bill) return <Lookup error={error} what={say('the bill')} to="/money" label={say('To what is owed')} />
  return <OneBill key={id} bill={bill} />
}

function OneBill({ bill }: { bill: BillView }) {
  const show = (minor: number) => money(minor, bill.currency)
  const billed = bill.invoiceId !== null
  const next = nextOfBill(bill)
  /** What was typed into the bill is saved before anything else is done with it. */
  const [changing, setChanging] = useState(false)
  return (
    <>
      <ScreenTitle title={say('Bill of {carName}', { carName: bill.carName })}>
        <Link to="/money/$section/$id" params={{ section: 'statement', id: bill.customer.id }}>
          {bill.customer.name}
        </Link>
        <Link to="/jobs/$id" params={{ id: bill.id }}>
          {say('job {number}', { number: bill.number })}
        </Link>
        <b className={bill.toPayMinor > 0 ? undefined : pieces.kept}>
          {bill.toPayMinor > 0
            ? say('{toPayMinor} to pay', { toPayMinor: show(bill.toPayMinor) })
            : say('✓ Paid')}
        </b>
      </ScreenTitle>
      {bill.unpriced.length > 0 && (
        <p className={pieces.late} role="status">
          {say('⚑ No price yet: {unpriced}', { unpriced: bill.unpriced.join(', ') })}
        </p>
      )}
      <div className={pieces.two}>
        <div className={pieces.column}>
          <Lines bill={bill} />
          {!billed && <BillForm bill={bill} onDirty={setChanging} />}
        </div>
        <div className={pieces.column}>
          {next === 'issue' && <IssueForm bill={bill} quiet={changing} />}
          <Payments bill={bill} quiet={changing || next !== 'pay'} />
          {!billed && next !== 'issue' && <IssueForm bill={bill} quiet />}
          <Papers bill={bill} />
        </div>
      </div>
    </>
  )
}

function Lines({ bill }: { bill: BillView }) {
  const show = (minor: number) => money(minor, bill.currency)
  return (
    <Card title={say('What it costs')} about={bill.taxInPrices ? say('prices include tax') : undefined}>
      <Table
        rows={bill.lines}
        keyOf={line => String(bill.lines.indexOf(line))}
        columns={[
          {
            cell: line =>
              String(line.quantity) === '1' ? line.name : `${decimalNow(line.quantity)} × ${line.name}`,
            small: line =>
              line.discountMinor > 0 &&
              say('{discountMinor} off: {discountReason}', {
                discountMinor: show(line.discountMinor),
                discountReason: line.discountReason,
              }),
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
    <Card title={say('Invoices')}>
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
