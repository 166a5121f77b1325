import { Button, Textarea, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { MessageView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import styles from '../Upkeep.module.css'

interface Props {
  message: MessageView
  /** Null: left as it was. */
  onDone(words: string | null): void
}

/** Other words for one message; it is to be reviewed again afterwards. */
export function EditMessage({ message, onDone }: Props) {
  const [subject, setSubject] = useState(message.subject)
  const [body, setBody] = useState(message.body)
  const saving = useSaving(trpc.reminders.edit.mutationOptions())
  const faults = faultsOf(saving.error)
  const { id, version, channel } = message
  return (
    <Form
      error={saving.error}
      label="Edit the words"
      onSave={() =>
        saving.save({ id, version, subject, body }, () => onDone(`✓ ${message.plate}: words saved.`))
      }
    >
      <div className={styles.stack}>
        {(channel === 'email' || channel === 'letter') && (
          <TextInput
            label={channel === 'email' ? 'Subject' : 'Heading'}
            value={subject}
            onChange={event => setSubject(event.currentTarget.value)}
            error={faults.at('words.subject') ?? faults.at('subject')}
          />
        )}
        <Textarea
          label="Text"
          description="A blank ____ has to be filled or taken out; fields such as {{slotOne}} are filled when saved"
          autosize
          minRows={8}
          maxRows={22}
          value={body}
          onChange={event => setBody(event.currentTarget.value)}
          error={faults.at('words.body') ?? faults.at('body')}
        />
        <FormFoot faults={faults} busy={saving.busy} label="Save the words">
          <Button variant="default" onClick={() => onDone(null)}>
            Leave it as it was
          </Button>
        </FormFoot>
      </div>
    </Form>
  )
}
