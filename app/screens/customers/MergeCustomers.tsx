import { Button, Group, Radio } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { Link, useNavigate, useParams } from '@tanstack/react-router'
import { useState } from 'react'
import type { CustomerView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { showPhone } from '../../../main/domain/vehicle/index.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import { HeadRow } from '../../parts/HeadRow.tsx'
import { Lookup } from '../../parts/Lookup.tsx'
import pieces from '../../parts/pieces.module.css'
import { customerKindChoices, labelOf } from '../../parts/shopWords.ts'
import table from '../../parts/table.module.css'

type Side = 'kept' | 'gone'
type Take = Record<'name' | 'phone' | 'email' | 'postal', Side>

/** Two entries side by side: what is taken from which, what moves, and one act that can be undone. */
export function MergeCustomers() {
  const { id, other } = useParams({ from: '/customers/$id/merge/$other' })
  const kept = useQuery(trpc.customers.get.queryOptions({ id }))
  const gone = useQuery(trpc.customers.get.queryOptions({ id: other }))
  const [postal, theirs] = [usePostal(id), usePostal(other)]
  if (!kept.data || !gone.data || postal === null || theirs === null)
    return (
      <Lookup
        error={kept.error ?? gone.error}
        what={say('the customer')}
        to="/customers"
        label={say('All customers')}
      />
    )
  const key = `${kept.data.version} ${gone.data.version}`
  return <Sides key={key} kept={kept.data} gone={gone.data} postal={{ kept: postal, gone: theirs }} />
}

/** The postal address of a customer, in one line; null while it is looked up. */
function usePostal(customerId: string): string | null {
  const { data } = useQuery(trpc.consents.list.queryOptions({ customerId }))
  return data ? data.reach.postal.replaceAll(/\s*\n\s*/g, ', ') : null
}

interface Props {
  kept: CustomerView
  gone: CustomerView
  postal: Record<Side, string>
}

function Sides({ kept, gone, postal }: Props) {
  const navigate = useNavigate()
  const { country } = useShop()
  const [take, setTake] = useState<Take>(() => ({
    name: 'kept',
    phone: kept.phone ? 'kept' : 'gone',
    email: kept.email ? 'kept' : 'gone',
    postal: postal.kept ? 'kept' : 'gone',
  }))
  const merging = useSaving(trpc.customers.merge.mutationOptions())
  const open = () => void navigate({ to: '/customers/$id', params: { id: kept.id } })
  const merge = () =>
    merging.save(
      {
        kept: { id: kept.id, version: kept.version },
        gone: { id: gone.id, version: gone.version },
        take,
      },
      open,
    )
  const phoneOf = (customer: CustomerView) => (customer.phone ? showPhone(customer.phone, country) : '')
  const chosen: [keyof Take, string, string, string][] = [
    ['name', say('Name'), kept.name, gone.name],
    ['phone', say('Phone'), phoneOf(kept), phoneOf(gone)],
    ['email', say('E-mail'), kept.email ?? '', gone.email ?? ''],
    ['postal', say('Postal address'), postal.kept, postal.gone],
  ]
  return (
    <div className={pieces.column}>
      <div className={pieces.heading}>
        <h1>{say('The same person twice')}</h1>
        <Link
          className={pieces.end}
          to="/customers/$id/merge/$other"
          params={{ id: gone.id, other: kept.id }}
        >
          {say('Keep the other entry instead')}
        </Link>
      </div>
      <Card title={say('What is kept from which entry')}>
        <table className={table.table}>
          <HeadRow
            columns={[
              say('(Of them)'),
              say('{name}, stays', { name: kept.name }),
              say('{name}, goes', { name: gone.name }),
            ]}
          />
          <tbody>
            {chosen.map(([field, label, mine, theirs]) => (
              <tr key={field}>
                <th scope="row">{label}</th>
                {(['kept', 'gone'] as const).map(side => (
                  <td key={side}>
                    <Choice
                      label={label}
                      text={side === 'kept' ? mine : theirs}
                      alone={!mine || !theirs || mine === theirs}
                      checked={take[field] === side}
                      onChoose={() => setTake({ ...take, [field]: side })}
                    />
                  </td>
                ))}
              </tr>
            ))}
            <Facts
              label={say('Who they are')}
              of={each => labelOf(customerKindChoices, each.kind)}
              {...{ kept, gone }}
            />
            <Facts label={say('Cars')} of={carsOf} {...{ kept, gone }} />
            <Facts label={say('Visits')} of={each => String(each.visits.length)} {...{ kept, gone }} />
            <Facts
              label={say('Contacts')}
              of={each => each.contacts.map(({ name }) => name).join(', ')}
              {...{ kept, gone }}
            />
            <Facts label={say('Tags')} of={each => each.tags.join(', ')} {...{ kept, gone }} />
            <Facts label={say('Note')} of={each => each.note} {...{ kept, gone }} />
          </tbody>
        </table>
        <p className={pieces.soft}>
          {say(
            'Cars, visits, consent, messages, contacts, tags and notes of both are kept together; what is not chosen is written into the note. It can be taken apart again.',
          )}
        </p>
        <Refused of={merging.error} />
        <Group mt="sm">
          <Button loading={merging.busy} onClick={merge}>
            {say('Merge')}
          </Button>
          <Button variant="default" onClick={open}>
            {say('Leave them as they are')}
          </Button>
        </Group>
      </Card>
    </div>
  )
}

interface ChoiceProps {
  label: string
  text: string
  /** Only one side says anything, or both the same: nothing to choose. */
  alone: boolean
  checked: boolean
  onChoose(): void
}

function Choice({ label, text, alone, checked, onChoose }: ChoiceProps) {
  if (alone) return <>{text || '–'}</>
  return (
    <Radio name={label} label={text} aria-label={`${label}: ${text}`} checked={checked} onChange={onChoose} />
  )
}

interface FactsProps {
  label: string
  of(customer: CustomerView): string
  kept: CustomerView
  gone: CustomerView
}

function Facts({ label, of, kept, gone }: FactsProps) {
  return (
    <tr>
      <th scope="row">{label}</th>
      <td>{of(kept) || '–'}</td>
      <td>{of(gone) || '–'}</td>
    </tr>
  )
}

const carsOf = ({ vehicles }: CustomerView) =>
  vehicles.map(car => car.plate || [car.colour, car.make, car.model].filter(Boolean).join(' ')).join(', ')
