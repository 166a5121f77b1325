import { Button, Checkbox, TextInput } from '@mantine/core'
import type { CustomerView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { useEditing } from '../../data/editing.ts'
import { useForm } from '../../data/form.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import { PhoneInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'

type Contact = CustomerView['contacts'][number]

/** Whom to talk to about this customer's cars, and whom to call first. */
export function Contacts({ customer }: { customer: CustomerView }) {
  const { country } = useShop()
  const { editing, edit, close } = useEditing()
  const chosen = customer.contacts.find(contact => contact.id === editing)
  return (
    <Card title={say('Contacts')}>
      {customer.contacts.length === 0 && editing === null && (
        <p className={pieces.soft}>{say('Nobody besides themselves: a driver, who decides, who pays.')}</p>
      )}
      <ul className={pieces.list}>
        {customer.contacts.map(contact => (
          <li key={contact.id}>
            <span className={pieces.grow}>
              {contact.name}
              {contact.callFirst && <b> {say('· call first')}</b>}
              <small>
                {[contact.role, contact.phone && showPhone(contact.phone, country), contact.email]
                  .filter(Boolean)
                  .join(' · ')}
              </small>
            </span>
            <RowButton does={say('Change')} of={contact.name} onClick={edit(contact.id)} />
          </li>
        ))}
      </ul>
      {editing === null ? (
        <Button mt="sm" variant="default" onClick={edit('new')}>
          {say('Add a contact')}
        </Button>
      ) : (
        <ContactForm key={editing} customerId={customer.id} contact={chosen} onDone={close} />
      )}
    </Card>
  )
}

interface FormProps {
  customerId: string
  contact: Contact | undefined
  onDone(): void
}

function ContactForm({ customerId, contact, onDone }: FormProps) {
  const removing = useSaving(trpc.customers.removeContact.mutationOptions())
  const form = useForm({
    saved: {
      name: contact?.name ?? '',
      role: contact?.role ?? '',
      phone: contact?.phone ?? '',
      email: contact?.email ?? '',
      callFirst: contact?.callFirst ?? false,
    },
    version: contact?.version,
    saving: trpc.customers.saveContact.mutationOptions(),
    send: (value, version) => ({ ...value, customerId, ...(contact && { id: contact.id, version }) }),
    done: onDone,
  })
  const remove = ({ id, version }: Contact) => removing.save({ id, version }, onDone)
  return (
    <>
      <Form
        form={form}
        label={contact ? say('Contact {name}', { name: contact.name }) : say('A new contact')}
        onCancel={onDone}
        more={
          contact && (
            <Button variant="subtle" color="red" loading={removing.busy} onClick={() => remove(contact)}>
              {say('Take out')}
            </Button>
          )
        }
      >
        <TextInput label={say('Contact’s name')} autoFocus {...form.field('name')} />
        <TextInput
          label={say('What they do')}
          placeholder={say('fleet manager, driver, pays')}
          {...form.field('role')}
        />
        <PhoneInput label={say('Contact’s phone')} {...form.field('phone')} />
        <TextInput label={say('Contact’s e-mail')} type="email" {...form.field('email')} />
        <Checkbox label={say('Call this one first')} {...form.tick('callFirst')} />
      </Form>
      <Refused of={removing.error} />
    </>
  )
}
