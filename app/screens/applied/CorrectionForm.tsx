import { Group, Stack, TextInput } from '@mantine/core'
import type { AppliedEntryView, AppliedView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'
import { DraftFields } from './DraftFields.tsx'

interface Props {
  record: AppliedView
  /** The page that is corrected. */
  entry: AppliedEntryView
  onDone(): void
}

/** A further page: what is right, what was wrong, and who says so. The page it corrects stays as it was signed. */
export function CorrectionForm({ record, entry, onDone }: Props) {
  const form = useForm({
    saved: { draft: entry.content.draft, reason: '', signedBy: '' },
    saving: trpc.applied.correct.mutationOptions(),
    send: value => ({ ...value, jobId: record.jobId, correctsId: entry.id }),
    done: onDone,
  })
  const { draft } = form.value
  return (
    <Form
      form={form}
      label={say('Correction')}
      save={say('Sign the correction of page {number}', { number: entry.number })}
    >
      <Stack>
        <DraftFields
          facts={record.facts}
          zone={record.zone}
          lots={record.lots}
          draft={draft}
          change={part => form.change({ draft: { ...draft, ...part } })}
          faults={form.faults}
        />
        <section className={pieces.card}>
          <Group align="flex-start" mb="sm">
            <TextInput label={say('What was wrong')} w={360} {...form.field('reason')} />
            <TextInput label={say('Your name, to sign')} {...form.field('signedBy')} />
          </Group>
        </section>
      </Stack>
    </Form>
  )
}
