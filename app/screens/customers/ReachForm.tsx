import { Button, Textarea, TextInput } from '@mantine/core'
import type { ConsentsView } from '../../../main/api/views.ts'
import { useDraft } from '../../data/draft.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'

/** How an owner is written to: in which language, by which clock, to which postal address. */
export function ReachForm({ consents, onDone }: { consents: ConsentsView; onDone(): void }) {
  const { language, zone, postal, version } = consents.reach
  const draft = useDraft({ language: language ?? '', zone: zone ?? '', postal }, version)
  const saving = useSaving(trpc.consents.saveReach.mutationOptions())
  const faults = faultsOf(saving.error)
  const save = () =>
    saving.save(
      {
        customerId: consents.customerId,
        language: draft.value.language.trim() || null,
        zone: draft.value.zone.trim() || null,
        postal: draft.value.postal,
        version,
      },
      onDone,
    )
  return (
    <Form error={saving.error} label="Language and postal address" onSave={save}>
      <TextInput
        label="Language"
        description="A tag such as en, de or es; empty: the shop’s"
        value={draft.value.language}
        onChange={event => draft.change({ language: event.currentTarget.value })}
        error={faults.at('language')}
      />
      <TextInput
        label="Zone"
        description="As Europe/London, where they live by another clock; empty: the shop’s"
        value={draft.value.zone}
        onChange={event => draft.change({ zone: event.currentTarget.value })}
        error={faults.at('zone')}
      />
      <Textarea
        label="Postal address"
        description="Below the name, a line each; for letters in a window envelope"
        autosize
        minRows={3}
        value={draft.value.postal}
        onChange={event => draft.change({ postal: event.currentTarget.value })}
        error={faults.at('postal')}
      />
      <FormFoot
        faults={faults}
        busy={saving.busy}
        outdated={draft.outdated}
        onReload={() => {
          saving.reset()
          draft.reload()
        }}
      >
        <Button variant="default" onClick={onDone}>
          Not now
        </Button>
      </FormFoot>
    </Form>
  )
}
