import { Button, Radio, Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { CarView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { DateField } from '../../parts/inputs.tsx'
import { dateWords } from '../../parts/time.ts'
import styles from '../upkeep/Upkeep.module.css'

/** A look at what lies on the car: it still works, or it is gone. */
export function InspectForm({ car, onDone }: { car: CarView; onDone(): void }) {
  const newest = car.layers.find(layer => layer.id === car.life?.layerId) ?? car.layers[0]
  const [layerId, setLayerId] = useState(newest?.id ?? '')
  const [on, setOn] = useState(car.today)
  const [found, setFound] = useState<'working' | 'gone' | null>(null)
  const [note, setNote] = useState('')
  const [unsaid, setUnsaid] = useState(false)
  const saving = useSaving(trpc.upkeep.inspect.mutationOptions())
  const faults = faultsOf(saving.error)
  const save = () => {
    if (found === null) return setUnsaid(true)
    saving.save({ layerId, on, working: found === 'working', note }, onDone)
  }
  return (
    <Form error={saving.error} label="Record an inspection" onSave={save}>
      <h3>Record an inspection</h3>
      <div className={styles.fields}>
        <Select
          label="What was looked at"
          data={car.layers.map(layer => ({
            value: layer.id,
            label: `${layer.productName}, laid ${dateWords(layer.laidOn)} ${layer.laidOn.slice(0, 4)}`,
          }))}
          allowDeselect={false}
          value={layerId}
          onChange={id => id && setLayerId(id)}
          error={faults.at('layerId')}
        />
        <DateField label="Looked at on" value={on} onChange={setOn} error={faults.at('on')} />
        <Radio.Group
          className={styles.whole}
          label="Found"
          description="Water beads and runs off, panel by panel, after a neutral wash: still working"
          value={found}
          onChange={value => {
            setFound(value as 'working' | 'gone')
            setUnsaid(false)
          }}
          error={unsaid ? 'Say what was found.' : faults.at('inspections')}
        >
          <Radio value="working" label="▲ Still working" mt={6} />
          <Radio value="gone" label="□ Gone" mt={6} />
        </Radio.Group>
        <TextInput
          className={styles.whole}
          label="Note"
          value={note}
          onChange={event => setNote(event.currentTarget.value)}
          error={faults.at('note')}
        />
      </div>
      <FormFoot faults={faults} busy={saving.busy} label="Save the inspection">
        <Button variant="default" onClick={onDone}>
          Not now
        </Button>
      </FormFoot>
    </Form>
  )
}
