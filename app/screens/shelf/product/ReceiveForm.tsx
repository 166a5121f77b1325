import { Button, Select, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import { useState } from 'react'
import type { ShelfProductView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput, MoneyInput } from '../../../parts/inputs.tsx'
import styles from '../Shelf.module.css'

interface Props {
  product: ShelfProductView
  onDone(view: { words: string[] }): void
  onClose(): void
}

/** Goods that came without an order, or what stood on the shelf when counting began: each container a bottle of its own. */
export function ReceiveForm({ product, onDone, onClose }: Props) {
  const sizes = product.sizes.filter(size => size.archivedAt === null)
  const [sizeId, setSizeId] = useState(sizes[0]?.id ?? '')
  const [containers, setContainers] = useState(1)
  const [expiresOn, setExpiresOn] = useState('')
  const [batch, setBatch] = useState('')
  const [costMinor, setCostMinor] = useState(0)
  const [supplierId, setSupplierId] = useState<string | null>(null)
  const suppliers = useQuery(trpc.suppliers.list.queryOptions({ archived: false })).data
  const saving = useSaving(trpc.shelf.receive.mutationOptions())
  const faults = faultsOf(saving.error)
  if (sizes.length === 0)
    return (
      <p className={styles.empty}>
        Say first in which sizes it comes, under Sizes and buying: what the label says and what it measures.
      </p>
    )
  const line = {
    productId: product.id,
    sizeId,
    containers,
    expiresOn: expiresOn || null,
    batch: batch.trim() || null,
    costMinor,
  }
  return (
    <Form
      error={saving.error}
      label={`Receive ${product.name}`}
      onSave={() => saving.save({ lines: [line], supplierId }, onDone)}
    >
      <h3>Receive</h3>
      <div className={styles.fields}>
        <Select
          label="Size"
          data={sizes.map(size => ({ value: size.id, label: size.label }))}
          allowDeselect={false}
          value={sizeId}
          onChange={value => value && setSizeId(value)}
          error={faults.at('lines.0.sizeId')}
        />
        <DecimalInput
          label="How many"
          autoFocus
          value={containers}
          onChange={setContainers}
          error={faults.at('lines.0.containers')}
        />
        <TextInput
          type="date"
          label="Printed date"
          description="empty where none is printed"
          inputWrapperOrder={['label', 'input', 'description', 'error']}
          value={expiresOn}
          onChange={event => setExpiresOn(event.currentTarget.value)}
          error={faults.at('lines.0.expiresOn')}
        />
        <TextInput
          label="Batch"
          value={batch}
          onChange={event => setBatch(event.currentTarget.value)}
          error={faults.at('lines.0.batch')}
        />
        <MoneyInput
          label="Paid for them together"
          value={costMinor}
          onChange={setCostMinor}
          error={faults.at('lines.0.costMinor')}
        />
        <Select
          label="From"
          placeholder="over the counter"
          clearable
          clearButtonProps={{ 'aria-label': 'No supplier' }}
          data={(suppliers ?? []).map(each => ({ value: each.id, label: each.name }))}
          value={supplierId}
          onChange={setSupplierId}
          error={faults.at('supplierId')}
        />
      </div>
      <FormFoot faults={faults} busy={saving.busy} label="Put it on the shelf">
        <Button variant="default" onClick={onClose}>
          Leave it
        </Button>
      </FormFoot>
    </Form>
  )
}
