import { Group, TextInput } from '@mantine/core'
import type { LotView, ShelfProductView, ShelfUnit, StockChangeView } from '../../../../main/api/views.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import { DecimalInput } from '../../../parts/inputs.tsx'
import { unitText } from '../../../parts/shelf/amounts.ts'

export type TakeKind = 'use' | 'returnToSupplier'

const words: Record<TakeKind, { title: string; action: string; why: string }> = {
  use: { title: 'Used outside a booked step', action: 'Take it', why: 'What for' },
  returnToSupplier: { title: 'Sent back to the supplier', action: 'Send it back', why: 'Why' },
}

interface Props {
  kind: TakeKind
  product: ShelfProductView
  unit: ShelfUnit
  lot: LotView
  onDone(view: StockChangeView): void
  onClose(): void
}

/** Takes something from one bottle with its reason: all of it where it goes back, unless somebody says less. */
export function TakeForm({ kind, product, unit, lot, onDone, onClose }: Props) {
  const form = useForm({
    saved: { amount: kind === 'use' ? 0 : lot.onHand, reason: '' },
    saving: trpc.shelf[kind].mutationOptions(),
    send: value => ({ ...value, productId: product.id, lotId: lot.id }),
    done: onDone,
  })
  const { title, action, why } = words[kind]
  return (
    <Form form={form} label={`${title}: no. ${lot.number}`} save={action} onCancel={onClose}>
      <h3>
        {title}: no. {lot.number}
      </h3>
      <Group align="flex-start">
        <DecimalInput label="Amount" w={130} autoFocus unit={unitText(unit)} {...form.field('amount')} />
        <TextInput label={why} w={300} {...form.field('reason')} />
      </Group>
    </Form>
  )
}
