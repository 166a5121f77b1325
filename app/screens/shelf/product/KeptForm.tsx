import { Checkbox, Select, TextInput } from '@mantine/core'
import type { ShelfFields, ShelfProductView } from '../../../../main/api/views.ts'
import { showTemperature } from '../../../../main/domain/measure/index.ts'
import { useDraft } from '../../../data/draft.ts'
import { useSaving } from '../../../data/saving.ts'
import { useShop } from '../../../data/shop.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { OptionalDecimalInput } from '../../../parts/inputs.tsx'
import styles from '../Shelf.module.css'
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
})

/** How a product is counted, where it stands and how long it keeps; saving it the first time begins the counting. */
export function KeptForm({ product }: { product: ShelfProductView }) {
  const { units } = useShop()
  const { id, kind, shelf, version } = product
  const draft = useDraft(shelf ?? fresh(kind), version)
  const saving = useSaving(trpc.shelf.saveProduct.mutationOptions())
  const faults = faultsOf(saving.error)
  const kept = draft.value
  const save = () =>
    saving.save({ productId: id, ...(shelf ? { version } : {}), ...kept }, () => draft.settle())
  const beside = (celsius: number | null) =>
    units === 'us' && celsius !== null ? showTemperature(celsius, units, navigator.language) : undefined
  return (
    <Form error={saving.error} label={`How ${product.name} is kept`} onSave={save}>
      <div className={styles.fields}>
        <Select
          label="Counted in"
          data={shelfUnitChoices}
          allowDeselect={false}
          value={kept.unit}
          onChange={value => value && draft.change({ unit: value as ShelfFields['unit'] })}
          error={faults.at('unit')}
        />
        <Select
          label="How much it matters"
          description="each class has its service level"
          inputWrapperOrder={['label', 'input', 'description', 'error']}
          data={serviceClassChoices}
          allowDeselect={false}
          value={kept.serviceClass}
          onChange={value => value && draft.change({ serviceClass: value as ShelfFields['serviceClass'] })}
          error={faults.at('serviceClass')}
        />
        <TextInput
          label="Where it stands"
          description="a shelf, a cabinet, a room"
          inputWrapperOrder={['label', 'input', 'description', 'error']}
          value={kept.place}
          onChange={event => draft.change({ place: event.currentTarget.value })}
          error={faults.at('place')}
        />
        <OptionalDecimalInput
          label="Density"
          description="from the data sheet; weighing a bottle needs it"
          inputWrapperOrder={['label', 'input', 'description', 'error']}
          unit="g/ml"
          rightSectionWidth={52}
          value={kept.densityGPerMl}
          onChange={densityGPerMl => draft.change({ densityGPerMl })}
          error={faults.at('densityGPerMl')}
        />
        <OptionalDecimalInput
          label="Life once opened"
          unit="days"
          rightSectionWidth={52}
          disabled={kept.lifeUnlimited}
          value={kept.lifeAfterOpeningDays}
          onChange={lifeAfterOpeningDays => draft.change({ lifeAfterOpeningDays })}
          error={faults.at('lifeAfterOpeningDays')}
        />
        <Checkbox
          mt={28}
          label="The maker says an opened one keeps"
          checked={kept.lifeUnlimited}
          onChange={event =>
            draft.change(
              event.currentTarget.checked
                ? { lifeUnlimited: true, lifeAfterOpeningDays: null }
                : { lifeUnlimited: false },
            )
          }
          error={faults.at('lifeUnlimited')}
        />
        <OptionalDecimalInput
          label="Kept no colder than"
          unit="°C"
          description={beside(kept.storageLeastC)}
          value={kept.storageLeastC}
          onChange={storageLeastC => draft.change({ storageLeastC })}
          error={faults.at('storageLeastC')}
        />
        <OptionalDecimalInput
          label="Kept no warmer than"
          unit="°C"
          description={beside(kept.storageMostC)}
          value={kept.storageMostC}
          onChange={storageMostC => draft.change({ storageMostC })}
          error={faults.at('storageMostC')}
        />
      </div>
      <FormFoot
        faults={faults}
        busy={saving.busy}
        label={shelf ? 'Save' : 'Begin to count it'}
        dirty={draft.dirty || !shelf}
        outdated={draft.outdated}
        onReload={() => {
          saving.reset()
          draft.reload()
        }}
      />
    </Form>
  )
}
