import { Group } from '@mantine/core'
import type { BayConditionsView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Card } from '../../parts/Card.tsx'
import { DegreesInput } from '../../parts/DegreesInput.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { OptionalDecimalInput } from '../../parts/inputs.tsx'
import { MomentInput } from '../../parts/MomentInput.tsx'

const empty = {
  airC: null as number | null,
  humidityPercent: null as number | null,
  panelC: null as number | null,
  at: null as number | null,
}

/** A reading somebody took with a hand-held instrument. */
export function TypeReading({ bay, nowAt }: { bay: BayConditionsView; nowAt: number }) {
  const form = useForm({
    saved: empty,
    saving: trpc.readings.add.mutationOptions(),
    send: ({ airC, at, ...value }) =>
      airC === null ? null : { ...value, airC, bayId: bay.bayId, at: at ?? nowAt },
  })
  return (
    <Card title={say('Type a reading')}>
      <Form
        form={form}
        label={say('Reading of {bayName}', { bayName: bay.bayName })}
        save={say('Save the reading')}
        ready={form.value.airC !== null}
      >
        <Group gap="sm" align="flex-start">
          <DegreesInput label={say('Air')} required {...form.field('airC')} />
          <OptionalDecimalInput
            label={say('Humidity')}
            unit="%"
            most={100}
            w={110}
            {...form.field('humidityPercent')}
          />
          <DegreesInput label={say('Panel')} {...form.field('panelC')} />
        </Group>
        <MomentInput label={say('Taken')} {...form.field('at')} value={form.value.at ?? nowAt} />
      </Form>
    </Card>
  )
}
