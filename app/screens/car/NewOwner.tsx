import { Anchor, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { CarView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { type FormOf, useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { AlikeList } from '../../parts/AlikeList.tsx'
import { DateField } from '../../parts/DateField.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { PhoneInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { useAlike } from '../../parts/useAlike.ts'

interface Values {
  customerId: string | null
  name: string
  phone: string
  email: string
  on: string
}

/** The car has another owner: somebody on file, or somebody new. */
export function NewOwner({ car, onDone }: { car: CarView; onDone(): void }) {
  const form = useForm({
    saved: { customerId: null, name: '', phone: '', email: '', on: car.soldOn ?? car.today } as Values,
    saving: trpc.vehicles.changeHands.mutationOptions(),
    send: ({ customerId, on, ...customer }) => ({
      vehicleId: car.vehicleId,
      version: car.version,
      to: customerId === null ? { customer } : { customerId },
      on,
    }),
    done: onDone,
  })
  return (
    <Form form={form} label={say('It has a new owner')} save={say('Give it its new owner')} onCancel={onDone}>
      <p className={pieces.soft}>
        {say(
          'Its coats and plans go along. Nothing is written to {customerName} about it any more, and to the new owner only what they agree to.',
          { customerName: car.customerName },
        )}
      </p>
      <DateField label={say('Owner since')} {...form.field('on')} />
      {form.value.customerId === null ? <Who form={form} ownerId={car.customerId} /> : <Chosen form={form} />}
    </Form>
  )
}

function Chosen({ form }: { form: FormOf<Values> }) {
  return (
    <p>
      <b>{form.value.name}</b>{' '}
      <Anchor component="button" type="button" onClick={() => form.change({ customerId: null })}>
        {say('Somebody else')}
      </Anchor>
    </p>
  )
}

/** Typing looks through those on file; whoever is not among them is written down new. */
function Who({ form, ownerId }: { form: FormOf<Values>; ownerId: string }) {
  const { name, phone, email } = form.value
  const [isNew, setNew] = useState(false)
  const [asked] = useDebouncedValue(name.trim(), 150)
  const found = useQuery({
    ...trpc.customers.find.queryOptions({ text: asked, limit: 5 }),
    enabled: asked.length >= 2 && !isNew,
  }).data
  const alike = useAlike({ name, phone, email, exceptId: ownerId }).filter(each => each.archivedAt === null)
  const others = isNew || asked.length < 2 ? [] : (found?.customers ?? []).filter(each => each.id !== ownerId)
  const choose = (customer: { id: string; name: string }) => (
    <RowButton
      does={say('Save the new owner')}
      of={customer.name}
      onClick={() => form.change({ customerId: customer.id, name: customer.name })}
    />
  )
  return (
    <>
      <TextInput
        label={say('New owner')}
        placeholder={say('name, phone or plate')}
        {...form.field('name')}
        error={form.faults.at('to.customer.name')}
      />
      <ul className={pieces.list} aria-label={say('Found customers')}>
        {others.map(customer => (
          <li key={customer.id}>
            <span className={pieces.grow}>{customer.name}</span>
            {choose(customer)}
          </li>
        ))}
      </ul>
      {!isNew && asked.length >= 2 && (
        <Anchor component="button" type="button" ta="left" onClick={() => setNew(true)}>
          {say('Somebody new')}
        </Anchor>
      )}
      {isNew && (
        <>
          <PhoneInput
            label={say('Their phone')}
            {...form.field('phone')}
            error={form.faults.at('to.customer.phone')}
          />
          <TextInput
            label={say('Their e-mail')}
            type="email"
            {...form.field('email')}
            error={form.faults.at('to.customer.email')}
          />
          <AlikeList alike={alike} act={choose} />
        </>
      )}
    </>
  )
}
