import { TextInput } from '@mantine/core'
import type { ShelfProductView, ShelfUnit, SizeView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput, OptionalDecimalInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { unitText } from '../../../parts/shelf/amounts.ts'

interface Props {
  product: ShelfProductView
  unit: ShelfUnit
  size: SizeView | null
  onClose(): void
}

const fresh = {
  label: '',
  labelAmount: 0,
  measuredAmount: null as number | null,
  tareG: null as number | null,
}

/** A container size: its label, what it was found to hold, and what it weighs empty. */
export function SizeForm({ product, unit, size, onClose }: Props) {
  const { label, labelAmount, measuredAmount, tareG } = size ?? fresh
  const form = useForm({
    saved: { label, labelAmount, measuredAmount, tareG },
    version: size?.version,
    saving: trpc.shelf.saveSize.mutationOptions(),
    send: (value, version) => ({ ...value, ...(size && { id: size.id, version }), productId: product.id }),
    done: onClose,
  })
  const api = { archive: trpc.shelf.archiveSize, restore: trpc.shelf.restoreSize }
  const measure = unitText(unit)
  return (
    <Form
      form={form}
      label={size ? say('Size {label}', { label: size.label }) : say('A new size')}
      onCancel={onClose}
      more={
        size && (
          <ArchiveButton
            row={size}
            api={api}
            label={say('Archive this size')}
            onArchived={onClose}
            onRestored={onClose}
          />
        )
      }
    >
      <h3>{size?.label ?? say('A new size')}</h3>
      <div className={pieces.fields}>
        <TextInput
          label={say('The label says')}
          placeholder={say('16 fl oz')}
          autoFocus
          {...form.field('label')}
        />
        <DecimalInput label={say('That is')} unit={measure} {...form.field('labelAmount')} />
        <OptionalDecimalInput label={say('It measures')} unit={measure} {...form.field('measuredAmount')} />
        <OptionalDecimalInput label={say('Empty, with its cap')} unit="g" {...form.field('tareG')} />
      </div>
    </Form>
  )
}
