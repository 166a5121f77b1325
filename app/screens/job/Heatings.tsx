import { Button, Group, Stack, TextInput } from '@mantine/core'
import { notifications } from '@mantine/notifications'
import type { JobCureView, JobView } from '../../../main/api/views.ts'
import { useForm } from '../../data/form.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { degrees } from '../../parts/degrees.ts'
import { Form } from '../../parts/form/Form.tsx'
import { MomentInput } from '../../parts/MomentInput.tsx'
import { nearWords } from '../../parts/time.ts'
import cure from './Cure.module.css'
import styles from './Job.module.css'
import { useJobAct } from './useJobAct.ts'

/** Lamps and heated bays: what was given, and a form for more while the car is here. */
export function Heatings({ job, cure: view }: { job: JobView; cure: JobCureView }) {
  const { units } = useShop()
  const take = useJobAct(trpc.cure.voidHeating.mutationOptions())
  return (
    <>
      <h3>Heated cure</h3>
      <p className={styles.soft}>
        {view.heatRows.length === 0
          ? 'No data sheet of what is laid here has a row for heat, so heat shortens nothing; it can be recorded all the same.'
          : `By its data sheet: ${view.heatRows.join('; ')}. Less than that shortens nothing.`}
      </p>
      {view.heatings.map(heating => (
        <Group key={heating.id} gap="sm">
          <span>
            {nearWords(heating.fromAt, job.zone, job.nowAt)} to {nearWords(heating.toAt, job.zone, job.nowAt)}
            , panel at {degrees(heating.panelC, units)} or hotter{heating.note && `, ${heating.note}`} (
            {heating.who})
          </span>
          {view.canHeat && (
            <Button
              size="compact-xs"
              variant="default"
              disabled={take.isPending}
              onClick={() => take.mutate({ jobId: job.id, version: job.version, id: heating.id })}
              aria-label={`Take back the heated cure of ${nearWords(heating.fromAt, job.zone, job.nowAt)}`}
            >
              Take back
            </Button>
          )}
        </Group>
      ))}
      {view.canHeat && (
        <details>
          <summary>Record a heated cure</summary>
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
          ? 'Recorded: it meets a row of the data sheet, and the clock follows it.'
          : 'Recorded. It meets no row of a data sheet, so the clock does not change.',
      }),
  })
  return (
    <Form form={form} label="Heated cure" save="Record it" ready={form.value.panelC !== null}>
      <Stack gap="sm" mt="xs">
        <div className={cure.heat}>
          <MomentInput label="From" {...form.field('fromAt')} />
          <MomentInput label="To" {...form.field('toAt')} />
          <DegreesInput label="Coldest panel" required {...form.field('panelC')} />
          <TextInput label="With what" {...form.field('note')} />
        </div>
      </Stack>
    </Form>
  )
}
