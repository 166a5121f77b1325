import { Select, Textarea, TextInput } from '@mantine/core'
import type { ConsentsView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
import { countryChoices } from '../../parts/placeChoices.ts'

/** How an owner is written to: in which language, by which clock, to which postal address. */
export function ReachForm({ consents, onDone }: { consents: ConsentsView; onDone(): void }) {
  const { language, zone, postal, country, version } = consents.reach
  const form = useForm({
    saved: { language: language ?? '', zone: zone ?? '', postal, country },
    version,
    saving: trpc.consents.saveReach.mutationOptions(),
    send: (value, version) => ({
      customerId: consents.customerId,
      language: value.language.trim() || null,
      zone: value.zone.trim() || null,
      postal: value.postal,
      country: value.country,
      version,
    }),
    done: onDone,
  })
  return (
    <Form form={form} label={say('Language and postal address')} onCancel={onDone}>
      <TextInput
        label={say('Language')}
        description={say('A tag such as en, de or es; empty: the shop’s')}
        {...form.field('language')}
      />
      <TextInput
        label={say('Zone')}
        description={say('As Europe/London, where they live by another clock; empty: the shop’s')}
        {...form.field('zone')}
      />
      <Textarea
        label={say('Postal address')}
        description={say('Below the name, a line each; for letters in a window envelope')}
        autosize
        minRows={3}
        {...form.field('postal')}
      />
      <Select
        label={say('Country')}
        description={say(
          'Where the address is; empty: the shop’s. Printed last on a letter that goes abroad',
        )}
        data={countryChoices()}
        searchable
        clearable
        {...form.field('country')}
      />
    </Form>
  )
}
