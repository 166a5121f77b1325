import type { IntakeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { Form } from '../../parts/form/Form.tsx'
import pieces from '../../parts/pieces.module.css'
import { GainChart } from './GainChart.tsx'
import { GlossPart } from './gloss/GlossPart.tsx'
import { ThicknessPart } from './thickness/ThicknessPart.tsx'

/** What the work changed: measured again in the same places, before and after side by side. */
export function AfterWork({ record }: { record: IntakeView }) {
  const { jobId, after, gained, units } = record
  const form = useForm({
    saved: after.content,
    version: after.version,
    saving: trpc.intake.saveAfter.mutationOptions(),
    send: (content, version) => ({ jobId, version, content }),
  })
  return (
    <>
      <Card
        title={say('Before and after')}
        empty={
          gained.gloss.length + gained.thickness.length === 0 &&
          say('Measure the same panels again once the work is done; what changed is drawn here.')
        }
      >
        <GainChart gained={gained} units={units} />
      </Card>
      <Form form={form} label={say('Measured after the work')} save={say('Save these readings')}>
        <div className={pieces.column}>
          <ThicknessPart
            record={record}
            measured={form.value}
            change={form.change}
            error={form.faults.under('thickness') ?? form.faults.under('readings')}
          />
          <GlossPart
            allowedGu={record.rules.glossAllowedGu}
            sets={form.value.gloss}
            change={gloss => form.change({ gloss })}
            errorAt={name => form.faults.at(`content.gloss.${name}`)}
          />
        </div>
      </Form>
    </>
  )
}
