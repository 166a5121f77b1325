import { useQuery } from '@tanstack/react-query'
import { Link, useParams } from '@tanstack/react-router'
import type { CustomerView } from '../../../main/api/views.ts'
import { useDraft } from '../../data/draft.ts'
import { useSaving } from '../../data/saving.ts'
import { faultOf, trpc } from '../../data/trpc.ts'
import { ArchiveButton } from '../../parts/ArchiveButton.tsx'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
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
    return (
      <p className={styles.empty}>
        {query.error ? faultOf(query.error).message : 'Looking them up …'}{' '}
        <Link to="/customers">All customers</Link>
      </p>
    )
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
  const draft = useDraft(
    {
      name: customer.name,
      phone: customer.phone ?? '',
      email: customer.email ?? '',
      note: customer.note,
    },
    customer.version,
  )
  const saving = useSaving(trpc.customers.save.mutationOptions())
  const faults = faultsOf(saving.error)
  const { id } = customer
  return (
    <section className={styles.card} aria-labelledby="details">
      <h2 id="details">How to reach them</h2>
      <Form
        error={saving.error}
        label="How to reach them"
        onSave={() => saving.save({ id, version: draft.version, ...draft.value }, draft.settle)}
      >
        <CustomerFields id={id} value={draft.value} change={draft.change} faults={faults} />
        <FormFoot
          faults={faults}
          busy={saving.busy}
          dirty={draft.dirty}
          outdated={draft.outdated}
          onReload={() => {
            saving.reset()
            draft.reload()
          }}
        />
      </Form>
    </section>
  )
}
