import { TextInput } from '@mantine/core'
import { useState } from 'react'
import type { InvoiceView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { MoneyInput } from '../../parts/inputs.tsx'
import { money } from '../../parts/money.ts'

interface Props {
  invoice: InvoiceView
  onDone(): void
}

/** Gives back an invoice, all of it unless less is typed. */
export function CreditForm({ invoice, onDone }: Props) {
  // As it stood when the form was filled: a credit note of another window is not taken for seen.
  const [seenCreditedMinor] = useState(invoice.creditedMinor)
  const open = invoice.lines.filter(line => line.leftMinor > 0)
  const form = useForm({
    saved: { lines: open.map(({ id, leftMinor }) => ({ id, amountMinor: leftMinor })), reason: '' },
    saving: trpc.money.credit.mutationOptions(),
    send: value => ({ ...value, id: invoice.id, seenCreditedMinor }),
    done: onDone,
  })
  return (
    <Card title={say('Credit note')} about={say('the invoice stays as it is; the credit note gives it back')}>
      <Form form={form} label={say('Credit note')} save={say('Issue the credit note')} onCancel={onDone}>
        {form.each<{ id: string; amountMinor: number }>('lines').map((line, i) => (
          <MoneyInput
            key={line.value.id}
            label={say('Give back of {name}', { name: open[i]?.name ?? '' })}
            description={say('{leftMinor} at most', {
              leftMinor: money(open[i]?.leftMinor ?? 0, invoice.currency),
            })}
            maw={280}
            {...line.field('amountMinor')}
          />
        ))}
        <TextInput label={say('Why')} maw={480} {...form.field('reason')} />
      </Form>
    </Card>
  )
}
