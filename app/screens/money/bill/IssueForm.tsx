import { Textarea, TextInput } from '@mantine/core'
import type { BillView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { money } from '../../../parts/money.ts'
import pieces from '../../../parts/pieces.module.css'
import { UnprintedNote } from '../../../parts/UnprintedNote.tsx'

/** Issues the invoice: whom it is for, and the one button. */
export function IssueForm({ bill, quiet }: { bill: BillView; quiet: boolean }) {
  const form = useForm({
    saved: { buyer: bill.buyer, note: '' },
    saving: trpc.money.issue.mutationOptions(),
    send: value => ({ ...value, id: bill.id, version: bill.version }),
  })
  const buyer = form.within('buyer')
  return (
    <Card title={say('Invoice')} about={say('numbered and never changed from then on')}>
      <Form
        form={form}
        quiet={quiet}
        label={say('Invoice')}
        save={say('Issue the invoice, {withTaxMinor}', {
          withTaxMinor: money(bill.withTaxMinor, bill.currency),
        })}
        ready={bill.unpriced.length === 0}
      >
        <div className={pieces.fields}>
          <TextInput label={say('For')} {...buyer.field('name')} />
          <UnprintedNote of={`${buyer.value.name}${buyer.value.address}`} />
          <TextInput label={say('E-mail')} type="email" {...buyer.field('email')} />
          <Textarea
            label={say('Address')}
            autosize
            minRows={2}
            className={pieces.whole}
            {...buyer.field('address')}
          />
          <TextInput
            label={say('Country')}
            description={say('Two letters')}
            maxLength={2}
            {...buyer.field('country')}
          />
          <TextInput
            label={say('Their tax number')}
            description={say('Where they have one')}
            {...buyer.field('taxNumber')}
          />
          <Textarea
            label={say('Note on it')}
            autosize
            minRows={1}
            className={pieces.whole}
            {...form.field('note')}
          />
        </div>
      </Form>
    </Card>
  )
}
