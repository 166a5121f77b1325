import { Button, Select, Textarea, TextInput } from '@mantine/core'
import { notifications } from '@mantine/notifications'
import type { VehicleView } from '../../../main/api/views.ts'
import type { Finish, SizeClass } from '../../../main/domain/shop/index.ts'
import { checkVin } from '../../../main/domain/vehicle/index.ts'
import { useDraft } from '../../data/draft.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { OptionalDecimalInput } from '../../parts/inputs.tsx'
import { finishChoices, sizeChoices } from '../../parts/shopWords.ts'
import styles from './Customers.module.css'

interface Props {
  customerId: string
  vehicle: VehicleView | undefined
  onDone(): void
}

type Fields = Omit<VehicleView, 'id' | 'archivedAt' | 'version'>

const fresh: Fields = {
  plate: '',
  make: '',
  model: '',
  colour: '',
  year: null,
  vin: null,
  sizeClass: 'medium',
  finish: 'gloss',
  note: '',
}

/** One car: its plate, what it is, and what its size and paint mean for the work. */
export function VehicleForm({ customerId, vehicle, onDone }: Props) {
  const {
    id,
    version,
    archivedAt: _,
    ...saved
  } = vehicle ?? { ...fresh, id: '', version: 0, archivedAt: null }
  const draft = useDraft<Fields>(saved, version)
  const car = draft.value
  const saving = useSaving(trpc.vehicles.save.mutationOptions())
  const faults = faultsOf(saving.error)
  const row = vehicle ? { id, version: draft.version } : {}
  const save = () =>
    saving.save({ ...row, customerId, ...car }, ({ warning }) => {
      if (warning) notifications.show({ title: 'Saved; look at the VIN again', message: warning })
      onDone()
    })
  const text = (field: 'plate' | 'make' | 'model' | 'colour', label: string, autoFocus = false) => (
    <TextInput
      label={label}
      autoFocus={autoFocus}
      value={car[field]}
      onChange={event => draft.change({ [field]: event.currentTarget.value })}
      error={faults.at(field)}
    />
  )
  return (
    <Form error={saving.error} label={vehicle ? `Car ${vehicle.plate}` : 'A new car'} onSave={save}>
      <div className={styles.fields}>
        {text('plate', 'Plate', true)}
        {text('make', 'Make')}
        {text('model', 'Model')}
        {text('colour', 'Colour')}
        <OptionalDecimalInput
          label="Model year"
          value={car.year}
          onChange={year => draft.change({ year })}
          error={faults.at('year')}
        />
        <Select
          label="Size"
          allowDeselect={false}
          data={sizeChoices}
          value={car.sizeClass}
          onChange={size => size && draft.change({ sizeClass: size as SizeClass })}
          error={faults.at('sizeClass')}
        />
        <Select
          label="Finish"
          allowDeselect={false}
          data={finishChoices}
          value={car.finish}
          onChange={finish => finish && draft.change({ finish: finish as Finish })}
          error={faults.at('finish')}
        />
        <TextInput
          label="VIN"
          description={vinNote(car.vin)}
          inputWrapperOrder={['label', 'input', 'description', 'error']}
          value={car.vin ?? ''}
          onChange={event => draft.change({ vin: event.currentTarget.value || null })}
          error={faults.at('vin')}
        />
        <Textarea
          label="Note"
          className={styles.whole}
          autosize
          minRows={1}
          value={car.note}
          onChange={event => draft.change({ note: event.currentTarget.value })}
          error={faults.at('note')}
        />
      </div>
      <FormFoot
        faults={faults}
        busy={saving.busy}
        outdated={draft.outdated}
        onReload={() => {
          saving.reset()
          draft.reload()
        }}
      >
        <Button variant="default" onClick={onDone}>
          Cancel
        </Button>
      </FormFoot>
    </Form>
  )
}

/** A misread character, said while the number is still in hand. */
function vinNote(vin: string | null): string | null {
  return vin && vin.length >= 17 ? checkVin(vin).warning : null
}
