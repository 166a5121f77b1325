import { Textarea, TextInput } from '@mantine/core'
import type { MessageView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import pieces from '../../../parts/pieces.module.css'

interface Props {
  message: MessageView
  /** Null: left as it was. */
  onDone(words: string | null): void
}

/** Other words for one message; it is to be reviewed again afterwards. */
export function EditMessage({ message, onDone }: Props) {
  const { id, channel } = message
  const form = useForm({
    saved: { subject: message.subject, body: message.body },
    version: message.version,
    saving: trpc.reminders.edit.mutationOptions(),
    send: (value, version) => ({ ...value, id, version }),
    done: () => onDone(say('✓ {plate}: words saved.', { plate: message.plate })),
  })
  const { faults } = form
  return (
    <Form
      form={form}
      label={say('Edit the words')}
      save={say('Save the words')}
      ready
      onCancel={() => onDone(null)}
    >
      <div className={pieces.column}>
        {(channel === 'email' || channel === 'letter') && (
          <TextInput
            label={channel === 'email' ? say('Subject') : say('Heading')}
            {...form.field('subject')}
            error={faults.at('words.subject') ?? faults.at('subject')}
          />
        )}
        <Textarea
          label={say('Text')}
          description={say(
            "A blank ____ has to be filled or taken out; fields such as '{''{'slotOne'}''}' are filled when saved",
          )}
          autosize
          minRows={8}
          maxRows={22}
          {...form.field('body')}
          error={faults.at('words.body') ?? faults.at('body')}
        />
      </div>
    </Form>
  )
}
