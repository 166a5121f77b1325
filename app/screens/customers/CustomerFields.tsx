import { Textarea, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { parsePhone } from '../../../main/domain/vehicle/index.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import type { Faults } from '../../parts/faults.ts'
import { PhoneInput } from '../../parts/inputs.tsx'
import styles from './Customers.module.css'

export interface CustomerFieldValues {
  name: string
  phone: string
  email: string
  note: string
}

interface Props {
  id: string | undefined
  value: CustomerFieldValues
  change(part: Partial<CustomerFieldValues>): void
  faults: Faults
  autoFocus?: boolean
}

/** Name, phone, mail and a note; says when somebody else already has the number. */
export function CustomerFields({ id, value, change, faults, autoFocus = false }: Props) {
  return (
    <>
      <TextInput
        label="Name"
        autoFocus={autoFocus}
        value={value.name}
        onChange={event => change({ name: event.currentTarget.value })}
        error={faults.at('name')}
      />
      <PhoneInput
        label="Phone"
        value={value.phone}
        onChange={phone => change({ phone })}
        error={faults.at('phone')}
      />
      <SameNumber id={id} phone={value.phone} />
      <TextInput
        label="E-mail"
        type="email"
        value={value.email}
        onChange={event => change({ email: event.currentTarget.value })}
        error={faults.at('email')}
      />
      <Textarea
        label="Note"
        autosize
        minRows={2}
        value={value.note}
        onChange={event => change({ note: event.currentTarget.value })}
        error={faults.at('note')}
      />
    </>
  )
}

/** Families share a phone, so this only says so. */
function SameNumber({ id, phone }: { id: string | undefined; phone: string }) {
  const { country } = useShop()
  const [typed] = useDebouncedValue(phone, 250)
  const e164 = parsePhone(typed, country)?.e164 ?? null
  const found = useQuery({
    ...trpc.customers.find.queryOptions({ text: e164 ?? '', limit: 5 }),
    enabled: e164 !== null,
  }).data
  const other = e164 && found?.customers.find(each => each.phone === e164 && each.id !== id)
  if (!other) return null
  return (
    <p className={styles.soft} role="status">
      <Link to="/customers/$id" params={{ id: other.id }}>
        {other.name}
      </Link>{' '}
      has this number too.
    </p>
  )
}
