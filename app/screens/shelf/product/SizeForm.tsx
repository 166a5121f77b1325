import { Button, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { ShelfProductView, ShelfUnit, SizeView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput, OptionalDecimalInput } from '../../../parts/inputs.tsx'
import { unitText } from '../../../parts/shelf/amounts.ts'
import styles from '../Shelf.module.css'

interface Props {
  product: ShelfProductView
  unit: ShelfUnit
  size: SizeView | null
  onClose(): void
}

/** A container size: its label, what it was found to hold, and what it weighs empty. */
export function SizeForm({ product, unit, size, onClose }: Props) {
  const [label, setLabel] = useState(size?.label ?? '')
  const [labelAmount, setLabelAmount] = useState(size?.labelAmount ?? 0)
  const [measuredAmount, setMeasuredAmount] = useState(size?.measuredAmount ?? null)
  const [tareG, setTareG] = useState(size?.tareG ?? null)
  const saving = useSaving(trpc.shelf.saveSize.mutationOptions())
  const archiving = useSaving(trpc.shelf.archiveSize.mutationOptions())
  const faults = faultsOf(saving.error ?? archiving.error)
  const row = size ? { id: size.id, version: size.version } : {}
  return (
    <Form
      error={saving.error}
      label={size ? `Size ${size.label}` : 'A new size'}
      onSave={() =>
        saving.save({ ...row, productId: product.id, label, labelAmount, measuredAmount, tareG }, onClose)
      }
    >
      <h3>{size ? size.label : 'A new size'}</h3>
      <div className={styles.fields}>
        <TextInput
          label="The label says"
          placeholder="16 fl oz"
          autoFocus
          value={label}
          onChange={event => setLabel(event.currentTarget.value)}
          error={faults.at('label')}
        />
        <DecimalInput
          label="That is"
          unit={unitText(unit)}
          value={labelAmount}
          onChange={setLabelAmount}
          error={faults.at('labelAmount')}
        />
        <OptionalDecimalInput
          label="It measures"
          unit={unitText(unit)}
          value={measuredAmount}
          onChange={setMeasuredAmount}
          error={faults.at('measuredAmount')}
        />
        <OptionalDecimalInput
          label="Empty, with its cap"
          unit="g"
          value={tareG}
          onChange={setTareG}
          error={faults.at('tareG')}
        />
      </div>
      <FormFoot faults={faults} busy={saving.busy}>
        <Button variant="default" onClick={onClose}>
          Leave it
        </Button>
        {size && size.archivedAt === null && (
          <Button
            variant="subtle"
            color="red"
            loading={archiving.busy}
            onClick={() => archiving.save({ id: size.id, version: size.version }, onClose)}
          >
            Archive this size
          </Button>
        )}
      </FormFoot>
    </Form>
  )
}
