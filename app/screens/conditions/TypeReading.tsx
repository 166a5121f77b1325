import { Group, Stack } from '@mantine/core'
import { useState } from 'react'
import type { BayConditionsView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { CardFoot } from '../../parts/CardFoot.tsx'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { Form } from '../../parts/Form.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { OptionalDecimalInput } from '../../parts/inputs.tsx'
import { MomentInput } from '../../parts/MomentInput.tsx'
import styles from './Conditions.module.css'

const empty = {
  airC: null as number | null,
  humidityPercent: null as number | null,
  panelC: null as number | null,
}

/** A reading somebody took with a hand-held instrument. */
export function TypeReading({ bay, nowAt }: { bay: BayConditionsView; nowAt: number }) {
  const [values, setValues] = useState(empty)
  const [at, setAt] = useState<number | null>(null)
  const [round, setRound] = useState(0)
  const { save, busy, error } = useSaving(trpc.readings.add.mutationOptions())
  const faults = faultsOf(error)
  const change = (part: Partial<typeof empty>) => setValues(before => ({ ...before, ...part }))
  const onSave = () => {
    if (values.airC === null) return
    save({ ...values, airC: values.airC, bayId: bay.bayId, at: at ?? nowAt }, () => {
      setValues(empty)
      setAt(null)
      setRound(count => count + 1)
    })
  }
  return (
    <section className={styles.card}>
      <h2>Type a reading</h2>
      <Form onSave={onSave} label={`Reading of ${bay.bayName}`} error={error} key={round}>
        <Stack gap="sm">
          <Group gap="sm" align="flex-start">
            <DegreesInput
              label="Air"
              valueC={values.airC}
              onChange={airC => change({ airC })}
              error={faults.at('airC')}
              required
            />
            <OptionalDecimalInput
              label="Humidity"
              unit="%"
              w={110}
              value={values.humidityPercent}
              onChange={humidityPercent => change({ humidityPercent })}
              error={faults.at('humidityPercent')}
            />
            <DegreesInput
              label="Panel"
              valueC={values.panelC}
              onChange={panelC => change({ panelC })}
              error={faults.at('panelC')}
            />
          </Group>
          <MomentInput label="Taken" value={at ?? nowAt} onChange={setAt} error={faults.at('at')} />
          <CardFoot faults={faults} busy={busy} label="Keep the reading" dirty={values.airC !== null} />
        </Stack>
      </Form>
    </section>
  )
}
