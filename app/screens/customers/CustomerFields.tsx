import { Select, Textarea, TextInput } from '@mantine/core'
import type { CustomerView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { FormOf } from '../../data/form.ts'
import { AlikeList } from '../../parts/AlikeList.tsx'
import { PhoneInput } from '../../parts/inputs.tsx'
import { customerKindChoices } from '../../parts/shopWords.ts'
import { UnprintedNote } from '../../parts/UnprintedNote.tsx'
import { useAlike } from '../../parts/useAlike.ts'

export type CustomerFieldValues = Pick<CustomerView, 'kind' | 'name' | 'note'> & {
  phone: string
  email: string
  /** With commas between. */
  tags: string
}

interface Props {
  form: FormOf<CustomerFieldValues>
  autoFocus?: boolean
  /** Somebody new: whoever is like them on file is shown. */
  isNew?: boolean
}

/** Name, phone, mail, tags and a note. */
export function CustomerFields({ form, autoFocus = false, isNew = false }: Props) {
  return (
    <>
      <TextInput label={say('Name')} autoFocus={autoFocus} {...form.field('name')} />
      <UnprintedNote of={form.value.name} />
      {isNew && <OnFile value={form.value} />}
      <Select label={say('Who they are')} data={customerKindChoices} {...form.choice('kind')} />
      <PhoneInput label={say('Phone')} {...form.field('phone')} />
      <TextInput label={say('E-mail')} type="email" {...form.field('email')} />
      <TextInput
        label={say('Tags')}
        description={say('Words of your own to find them by, commas between')}
        {...form.field('tags')}
      />
      <Textarea label={say('Note')} autosize minRows={2} {...form.field('note')} />
    </>
  )
}

function OnFile({ value: { name, phone, email } }: { value: CustomerFieldValues }) {
  return <AlikeList alike={useAlike({ name, phone, email })} />
}

/** What a form begins with, and what it sends. */
export const fieldsOfCustomer = ({
  kind,
  name,
  phone,
  email,
  tags,
  note,
}: CustomerView): CustomerFieldValues => ({
  kind,
  name,
  phone: phone ?? '',
  email: email ?? '',
  tags: tags.join(', '),
  note,
})

export const sentCustomer = ({ tags, ...rest }: CustomerFieldValues) => ({ ...rest, tags: tags.split(',') })
