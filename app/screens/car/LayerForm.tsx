import { Button, Select } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { CarView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../../parts/Form.tsx'
import { FormFoot } from '../../parts/FormFoot.tsx'
import { faultsOf } from '../../parts/faults.ts'
import { DateField } from '../../parts/inputs.tsx'
import styles from '../upkeep/Upkeep.module.css'

/** What was laid on the car before this program, or elsewhere. */
export function LayerForm({ car, onDone }: { car: CarView; onDone(): void }) {
  const lives = useQuery(trpc.upkeep.products.queryOptions()).data ?? []
  const [productId, setProductId] = useState<string | null>(null)
  const [laidOn, setLaidOn] = useState(car.today)
  const saving = useSaving(trpc.upkeep.recordLayer.mutationOptions())
  const faults = faultsOf(saving.error)
  return (
    <Form
      error={saving.error}
      label="Enter a coating or topper"
      onSave={() => saving.save({ vehicleId: car.vehicleId, productId: productId ?? '', laidOn }, onDone)}
    >
      <h3>Enter a coating or topper</h3>
      <div className={styles.fields}>
        <Select
          label="Product"
          placeholder="Choose one"
          data={lives.map(life => ({ value: life.productId, label: life.productName }))}
          searchable
          value={productId}
          onChange={setProductId}
          error={faults.at('productId')}
        />
        <DateField label="Laid on" value={laidOn} onChange={setLaidOn} error={faults.at('laidOn')} />
      </div>
      <FormFoot faults={faults} busy={saving.busy} label="Enter it">
        <Button variant="default" onClick={onDone}>
          Not now
        </Button>
      </FormFoot>
    </Form>
  )
}
