import { Button, Group } from '@mantine/core'
import { useState } from 'react'
import type { MessageView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { OptionalDateField } from '../../../parts/DateField.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { Refused } from '../../../parts/form/Refused.tsx'
import pieces from '../../../parts/pieces.module.css'
import { outcomeChoices } from '../words.ts'

interface Props {
  message: MessageView
  onDone(words: string): void
}

/** What the owner answered; what follows from it is done at once and said. */
export function Outcomes({ message, onDone }: Props) {
  const [later, setLater] = useState(false)
  const saving = useSaving(trpc.reminders.outcome.mutationOptions())
  const said = ({ words }: { words: string | null }) => {
    setLater(false)
    onDone(`✓ ${message.plate}: ${words ?? say('noted.')}`)
  }
  const form = useForm({
    saved: { laterOn: null as string | null },
    saving: trpc.reminders.outcome.mutationOptions(),
    send: ({ laterOn }) => ({
      messageId: message.id,
      outcome: 'later' as const,
      ...(laterOn && { laterOn }),
    }),
    done: said,
  })
  return (
    <div>
      <h3>{say('Outcome')}</h3>
      <Group gap="sm" role="group" aria-label={say('Outcome')}>
        {outcomeChoices.map(({ value, label, about }) => (
          <Button
            key={value}
            variant={message.outcome === value ? 'filled' : 'default'}
            aria-pressed={message.outcome === value}
            size="compact-md"
            title={about}
            loading={saving.busy}
            onClick={() =>
              value === 'later'
                ? setLater(true)
                : saving.save({ messageId: message.id, outcome: value }, said)
            }
          >
            {label}
          </Button>
        ))}
      </Group>
      {later ? (
        <Form
          form={form}
          label={say('Ask again later')}
          save={say('Save it')}
          onCancel={() => setLater(false)}
        >
          <div className={pieces.fields}>
            <OptionalDateField
              label={say('Ask again on')}
              description={say('empty: as the rules say')}
              {...form.field('laterOn')}
            />
          </div>
        </Form>
      ) : (
        <Refused of={saving.error} />
      )}
    </div>
  )
}
