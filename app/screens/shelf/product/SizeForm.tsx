import { TextInput } from '@mantine/core'
import type { ShelfProductView, ShelfUnit, SizeView } from '../../../../main/api/views.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Form } from '../../../parts/form/Form.tsx'
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
  const form = useForm({
    saved: {
      label: size?.label ?? '',
      labelAmount: size?.labelAmount ?? 0,
      measuredAmount: size?.measuredAmount ?? null,
      tareG: size?.tareG ?? null,
    },
    version: size?.version,
    saving: trpc.shelf.saveSize.mutationOptions(),
    send: (value, version) => ({ ...value, ...(size && { id: size.id, version }), productId: product.id }),
    done: onClose,
  })
  return (
    <Form
      form={form}
      label={size ? `Size ${size.label}` : 'A new size'}
      onCancel={onClose}
      more={
        size &&
        size.archivedAt === null && (
          <ArchiveButton
            row={size}
            api={{ archive: trpc.shelf.archiveSize }}
            label="Archive this size"
            onArchived={onClose}
          />
        )
      }
    >
      <h3>{size ? size.label : 'A new size'}</h3>
      <div className={styles.fields}>
        <TextInput label="The label says" placeholder="16 fl oz" autoFocus {...form.field('label')} />
        <DecimalInput label="That is" unit={unitText(unit)} {...form.field('labelAmount')} />
        <OptionalDecimalInput label="It measures" unit={unitText(unit)} {...form.field('measuredAmount')} />
        <OptionalDecimalInput label="Empty, with its cap" unit="g" {...form.field('tareG')} />
      </div>
    </Form>
  )
}
