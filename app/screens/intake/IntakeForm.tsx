import { Button, TextInput } from '@mantine/core'
import type { IntakeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { Form } from '../../parts/form/Form.tsx'
import { Refused } from '../../parts/form/Refused.tsx'
import pieces from '../../parts/pieces.module.css'
import { SignBox } from '../../parts/SignBox.tsx'
import { IntakeFields } from './IntakeFields.tsx'
import { useKeptDraft } from './useKeptDraft.ts'

/** The intake before it is signed: kept as often as wanted, signed once by whoever brought the car. */
export function IntakeForm({ record }: { record: IntakeView }) {
  const { jobId, version } = record
  const form = useForm({
    saved: { draft: record.draft, ownerName: record.facts.customerName, signature: '' },
    version,
    saving: trpc.intake.save.mutationOptions(),
    send: ({ draft }, version) => ({ jobId, version, draft }),
  })
  useKeptDraft(jobId, form)
  const { draft, ownerName, signature } = form.value
  const signing = useSaving(trpc.intake.sign.mutationOptions())
  const refused = faultsOf(signing.error)
  const sign = () => signing.save({ jobId, version: form.version, draft, ownerName, signature }, form.settle)
  return (
    <Form form={form} label={say('Intake')} save={say('Save as a draft')}>
      <IntakeFields
        record={record}
        draft={draft}
        change={part => form.change({ draft: { ...draft, ...part } })}
        faults={signing.error ? refused : form.faults}
      />
      <Card title={say('Signature')}>
        <p>
          {say(
            'I have seen the marks and photos of my car with the shop, and they are as it came. Signed, this page is not changed any more; what was wrong is put right on a further page.',
          )}
        </p>
        <div className={pieces.fields}>
          <TextInput
            label={say('Name of the owner')}
            maxLength={80}
            {...form.field('ownerName')}
            error={refused.at('ownerName')}
          />
        </div>
        <SignBox
          label={say('Signature of the owner')}
          keep="path"
          value={signature}
          onChange={path => form.change({ signature: path })}
          error={refused.at('signature')}
        />
        <Refused words={refused.rest()} />
        <Button onClick={sign} loading={signing.busy} size="md">
          {say('Sign the intake')}
        </Button>
      </Card>
    </Form>
  )
}
