import { Anchor, Button, Group, Select, Stack, Text, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { FoundCustomer } from '../../../main/api/views.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { type Fields, fieldsOf } from '../../data/fields.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Segments } from '../../parts/Segments.tsx'
import { finishChoices, sizeChoices } from '../../parts/shopWords.ts'
import styles from './Book.module.css'
import { type Draft, nobody } from './booking.ts'

interface Props {
  draft: Draft
  change(part: Partial<Draft>): void
  /** The field the server refused, and its words. */
  fault: { field: string | null; message: string } | null
}

/** Finds the caller by name, phone or plate, or takes a new one down without leaving the call. */
export function WhoPicker({ draft, change, fault }: Props) {
  const { country } = useShop()
  const [text, setText] = useState('')
  const [asked] = useDebouncedValue(text.trim(), 150)
  const found = useQuery({
    ...trpc.customers.find.queryOptions({ text: asked }),
    enabled: asked.length >= 2 && draft.customerId === null,
  })
  // The refused field may be told with whose it is: "customer.name".
  const refused = fault?.field?.split('.').at(-1)
  const fields = fieldsOf(draft, change, name => (refused === name ? fault?.message : undefined))
  if (draft.customerId !== null) return <Known draft={draft} change={change} fields={fields} />
  const customers = found.data?.customers ?? []
  return (
    <Stack gap="xs">
      <TextInput
        data-autofocus
        autoFocus
        label="Find by name, phone or plate"
        placeholder="At least two letters; Enter takes the first car"
        value={text}
        onChange={event => setText(event.currentTarget.value)}
        onKeyDown={event => {
          if (event.key !== 'Enter' || asked !== text.trim() || !customers[0]) return
          event.preventDefault()
          change(callerOf(customers[0], customers[0].vehicles[0]))
        }}
      />
      {asked.length >= 2 && customers.length > 0 && (
        <ul className={styles.found} aria-label="Found customers">
          {customers.slice(0, 6).map(customer => (
            <li key={customer.id}>
              <span>
                <b>{customer.name}</b> {customer.phone && showPhone(customer.phone, country)}
              </span>
              <Group gap={6}>
                {customer.vehicles.map(vehicle => (
                  <Button
                    key={vehicle.id}
                    size="xs"
                    variant="default"
                    onClick={() => change(callerOf(customer, vehicle))}
                  >
                    {vehicle.plate} {vehicle.make} {vehicle.model}
                  </Button>
                ))}
                <Button size="xs" variant="subtle" onClick={() => change(callerOf(customer, undefined))}>
                  Another car
                </Button>
              </Group>
            </li>
          ))}
        </ul>
      )}
      {asked.length >= 2 && found.data && customers.length === 0 && (
        <Text size="sm" c="dimmed">
          Nobody by that name, phone or plate: take the caller down here.
        </Text>
      )}
      <Group grow align="flex-start">
        <TextInput
          label="New customer’s name"
          {...fields.field('customerName')}
          error={refused === 'name' ? fault?.message : undefined}
        />
        <TextInput label="Phone" type="tel" {...fields.field('phone')} />
      </Group>
      <TextInput label="E-mail" type="email" {...fields.field('email')} />
      <VehicleFields fields={fields} />
    </Stack>
  )
}

/** Somebody found, with one of their cars, or with none yet. */
function callerOf(
  { id, name }: FoundCustomer,
  vehicle: FoundCustomer['vehicles'][number] | undefined,
): Partial<Draft> {
  if (!vehicle) return { ...nobody, customerId: id, customerName: name }
  const { plate, make, model, colour, sizeClass, finish } = vehicle
  return {
    ...nobody,
    customerId: id,
    customerName: name,
    vehicleId: vehicle.id,
    plate,
    make,
    model,
    colour,
    sizeClass: sizeClass as Draft['sizeClass'],
    finish: finish as Draft['finish'],
  }
}

interface KnownProps extends Pick<Props, 'draft' | 'change'> {
  fields: Fields<Draft>
}

function Known({ draft, change, fields }: KnownProps) {
  return (
    <Stack gap="xs">
      <Text>
        <b>{draft.customerName}</b>
        {draft.vehicleId && ` · ${draft.plate} ${draft.make} ${draft.model}`}{' '}
        <Anchor component="button" type="button" autoFocus onClick={() => change(nobody)}>
          Somebody else
        </Anchor>
      </Text>
      {!draft.vehicleId && <VehicleFields fields={fields} />}
    </Stack>
  )
}

function VehicleFields({ fields }: { fields: Fields<Draft> }) {
  return (
    <>
      <Group grow align="flex-start">
        <TextInput label="Plate" {...fields.field('plate')} />
        <TextInput label="Make" {...fields.field('make')} />
        <TextInput label="Model" {...fields.field('model')} />
      </Group>
      <Group grow align="flex-start">
        <TextInput label="Colour" {...fields.field('colour')} />
        <Select label="Finish" data={finishChoices} {...fields.choice('finish')} />
      </Group>
      <Segments label="Size" aria-label="Vehicle size" data={sizeChoices} {...fields.field('sizeClass')} />
    </>
  )
}
