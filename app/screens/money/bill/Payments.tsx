import { Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { BillView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { type PaymentMethod, paymentMethods } from '../../../../main/domain/money/index.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { AskDialog } from '../../../parts/AskDialog.tsx'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import { MoneyInput } from '../../../parts/inputs.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { RowButton } from '../../../parts/RowButton.tsx'
import { Say } from '../../../parts/Say.tsx'
import { Table } from '../../../parts/Table.tsx'
import { nearWords } from '../../../parts/time.ts'
import { methodWords } from '../words.ts'

type Payment = BillView['payments'][number]

/** What was paid of the job, and what is paid now. */
export function Payments({ bill, quiet }: { bill: BillView; quiet: boolean }) {
  const [undoing, setUndoing] = useState<Payment | null>(null)
  const undo = useSaving(trpc.money.undoPayment.mutationOptions())
  const show = (minor: number) => money(minor, bill.currency)
  const open = bill.depositMinor - bill.paidMinor
  return (
    <Card title={say('Payments')} about={say('{paidMinor} paid so far', { paidMinor: show(bill.paidMinor) })}>
      {bill.invoiceId === null && open > 0 && (
        <p>
          <Say text="Deposit asked for: <b>{open}</b>" values={{ open: show(open) }} />
        </p>
      )}
      <Table
        rows={bill.payments}
        keyOf={each => each.id}
        past={each => each.undone}
        columns={[
          {
            cell: each =>
              `${methodWords[each.method as PaymentMethod]}${each.before ? say(', deposit') : ''}`,
            small: each =>
              [nearWords(each.at, bill.zone, bill.nowAt), each.who, each.note].filter(Boolean).join(' · '),
          },
          {
            number: true,
            cell: each => show(each.amountMinor),
            small: each => each.tipMinor !== 0 && say('tip {tipMinor}', { tipMinor: show(each.tipMinor) }),
          },
          {
            number: true,
            cell: each =>
              !each.undone && (
                <RowButton
                  does={say('Take back')}
                  of={show(each.amountMinor)}
                  onClick={() => setUndoing(each)}
                />
              ),
          },
        ]}
      />
      <Refused of={undo.error} />
      <PayForm key={[bill.paidMinor, bill.toPayMinor, bill.depositMinor].join()} bill={bill} quiet={quiet} />
      {undoing && (
        <AskDialog
          title={say('Take back {amountMinor}?', { amountMinor: show(undoing.amountMinor) })}
          words={say('The payment stays on record with another that takes it back.')}
          label={say('Why')}
          action={say('Take it back')}
          busy={undo.busy}
          onClose={() => setUndoing(null)}
          onSay={reason => undo.save({ id: undoing.id, reason }, () => setUndoing(null))}
        />
      )}
    </Card>
  )
}

function PayForm({ bill, quiet }: { bill: BillView; quiet: boolean }) {
  const deposit = bill.invoiceId === null && bill.depositMinor > bill.paidMinor
  const form = useForm({
    saved: {
      method: 'card' as PaymentMethod,
      amountMinor: deposit ? bill.depositMinor - bill.paidMinor : bill.toPayMinor,
      tipMinor: 0,
      note: '',
    },
    saving: trpc.money.pay.mutationOptions(),
    send: value => ({ ...value, id: bill.id, seenPaidMinor: bill.paidMinor }),
  })
  const { method, amountMinor, tipMinor } = form.value
  const rounded = method === 'cash' && amountMinor === bill.toPayMinor ? bill.cashMinor : amountMinor
  if (bill.toPayMinor === 0 && bill.paidMinor === 0) return null
  return (
    <Form
      form={form}
      quiet={quiet}
      label={say('Payment')}
      save={say('Take {rounded}', { rounded: money(rounded + tipMinor, bill.currency) })}
      ready={amountMinor !== 0 || tipMinor !== 0}
    >
      <div className={pieces.fields}>
        <Select
          label={say('How||it is paid')}
          data={paymentMethods.map(each => ({ value: each, label: methodWords[each] }))}
          {...form.choice('method')}
        />
        <MoneyInput
          label={say('Paid')}
          description={say('Below 0: paid back')}
          {...form.field('amountMinor')}
        />
        <MoneyInput label={say('Tip on top')} description={say('For the crew')} {...form.field('tipMinor')} />
        <TextInput label={say('Note')} className={pieces.whole} {...form.field('note')} />
      </div>
      {rounded !== amountMinor && (
        <p className={pieces.soft}>
          {say('In coins: {rounded} instead of {amountMinor}', {
            rounded: money(rounded, bill.currency),
            amountMinor: money(amountMinor, bill.currency),
          })}
        </p>
      )}
    </Form>
  )
}
