import { Radio, Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { CarView } from '../../../main/api/views.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/form/Form.tsx'
import { DateField } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullDateWords } from '../../parts/time.ts'

/** A look at what lies on the car: it still works, or it is gone. */
export function InspectForm({ car, onDone }: { car: CarView; onDone(): void }) {
  const newest = car.layers.find(layer => layer.id === car.life?.layerId) ?? car.layers[0]
  const [unsaid, setUnsaid] = useState(false)
  const form = useForm({
    saved: { layerId: newest?.id ?? '', on: car.today, found: null as 'working' | 'gone' | null, note: '' },
    saving: trpc.upkeep.inspect.mutationOptions(),
    send: ({ found, ...value }) => {
      setUnsaid(found === null)
      return found === null ? null : { ...value, working: found === 'working' }
    },
    done: onDone,
  })
  return (
    <Form form={form} label="Record an inspection" save="Save the inspection" onCancel={onDone}>
      <h3>Record an inspection</h3>
      <div className={pieces.fields}>
        <Select
          label="What was looked at"
          data={car.layers.map(layer => ({
            value: layer.id,
            label: `${layer.productName}, laid ${fullDateWords(layer.laidOn)}`,
          }))}
          {...form.choice('layerId')}
        />
        <DateField label="Looked at on" {...form.field('on')} />
        <Radio.Group
          className={pieces.whole}
          label="Found"
          description="Water beads and runs off, panel by panel, after a neutral wash: still working"
          value={form.value.found}
          onChange={value => {
            form.change({ found: value as 'working' | 'gone' })
            setUnsaid(false)
          }}
          error={unsaid ? 'Say what was found.' : form.faults.at('inspections')}
        >
          <Radio value="working" label="▲ Still working" mt={6} />
          <Radio value="gone" label="□ Gone" mt={6} />
        </Radio.Group>
        <TextInput className={pieces.whole} label="Note" {...form.field('note')} />
      </div>
    </Form>
  )
}
