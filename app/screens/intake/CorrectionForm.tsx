import { TextInput } from '@mantine/core'
import type { IntakeEntryView, IntakeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'
import { SignBox } from '../../parts/SignBox.tsx'
import { IntakeFields } from './IntakeFields.tsx'

interface Props {
  record: IntakeView
  /** The page that is corrected. */
  entry: IntakeEntryView
  onDone(): void
}

/** A further page: what is right, what was wrong, and the owner’s hand under it. The page it corrects stays. */
export function CorrectionForm({ record, entry, onDone }: Props) {
  const form = useForm({
    saved: { draft: entry.content.draft, reason: '', ownerName: record.facts.customerName, signature: '' },
    saving: trpc.intake.correct.mutationOptions(),
    send: value => ({ ...value, jobId: record.jobId, correctsId: entry.id }),
    done: onDone,
  })
  const { draft, signature } = form.value
  return (
    <Form
      form={form}
      label={say('Correction')}
      save={say('Sign the correction of page {number}', { number: entry.number })}
      onCancel={onDone}
    >
      <IntakeFields
        record={record}
        draft={draft}
        change={part => form.change({ draft: { ...draft, ...part } })}
        faults={form.faults}
      />
      <Card title={say('Signature')}>
        <div className={pieces.fields}>
          <TextInput label={say('What was wrong')} maxLength={500} {...form.field('reason')} />
          <TextInput label={say('Name of the owner')} maxLength={80} {...form.field('ownerName')} />
        </div>
        <SignBox
          label={say('Signature of the owner')}
          keep="path"
          value={signature}
          onChange={path => form.change({ signature: path })}
          error={form.faults.at('signature')}
        />
      </Card>
    </Form>
  )
}
