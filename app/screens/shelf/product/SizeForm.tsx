import { TextInput } from '@mantine/core'
import type { ShelfProductView, ShelfUnit, SizeView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { ArchiveButton } from '../../../parts/ArchiveButton.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import pieces from '../../../parts/pieces.module.css'
import { AmountInput, OptionalAmountInput } from '../../../parts/shelf/AmountInput.tsx'

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
        <AmountInput of={unit} label={say('That is')} {...form.field('labelAmount')} />
        <OptionalAmountInput of={unit} label={say('It measures')} {...form.field('measuredAmount')} />
        <OptionalAmountInput of="g" label={say('Empty, with its cap')} {...form.field('tareG')} />
      </div>
    </Form>
  )
}
