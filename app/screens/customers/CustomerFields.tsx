import { Textarea, TextInput } from '@mantine/core'
import { useDebouncedValue } from '@mantine/hooks'
import { useQuery } from '@tanstack/react-query'
import { Link } from '@tanstack/react-router'
import { parsePhone } from '../../../main/domain/vehicle/index.ts'
import type { FormOf } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { PhoneInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'

export interface CustomerFieldValues {
  name: string
  phone: string
  email: string
  note: string
}

interface Props {
  id: string | undefined
  form: FormOf<CustomerFieldValues>
  autoFocus?: boolean
}

/** Name, phone, mail and a note; says when somebody else already has the number. */
export function CustomerFields({ id, form, autoFocus = false }: Props) {
  return (
    <>
      <TextInput label="Name" autoFocus={autoFocus} {...form.field('name')} />
      <PhoneInput label="Phone" {...form.field('phone')} />
      <SameNumber id={id} phone={form.value.phone} />
      <TextInput label="E-mail" type="email" {...form.field('email')} />
      <Textarea label="Note" autosize minRows={2} {...form.field('note')} />
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
    <p className={pieces.soft} role="status">
      <Link to="/customers/$id" params={{ id: other.id }}>
        {other.name}
      </Link>{' '}
      has this number too.
    </p>
  )
}
