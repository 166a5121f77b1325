import { Select, TextInput } from '@mantine/core'
import { useQuery } from '@tanstack/react-query'
import type { ShelfProductView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { OptionalDateField } from '../../../parts/DateField.tsx'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput, MoneyInput } from '../../../parts/inputs.tsx'
import pieces from '../../../parts/pieces.module.css'
import { choicesOf } from '../../../parts/shopWords.ts'

interface Props {
  product: ShelfProductView
  onDone(view: { words: string[] }): void
  onClose(): void
}

/** Goods that came without an order, or what stood on the shelf when counting began: each container a bottle of its own. */
export function ReceiveForm({ product, onDone, onClose }: Props) {
  const sizes = product.sizes.filter(size => size.archivedAt === null)
  const form = useForm({
    saved: {
      sizeId: sizes[0]?.id ?? '',
      containers: 1,
      expiresOn: null as string | null,
      batch: null as string | null,
      costMinor: 0,
      supplierId: null as string | null,
    },
    saving: trpc.shelf.receive.mutationOptions(),
    send: ({ supplierId, ...line }) => ({ lines: [{ ...line, productId: product.id }], supplierId }),
    place: 'lines.0',
    done: onDone,
  })
  const suppliers = useQuery(trpc.suppliers.list.queryOptions({ archived: false })).data
  if (sizes.length === 0)
    return (
      <p className={pieces.empty}>
        {say(
          'Say first in which sizes it comes, under Sizes and buying: what the label says and what it measures.',
        )}
      </p>
    )
  return (
    <Form
      form={form}
      label={say('Receive {name}', { name: product.name })}
      save={say('Put it on the shelf')}
      onCancel={onClose}
    >
      <h3>{say('Receive')}</h3>
      <div className={pieces.fields}>
        <Select
          label={say('Size')}
          data={sizes.map(size => ({ value: size.id, label: size.label }))}
          {...form.choice('sizeId')}
        />
        <DecimalInput
          label={say('How many')}
          least={1}
          most={10_000}
          whole
          autoFocus
          {...form.field('containers')}
        />
        <OptionalDateField
          label={say('Printed date')}
          description={say('empty where none is printed')}
          {...form.field('expiresOn')}
        />
        <TextInput label={say('Batch')} {...form.optional('batch')} />
        <MoneyInput label={say('Paid for them together')} {...form.field('costMinor')} />
        <Select
          label={say('From')}
          placeholder={say('bought in a shop')}
          clearable
          clearButtonProps={{ 'aria-label': say('No supplier') }}
          data={choicesOf(suppliers)}
          {...form.field('supplierId')}
        />
      </div>
    </Form>
  )
}
