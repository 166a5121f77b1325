import { Group, TextInput } from '@mantine/core'
import { notifications } from '@mantine/notifications'
import type { JobCureView, JobView } from '../../../main/api/views.ts'
import { lampCautions } from '../../../main/domain/hazard/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { degrees } from '../../parts/degrees.ts'
import { Lines } from '../../parts/Facts.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { MomentInput } from '../../parts/MomentInput.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { nearWords } from '../../parts/time.ts'
import { useJobAct } from './useJobAct.ts'

/** Lamps and heated bays: what was given, and a form for more while the car is here. */
export function Heatings({ job, cure: view }: { job: JobView; cure: JobCureView }) {
  const { units } = useShop()
  const take = useJobAct(trpc.cure.voidHeating.mutationOptions())
  const when = (at: number) => nearWords(at, job.zone, job.nowAt)
  return (
    <>
      <h3>{say('Heated cure')}</h3>
      <p className={pieces.soft}>
        {view.heatRows.length === 0
          ? say(
              'No data sheet of the coats here has a row for heat, so heat shortens nothing. It can still be recorded.',
            )
          : say('By its data sheet: {heatRows}. Less than that shortens nothing.', {
              heatRows: view.heatRows.join('; '),
            })}
      </p>
      {view.heatings.map(heating => (
        <Group key={heating.id} gap="sm">
          <span>
            {say('{fromAt} to {toAt}, panel at {panelC} or hotter', {
              fromAt: when(heating.fromAt),
              toAt: when(heating.toAt),
              panelC: degrees(heating.panelC, units),
            })}
            {heating.note && `, ${heating.note}`} ({heating.who})
          </span>
          {view.canHeat && (
            <RowButton
              does={say('Take back')}
              of={say('the heated cure of {fromAt}', { fromAt: when(heating.fromAt) })}
              size="compact-xs"
              disabled={take.isPending}
              onClick={() => take.mutate({ jobId: job.id, version: job.version, id: heating.id })}
            />
          )}
        </Group>
      ))}
      {view.canHeat && (
        <details>
          <summary>{say('Record a heated cure')}</summary>
          <Lines of={lampCautions(units)} />
          <HeatingForm job={job} />
        </details>
      )}
    </>
  )
}

function HeatingForm({ job }: { job: JobView }) {
  const form = useForm({
    saved: { fromAt: job.nowAt - 60, toAt: job.nowAt, panelC: null as number | null, note: '' },
    saving: trpc.cure.addHeating.mutationOptions(),
    send: ({ panelC, ...value }) =>
      panelC === null ? null : { ...value, panelC, jobId: job.id, version: job.version },
    done: ({ counted }) =>
      notifications.show({
        message: counted
          ? say('Recorded: it meets a row of the data sheet, and the clock follows it.')
          : say('Recorded. It meets no row of a data sheet, so the clock does not change.'),
      }),
  })
  return (
    <Form form={form} label={say('Heated cure')} save={say('Record it')} ready={form.value.panelC !== null}>
      <Group align="flex-start" gap="0.75rem" mt="xs">
        <MomentInput label={say('From')} {...form.field('fromAt')} />
        <MomentInput label={say('To')} {...form.field('toAt')} />
        <DegreesInput label={say('Coldest panel')} required {...form.field('panelC')} />
        <TextInput label={say('With what')} {...form.field('note')} />
      </Group>
    </Form>
  )
}
