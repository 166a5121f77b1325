import { Anchor, Button, Group, SegmentedControl, Select, Stack, Text, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { FoundCustomer } from '../../../main/api/views.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import styles from './Book.module.css'
import { type Draft, finishes, nobody, sizeClasses } from './booking.ts'

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
  const errorOf = (field: string) => (refused === field ? fault?.message : undefined)
  if (draft.customerId !== null) return <Known draft={draft} change={change} errorOf={errorOf} />
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
          value={draft.customerName}
          error={errorOf('name')}
          onChange={event => change({ customerName: event.currentTarget.value })}
        />
        <TextInput
          label="Phone"
          type="tel"
          value={draft.phone}
          error={errorOf('phone')}
          onChange={event => change({ phone: event.currentTarget.value })}
        />
      </Group>
      <TextInput
        label="E-mail"
        type="email"
        value={draft.email}
        error={errorOf('email')}
        onChange={event => change({ email: event.currentTarget.value })}
      />
      <VehicleFields draft={draft} change={change} errorOf={errorOf} />
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

type ErrorOf = (field: string) => string | undefined

function Known({ draft, change, errorOf }: { draft: Draft; change: Props['change']; errorOf: ErrorOf }) {
  return (
    <Stack gap="xs">
      <Text>
        <b>{draft.customerName}</b>
        {draft.vehicleId && ` · ${draft.plate} ${draft.make} ${draft.model}`}{' '}
        <Anchor component="button" type="button" autoFocus onClick={() => change(nobody)}>
          Somebody else
        </Anchor>
      </Text>
      {!draft.vehicleId && <VehicleFields draft={draft} change={change} errorOf={errorOf} />}
    </Stack>
  )
}

function VehicleFields({
  draft,
  change,
  errorOf,
}: {
  draft: Draft
  change: Props['change']
  errorOf: ErrorOf
}) {
  const text = (label: string, key: 'plate' | 'make' | 'model' | 'colour') => (
    <TextInput
      label={label}
      value={draft[key]}
      error={errorOf(key)}
      onChange={event => change({ [key]: event.currentTarget.value })}
    />
  )
  return (
    <>
      <Group grow align="flex-start">
        {text('Plate', 'plate')}
        {text('Make', 'make')}
        {text('Model', 'model')}
      </Group>
      <Group grow align="flex-start">
        {text('Colour', 'colour')}
        <Select
          label="Finish"
          data={finishes}
          allowDeselect={false}
          value={draft.finish}
          onChange={value => value && change({ finish: value as Draft['finish'] })}
        />
      </Group>
      <div>
        <Text size="sm" fw={500} mb={4}>
          Size
        </Text>
        <SegmentedControl
          fullWidth
          aria-label="Vehicle size"
          data={sizeClasses}
          value={draft.sizeClass}
          onChange={value => change({ sizeClass: value as Draft['sizeClass'] })}
        />
      </div>
    </>
  )
}
