import { Button, Group, Stack, TextInput } from '@mantine/core'
import { notifications } from '@mantine/notifications'
import { useState } from 'react'
import type { JobCureView, JobView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { useShop } from '../../data/shop.ts'
import { trpc } from '../../data/trpc.ts'
import { CardFoot } from '../../parts/CardFoot.tsx'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { degrees } from '../../parts/degrees.ts'
import { Form } from '../../parts/Form.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { MomentInput } from '../../parts/MomentInput.tsx'
import { dayClockWords } from '../../parts/time.ts'
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
            {dayClockWords(heating.fromAt, job.zone)} to {dayClockWords(heating.toAt, job.zone)}, panel at{' '}
            {degrees(heating.panelC, units)} or hotter{heating.note && `, ${heating.note}`} ({heating.who})
          </span>
          {view.canHeat && (
            <Button
              size="compact-xs"
              variant="default"
              disabled={take.isPending}
              onClick={() => take.mutate({ jobId: job.id, version: job.version, id: heating.id })}
              aria-label={`Take back the heated cure of ${dayClockWords(heating.fromAt, job.zone)}`}
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
  const [span, setSpan] = useState({ fromAt: job.nowAt - 60, toAt: job.nowAt })
  const [panelC, setPanelC] = useState<number | null>(null)
  const [note, setNote] = useState('')
  const { save, busy, error } = useSaving(trpc.cure.addHeating.mutationOptions())
  const faults = faultsOf(error)
  const onSave = () => {
    if (panelC === null) return
    save({ jobId: job.id, version: job.version, ...span, panelC, note }, ({ counted }) => {
      setPanelC(null)
      setNote('')
      notifications.show({
        message: counted
          ? 'Recorded: it meets a row of the data sheet, and the clock follows it.'
          : 'Recorded. It meets no row of a data sheet, so the clock does not change.',
      })
    })
  }
  return (
    <Form onSave={onSave} label="Heated cure" error={error}>
      <Stack gap="sm" mt="xs">
        <div className={cure.heat}>
          <MomentInput
            label="From"
            value={span.fromAt}
            onChange={fromAt => setSpan(now => ({ ...now, fromAt }))}
            error={faults.at('fromAt')}
          />
          <MomentInput
            label="To"
            value={span.toAt}
            onChange={toAt => setSpan(now => ({ ...now, toAt }))}
            error={faults.at('toAt')}
          />
          <DegreesInput
            label="Coldest panel"
            valueC={panelC}
            onChange={setPanelC}
            error={faults.at('panelC')}
            required
          />
          <TextInput label="With what" value={note} onChange={event => setNote(event.currentTarget.value)} />
        </div>
        <CardFoot faults={faults} busy={busy} label="Record it" dirty={panelC !== null} />
      </Stack>
    </Form>
  )
}
