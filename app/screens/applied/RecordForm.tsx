import { Button, Group, Stack, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { AppliedView } from '../../../main/api/views.ts'
import { useDraft } from '../../data/draft.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { CardFoot } from '../../parts/CardFoot.tsx'
import { Form } from '../../parts/Form.tsx'
import { faultsOf } from '../../parts/faults.ts'
import styles from './Applied.module.css'
import { DraftFields } from './DraftFields.tsx'
import { FactList } from './FactList.tsx'

/** The record before it is signed: kept as often as wanted, signed once. */
export function RecordForm({ record }: { record: AppliedView }) {
  const { jobId, version } = record
  const form = useDraft(record.draft, version)
  const [signedBy, setSignedBy] = useState('')
  const keeping = useSaving(trpc.applied.save.mutationOptions())
  const signing = useSaving(trpc.applied.sign.mutationOptions())
  const error = signing.error ?? keeping.error
  const faults = faultsOf(error)
  const keep = () => keeping.save({ jobId, version, draft: form.value }, form.settle)
  const sign = () => signing.save({ jobId, version, draft: form.value, signedBy }, form.settle)
  return (
    <Form onSave={keep} label="Applied record" error={error}>
      <Stack>
        <section className={styles.card}>
          <h2>Not signed yet</h2>
          <p className={styles.soft}>
            {record.notYet ??
              'Look it over, then sign: from then on it is not changed, only corrected by a further page.'}
          </p>
          <FactList facts={record.facts} zone={record.zone} />
        </section>
        <DraftFields
          facts={record.facts}
          zone={record.zone}
          lots={record.lots}
          draft={form.value}
          change={form.change}
          faults={faults}
        />
        <section className={styles.card}>
          <Group align="flex-end" mb="sm">
            <TextInput
              label="Your name, to sign"
              value={signedBy}
              error={faults.at('signedBy')}
              onChange={event => setSignedBy(event.currentTarget.value)}
            />
            <Button onClick={sign} loading={signing.busy} disabled={record.notYet !== null}>
              Sign the record
            </Button>
          </Group>
          <CardFoot
            faults={faults}
            busy={keeping.busy}
            label="Keep as it is so far"
            dirty={form.dirty}
            onReload={form.outdated || faults.stale ? form.reload : undefined}
          />
        </section>
      </Stack>
    </Form>
  )
}
