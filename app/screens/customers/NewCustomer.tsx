import { Button } from '@mantine/core'
import { useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { CustomerFields, type CustomerFieldValues } from './CustomerFields.tsx'
import styles from './Customers.module.css'

const empty: CustomerFieldValues = { name: '', phone: '', email: '', note: '' }

/** Takes somebody down before their first visit. */
export function NewCustomer() {
  const navigate = useNavigate()
  const [value, setValue] = useState(empty)
  const saving = useSaving(trpc.customers.save.mutationOptions())
  const faults = faultsOf(saving.error)
  return (
    <div className={styles.screen}>
      <div className={styles.heading}>
        <h1>New customer</h1>
      </div>
      <div className={styles.card} style={{ maxWidth: 480 }}>
        <Form
          error={saving.error}
          label="A new customer"
          onSave={() =>
            saving.save(value, ({ id }) => void navigate({ to: '/customers/$id', params: { id } }))
          }
        >
          <CustomerFields
            id={undefined}
            autoFocus
            value={value}
            change={part => setValue(now => ({ ...now, ...part }))}
            faults={faults}
          />
          <FormFoot faults={faults} busy={saving.busy}>
            <Button variant="default" onClick={() => navigate({ to: '/customers' })}>
              Cancel
            </Button>
          </FormFoot>
        </Form>
      </div>
    </div>
  )
}
