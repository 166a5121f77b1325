import { TextInput } from '@mantine/core'
import type { QuoteView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Card } from '../../../parts/Card.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { SignBox } from '../../../parts/SignBox.tsx'

/** The owner signs for the variant chosen. */
export function SignForm({ quote, position }: { quote: QuoteView; position: number }) {
  const variant = quote.variants.find(each => each.position === position)
  const form = useForm({
    saved: { name: quote.customer.name, signature: '' },
    saving: trpc.money.acceptQuote.mutationOptions(),
    send: value => ({ ...value, id: quote.id, version: quote.version, position }),
  })
  return (
    <Card title={say('Sign for {name}', { name: variant?.name ?? '' })}>
      <Form form={form} label={say('Signature')} save={say('Accept it')} ready={form.value.signature !== ''}>
        <TextInput label={say('Who signs')} maw={360} {...form.field('name')} />
        <SignBox
          key={form.fills}
          label={say('Signature')}
          value={form.value.signature}
          keep="picture"
          onChange={signature => form.change({ signature })}
          error={form.faults.at('signature')}
        />
      </Form>
    </Card>
  )
}
