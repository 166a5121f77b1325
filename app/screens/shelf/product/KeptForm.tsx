import { Checkbox, Select, TextInput } from '@mantine/core'
import type { ShelfFields, ShelfProductView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { DegreesInput } from '../../../parts/DegreesInput.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { OptionalDecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { serviceClassChoices, shelfUnitChoices } from '../words.ts'

const fresh = (kind: string): ShelfFields => ({
  unit: kind === 'consumable' ? 'piece' : 'ml',
  densityGPerMl: null,
  lifeAfterOpeningDays: null,
  lifeUnlimited: false,
  storageLeastC: null,
  storageMostC: null,
  place: '',
  serviceClass: 'usual',
  holdsUpBookings: kind === 'coating' || kind === 'topper',
})

/** How a product is counted, where it stands and how long it keeps; saving it the first time begins the counting. */
export function KeptForm({ product }: { product: ShelfProductView }) {
  const { id, kind, shelf, version } = product
  const form = useForm({
    saved: shelf ?? fresh(kind),
    version,
    saving: trpc.shelf.saveProduct.mutationOptions(),
    send: (value, version) => ({ productId: id, ...(shelf && { version }), ...value }),
  })
  const kept = form.value
  return (
    <Form
      form={form}
      label={say('How {name} is kept', { name: product.name })}
      save={shelf ? say('Save') : say('Begin to count it')}
      ready={form.dirty || !shelf}
    >
      <div className={pieces.fields}>
        <Select label={say('Counted in')} data={shelfUnitChoices} {...form.choice('unit')} />
        <Select
          label={say('How much it matters')}
          description={say('each class has its service level')}
          data={serviceClassChoices}
          {...form.choice('serviceClass')}
        />
        <Checkbox
          mt={28}
          label={say('A booking waits for it where it lacks')}
          {...form.tick('holdsUpBookings')}
        />
        <TextInput
          label={say('Where it stands')}
          description={say('a shelf, a cabinet, a room')}
          {...form.field('place')}
        />
        <OptionalDecimalInput
          label={say('Density')}
          most={30}
          description={say('from the data sheet; weighing a bottle needs it')}
          unit={say('g/ml')}
          {...form.field('densityGPerMl')}
        />
        <OptionalDecimalInput
          label={say('Shelf life once opened')}
          most={3_660}
          whole
          unit={say('days')}
          disabled={kept.lifeUnlimited}
          {...form.field('lifeAfterOpeningDays')}
        />
        <Checkbox
          mt={28}
          label={say('The maker says it keeps once opened')}
          checked={kept.lifeUnlimited}
          onChange={event =>
            form.change(
              event.currentTarget.checked
                ? { lifeUnlimited: true, lifeAfterOpeningDays: null }
                : { lifeUnlimited: false },
            )
          }
          error={form.faults.at('lifeUnlimited')}
        />
        <DegreesInput label={say('Store no colder than')} {...form.field('storageLeastC')} />
        <DegreesInput label={say('Store no warmer than')} {...form.field('storageMostC')} />
      </div>
    </Form>
  )
}
