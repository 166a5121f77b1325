import { Button, Group, Switch, Text, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { IconSearch } from '@tabler/icons-react'
import { useInfiniteQuery } from '@tanstack/react-query'
import { Link, useNavigate } from '@tanstack/react-router'
import { useState } from 'react'
import type { FoundCustomer } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { HeadRow } from '../../parts/HeadRow.tsx'
import pieces from '../../parts/pieces.module.css'
import table from '../../parts/table.module.css'
import styles from './Customers.module.css'

const page = 100

/** Everybody who brings cars, found by any part of what is known of them. */
export function Customers() {
  const navigate = useNavigate()
  const { country } = useShop()
  const [text, setText] = useState('')
  const [archived, setArchived] = useState(false)
  const [asked] = useDebouncedValue(text.trim(), 120)
  const { data, fetchNextPage, hasNextPage } = useInfiniteQuery(
    trpc.customers.find.infiniteQueryOptions(
      { text: asked, limit: page, archived },
      { getNextPageParam: last => last.next, placeholderData: before => before },
    ),
  )
  const total = data?.pages[0]?.total
  const customers = data?.pages.flatMap(each => each.customers) ?? []
  const open = (id: string) => void navigate({ to: '/customers/$id', params: { id } })
  return (
    <div className={pieces.column}>
      <div className={pieces.heading}>
        <h1>{say('Customers')}</h1>
        {total !== undefined && <span className={pieces.soft}>{countWords(total, asked)}</span>}
        <Button className={pieces.end} variant="default" component={Link} to="/imports">
          {say('Take in a list')}
        </Button>
        <Button onClick={() => navigate({ to: '/customers/new' })}>{say('Add a customer')}</Button>
      </div>
      <Group gap="lg">
        <TextInput
          aria-label={say('Find a customer')}
          placeholder={say('Any part of a name, plate, phone, e-mail or car')}
          leftSection={<IconSearch size="1rem" aria-hidden="true" />}
          flex={1}
          maw="32.5rem"
          autoFocus
          value={text}
          onChange={event => setText(event.currentTarget.value)}
          onKeyDown={event => {
            const [only] = customers
            if (event.key === 'Enter' && only && text.trim() === asked) open(only.id)
          }}
        />
        <Switch
          label={say('Archived ones too')}
          checked={archived}
          onChange={event => setArchived(event.currentTarget.checked)}
        />
      </Group>
      {total === 0 && <Nobody asked={asked} />}
      {customers.length > 0 && (
        <table className={`${pieces.box} ${table.table} ${styles.table}`}>
          <HeadRow columns={[say('Name'), say('Phone'), say('E-mail'), say('Cars')]} />
          <tbody>
            {customers.map(customer => (
              <CustomerRow key={customer.id} customer={customer} country={country} />
            ))}
          </tbody>
        </table>
      )}
      {hasNextPage && (
        <Button variant="default" mt="md" onClick={() => fetchNextPage()}>
          {say('Show more')}
        </Button>
      )}
    </div>
  )
}

function countWords(total: number, asked: string): string {
  const people = say('{total, plural, one {1 customer} other {{total} customers}}', { total })
  return asked ? say('{people} found', { people }) : people
}

function CustomerRow({ customer, country }: { customer: FoundCustomer; country: string }) {
  return (
    <tr data-archived={customer.archivedAt !== null}>
      <td>
        <Link to="/customers/$id" params={{ id: customer.id }}>
          {customer.name}
        </Link>
      </td>
      <td className={styles.phone}>{customer.phone && showPhone(customer.phone, country)}</td>
      <td>{customer.email}</td>
      <td>
        {customer.vehicles.map(car => (
          <span key={car.id} className={styles.car}>
            <b>{car.plate || say('no plate')}</b>{' '}
            {[car.colour, car.make, car.model].filter(Boolean).join(' ')}
          </span>
        ))}
      </td>
    </tr>
  )
}

function Nobody({ asked }: { asked: string }) {
  return (
    <div className={pieces.empty}>
      <Text fw={600}>
        {asked ? say('Nobody found for “{asked}”.', { asked }) : say('Nobody is here yet.')}
      </Text>
      <Text>
        {asked
          ? say('Try a part of the name, the plate without its spaces, or the last digits of the phone.')
          : say('A caller is taken down while booking, or add somebody here before their first visit.')}
      </Text>
    </div>
  )
}
