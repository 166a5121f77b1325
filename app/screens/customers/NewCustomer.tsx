import { useNavigate } from '@tanstack/react-router'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'
import { CustomerFields, type CustomerFieldValues, sentCustomer } from './CustomerFields.tsx'

const empty: CustomerFieldValues = { kind: 'person', name: '', phone: '', email: '', tags: '', note: '' }

/** Takes somebody down before their first visit. */
export function NewCustomer() {
  const navigate = useNavigate()
  const form = useForm({
    saved: empty,
    saving: trpc.customers.save.mutationOptions(),
    send: sentCustomer,
    done: ({ id }) => void navigate({ to: '/customers/$id', params: { id } }),
  })
  return (
    <div className={pieces.column}>
      <div className={pieces.heading}>
        <h1>{say('New customer')}</h1>
      </div>
      <div className={pieces.card} style={{ maxWidth: 480 }}>
        <Form form={form} label={say('A new customer')} onCancel={() => navigate({ to: '/customers' })}>
          <CustomerFields autoFocus isNew form={form} />
        </Form>
      </div>
    </div>
  )
}
