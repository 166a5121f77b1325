import { Group, Stack, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { AppliedDraft, AppliedEntryView, AppliedView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { CardFoot } from '../../parts/CardFoot.tsx'
import { Form } from '../../parts/Form.tsx'
import { faultsOf } from '../../parts/faults.ts'
import styles from './Applied.module.css'
import { DraftFields } from './DraftFields.tsx'

interface Props {
  record: AppliedView
  /** The page that is corrected. */
  entry: AppliedEntryView
  onDone(): void
}

/** A further page: what is right, what was wrong, and who says so. The page it corrects stays as it was signed. */
export function CorrectionForm({ record, entry, onDone }: Props) {
  const [draft, setDraft] = useState<AppliedDraft>(entry.content.draft)
  const [reason, setReason] = useState('')
  const [signedBy, setSignedBy] = useState('')
  const { save, busy, error } = useSaving(trpc.applied.correct.mutationOptions())
  const faults = faultsOf(error)
  return (
    <Form
      onSave={() => save({ jobId: record.jobId, correctsId: entry.id, draft, reason, signedBy }, onDone)}
      label="Correction"
      error={error}
    >
      <Stack>
        <DraftFields
          facts={record.facts}
          zone={record.zone}
          lots={record.lots}
          draft={draft}
          change={part => setDraft(now => ({ ...now, ...part }))}
          faults={faults}
        />
        <section className={styles.card}>
          <Group align="flex-start" mb="sm">
            <TextInput
              label="What was wrong"
              w={360}
              value={reason}
              error={faults.at('reason')}
              onChange={event => setReason(event.currentTarget.value)}
            />
            <TextInput
              label="Your name, to sign"
              value={signedBy}
              error={faults.at('signedBy')}
              onChange={event => setSignedBy(event.currentTarget.value)}
            />
          </Group>
          <CardFoot faults={faults} busy={busy} label={`Sign the correction of page ${entry.number}`} />
        </section>
      </Stack>
    </Form>
  )
}
