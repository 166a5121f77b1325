import { Button } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useNavigate, useParams } from '@tanstack/react-router'
import { useState } from 'react'
import type { CustomerView } from '../../../main/api/views.ts'
import { say, withinSentence } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { ArchiveButton } from '../../parts/ArchiveButton.tsx'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { HistoryCard } from '../../parts/HistoryLines.tsx'
import { Lookup } from '../../parts/Lookup.tsx'
import pieces from '../../parts/pieces.module.css'
import { ScreenTitle } from '../../parts/ScreenTitle.tsx'
import { customerKindChoices, labelOf } from '../../parts/shopWords.ts'
import { useBookFor } from '../book/useBookFor.ts'
import { AtAGlance } from './AtAGlance.tsx'
import { Consents } from './Consents.tsx'
import { Contacts } from './Contacts.tsx'
import { CustomerFields, fieldsOfCustomer, sentCustomer } from './CustomerFields.tsx'
import styles from './Customers.module.css'
import { Fleet } from './Fleet.tsx'
import { PersonData } from './PersonData.tsx'
import { SamePerson } from './SamePerson.tsx'
import { Vehicles } from './Vehicles.tsx'
import { Visits } from './Visits.tsx'

/** One customer: how to reach them, their cars, and every visit. */
export function Customer() {
  const { id = '' } = useParams({ strict: false })
  const query = useQuery(trpc.customers.get.queryOptions({ id }))
  const customer = query.data
  const navigate = useNavigate()
  const bookFor = useBookFor()
  const [only, another] = customer?.vehicles.filter(({ archivedAt }) => archivedAt === null) ?? []
  if (!customer)
    return (
      <Lookup error={query.error} what={say('the customer')} to="/customers" label={say('All customers')} />
    )
  return (
    <div className={pieces.column}>
      <ScreenTitle title={customer.name}>
        {customer.archivedAt !== null && <span className={pieces.soft}>{say('archived')}</span>}
        {customer.kind !== 'person' && (
          <span className={pieces.soft}>{withinSentence(labelOf(customerKindChoices, customer.kind))}</span>
        )}
        {customer.tags.map(tag => (
          <span key={tag} className={styles.tag}>
            {tag}
          </span>
        ))}
        <Button
          className={pieces.end}
          onClick={() =>
            only && !another ? void bookFor(customer.id, only.id) : void navigate({ to: '/book' })
          }
        >
          {say('Book a visit')}
        </Button>
      </ScreenTitle>
      <AtAGlance customer={customer} />
      <div className={styles.person}>
        <div className={pieces.column}>
          <Vehicles customer={customer} />
          <Fleet customer={customer} />
          <Visits visits={customer.visits} />
          <Contacts customer={customer} />
          <HistoryCard entities={['customer']} id={customer.id} />
        </div>
        <div className={pieces.column}>
          <Details key={customer.id} customer={customer} />
          <Consents customerId={customer.id} />
        </div>
      </div>
      <div className={pieces.two}>
        <SamePerson key={`${customer.id} same`} customer={customer} />
        <PersonData customer={customer} />
      </div>
      <ArchiveButton row={customer} api={trpc.customers} label={say('Archive this customer')} />
    </div>
  )
}

/** Who they are as it stands, and the form for it once it is asked for. */
function Details({ customer }: { customer: CustomerView }) {
  const [open, setOpen] = useState(false)
  if (open) return <DetailsForm customer={customer} onDone={() => setOpen(false)} />
  return (
    <Card title={say('How to reach them')}>
      {customer.note && <p>{customer.note}</p>}
      <Button variant="default" onClick={() => setOpen(true)}>
        {say('Change name, number or note')}
      </Button>
    </Card>
  )
}

function DetailsForm({ customer, onDone }: { customer: CustomerView; onDone(): void }) {
  const { id } = customer
  const form = useForm({
    saved: fieldsOfCustomer(customer),
    version: customer.version,
    saving: trpc.customers.save.mutationOptions(),
    send: (value, version) => ({ ...sentCustomer(value), id, version }),
    done: onDone,
  })
  return (
    <Card title={say('How to reach them')}>
      <Form form={form} label={say('How to reach them')} onCancel={onDone}>
        <CustomerFields form={form} />
      </Form>
    </Card>
  )
}
