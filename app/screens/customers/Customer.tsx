import { useQuery } from '@tanstack/react-query'
import { useParams } from '@tanstack/react-router'
import type { CustomerView } from '../../../main/api/views.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { ArchiveButton } from '../../parts/ArchiveButton.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { Lookup } from '../../parts/Lookup.tsx'
import { Consents } from './Consents.tsx'
import { CustomerFields } from './CustomerFields.tsx'
import styles from './Customers.module.css'
import { Vehicles } from './Vehicles.tsx'
import { Visits } from './Visits.tsx'

/** One customer: how to reach them, their cars, and every visit. */
export function Customer() {
  const { id = '' } = useParams({ strict: false })
  const query = useQuery(trpc.customers.get.queryOptions({ id }))
  const customer = query.data
  if (!customer)
    return <Lookup error={query.error} what="the customer" to="/customers" label="All customers" />
  return (
    <div className={styles.screen}>
      <div className={styles.heading}>
        <h1>{customer.name}</h1>
        {customer.archivedAt !== null && <span className={styles.soft}>archived</span>}
      </div>
      <div className={styles.columns}>
        <div className={styles.stack}>
          <Details key={customer.id} customer={customer} />
          <Consents customerId={customer.id} />
          <ArchiveButton
            row={customer}
            archive={trpc.customers.archive.mutationOptions()}
            restore={trpc.customers.restore.mutationOptions()}
            label="Archive this customer"
          />
        </div>
        <div className={styles.stack}>
          <Vehicles customer={customer} />
          <Visits visits={customer.visits} />
        </div>
      </div>
    </div>
  )
}

function Details({ customer }: { customer: CustomerView }) {
  const { id } = customer
  const form = useForm({
    saved: {
      name: customer.name,
      phone: customer.phone ?? '',
      email: customer.email ?? '',
      note: customer.note,
    },
    version: customer.version,
    saving: trpc.customers.save.mutationOptions(),
    send: (value, version) => ({ ...value, id, version }),
  })
  return (
    <section className={styles.card} aria-labelledby="details">
      <h2 id="details">How to reach them</h2>
      <Form form={form} label="How to reach them">
        <CustomerFields id={id} form={form} />
      </Form>
    </section>
  )
}
