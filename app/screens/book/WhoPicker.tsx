import { Anchor, Button, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import { say } from '../../../main/domain/language/index.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { fieldsOf } from '../../data/fields.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import pieces from '../../parts/pieces.module.css'
import styles from './Book.module.css'
import { CarsOf, callerOf } from './CarsOf.tsx'
import { type Call, callerFrom, nobody } from './call.ts'
import { NewCaller, VehicleFields } from './NewCaller.tsx'

interface Props {
  call: Call
  change(part: Partial<Call>): void
  /** The field the server refused, and its words. */
  fault: { field: string | null; message: string } | null
}

/** Finds the caller by name, phone or plate, or takes a new one down without leaving the call. */
export function WhoPicker({ call, change, fault }: Props) {
  const { country } = useShop()
  const [text, setText] = useState('')
  const [asked] = useDebouncedValue(text.trim(), 150)
  const found = useQuery({
    ...trpc.customers.find.queryOptions({ text: asked, limit: 4 }),
    enabled: asked.length >= 2 && call.customerId === null,
  })
  // The refused field may be told with whose it is: "customer.name".
  const refused = fault?.field?.split('.').at(-1)
  const fields = fieldsOf(call, change, name =>
    refused === name || (name === 'customerName' && refused === 'name') ? fault?.message : undefined,
  )
  if (call.customerId !== null)
    return (
      <div className={styles.who}>
        <span>
          <b>{call.customerName}</b>
          <span className={pieces.soft}>
            {' '}
            {[call.plate, call.colour, call.make, call.model].filter(Boolean).join(' ')}{' '}
            <Anchor component="button" type="button" autoFocus onClick={() => change(nobody)}>
              {say('Somebody else')}
            </Anchor>
          </span>
        </span>
        {call.vehicleId === null && <VehicleFields fields={fields} />}
      </div>
    )
  const customers = found.data?.customers ?? []
  const choose = (part: Partial<Call>) => {
    setText('')
    change(part)
  }
  const fill = () => choose(callerFrom(text.trim()))
  return (
    <div className={styles.who}>
      {!call.isNew && (
        <TextInput
          data-autofocus
          autoFocus
          size="sm"
          label={say('Find by name, phone or plate')}
          value={text}
          onChange={event => setText(event.currentTarget.value)}
          onKeyDown={event => {
            if (event.key !== 'Enter' || asked !== text.trim() || !found.data) return
            event.preventDefault()
            if (customers[0]) choose(callerOf(customers[0], customers[0].vehicles[0]))
            else fill()
          }}
        />
      )}
      {!call.isNew && asked.length >= 2 && customers.length > 0 && (
        <ul className={styles.found} aria-label={say('Found customers')}>
          {customers.map(customer => (
            <li key={customer.id}>
              <span>
                <b>{customer.name}</b> {customer.phone && showPhone(customer.phone, country)}
              </span>
              <CarsOf customer={customer} change={choose} />
            </li>
          ))}
        </ul>
      )}
      {call.isNew ? (
        <NewCaller fields={fields} change={change} />
      ) : (
        <Button variant="default" size="xs" onClick={fill}>
          {text.trim() ? say('New customer “{text}”', { text: text.trim() }) : say('New customer')}
        </Button>
      )}
    </div>
  )
}
