import { Select, Textarea, TextInput } from '@mantine/core'
import { notifications } from '@mantine/notifications'
import type { VehicleView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { checkVin, modelYearOf } from '../../../main/domain/vehicle/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { AlikeList } from '../../parts/AlikeList.tsx'
import { Form } from '../../parts/form/Form.tsx'
import { OptionalDecimalInput } from '../../parts/inputs.tsx'
import pieces from '../../parts/pieces.module.css'
import { finishChoices, paintChoices, sizeChoices } from '../../parts/shopWords.ts'
import { useAlike } from '../../parts/useAlike.ts'
import { PanelFields } from './PanelFields.tsx'

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
  paint: 'unknown',
  panels: [],
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
  const form = useForm({
    saved: saved as Fields,
    version: vehicle?.version,
    saving: trpc.vehicles.save.mutationOptions(),
    send: (value, version) => ({ ...value, ...(vehicle && { id, version }), customerId }),
    done: ({ warning }) => {
      if (warning) notifications.show({ title: say('Saved; look at the VIN again'), message: warning })
      onDone()
    },
  })
  return (
    <Form
      form={form}
      label={vehicle ? say('Car {plate}', { plate: vehicle.plate }) : say('A new car')}
      onCancel={onDone}
    >
      <div className={pieces.fields}>
        <TextInput label={say('Plate')} autoFocus {...form.field('plate')} />
        <TextInput label={say('Make')} {...form.field('make')} />
        <TextInput label={say('Model')} {...form.field('model')} />
        <TextInput label={say('Colour')} {...form.field('colour')} />
        <OptionalDecimalInput
          label={say('Model year')}
          least={1880}
          most={2100}
          whole
          {...form.field('year')}
        />
        <Select label={say('Size')} data={sizeChoices} {...form.choice('sizeClass')} />
        <Select label={say('Finish')} data={finishChoices} {...form.choice('finish')} />
        <Select label={say('Paint')} data={paintChoices} {...form.choice('paint')} />
        <TextInput label={say('VIN')} description={vinNote(form.value.vin)} {...form.optional('vin')} />
        {!vehicle && (
          <div className={pieces.whole}>
            <OnFile plate={form.value.plate} vin={form.value.vin ?? ''} customerId={customerId} />
          </div>
        )}
        <PanelFields
          panels={form.value.panels}
          fields={form.each('panels')}
          onChange={panels => form.change({ panels })}
        />
        <Textarea label={say('Note')} className={pieces.whole} autosize minRows={1} {...form.field('note')} />
      </div>
    </Form>
  )
}

/** A misread character, or the year it stands for, said while the number is still in hand. */
function vinNote(vin: string | null): string | null {
  if (!vin || vin.length < 17) return null
  const { problems, warning } = checkVin(vin)
  const wrong = problems[0]?.message ?? warning
  if (wrong) return wrong
  const read = modelYearOf(vin)
  return read && say('Model year {year}, or {otherYear}', { year: read.year, otherYear: read.otherYear })
}

/** Whose car it may be already. */
function OnFile({ plate, vin, customerId }: { plate: string; vin: string; customerId: string }) {
  return <AlikeList alike={useAlike({ plate, vin, exceptId: customerId })} />
}
