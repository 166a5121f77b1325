import { Button, Group, Stack, TextInput } from '@mantine/core'
import type { AppliedView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { Form } from '../../parts/form/Form.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { DraftFields } from './DraftFields.tsx'
import { FactList } from './FactList.tsx'

/** The record before it is signed: kept as often as wanted, signed once. */
export function RecordForm({ record }: { record: AppliedView }) {
  const { jobId, version } = record
  const form = useForm({
    saved: { draft: record.draft, signedBy: '' },
    version,
    saving: trpc.applied.save.mutationOptions(),
    send: ({ draft }, version) => ({ jobId, version, draft }),
  })
  const { draft, signedBy } = form.value
  const signing = useSaving(trpc.applied.sign.mutationOptions())
  const refused = faultsOf(signing.error)
  const sign = () => signing.save({ jobId, version: form.version, draft, signedBy }, form.settle)
  return (
    <Form form={form} label={say('Applied record')} save={say('Save as a draft')}>
      <Stack>
        <Card title={say('Not signed yet')}>
          <p className={pieces.soft}>
            {record.notYet ??
              say(
                'Look it over, then sign: from then on it is not changed, only corrected by a further page.',
              )}
          </p>
          <FactList facts={record.facts} zone={record.zone} />
        </Card>
        <DraftFields
          facts={record.facts}
          zone={record.zone}
          lots={record.lots}
          draft={draft}
          change={part => form.change({ draft: { ...draft, ...part } })}
          faults={signing.error ? refused : form.faults}
        />
        <section className={pieces.card}>
          <Group align="flex-end" mb="sm">
            <TextInput
              label={say('Your name, to sign')}
              {...form.field('signedBy')}
              error={refused.at('signedBy')}
            />
            <Button onClick={sign} loading={signing.busy} disabled={record.notYet !== null}>
              {say('Sign the record')}
            </Button>
          </Group>
          <Refused words={refused.rest()} />
        </section>
      </Stack>
    </Form>
  )
}
