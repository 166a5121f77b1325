import { Group, TextInput } from '@mantine/core'
import type { LotView, ShelfProductView, ShelfUnit, StockChangeView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import { AmountInput } from '../../../parts/shelf/AmountInput.tsx'

export type TakeKind = 'use' | 'returnToSupplier'

const words: Record<TakeKind, { title: string; action: string; why: string }> = {
  use: { title: say('Used outside a booked step'), action: say('Take it'), why: say('What for') },
  returnToSupplier: { title: say('Sent back to the supplier'), action: say('Send it back'), why: say('Why') },
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
    <Form
      form={form}
      label={say('{title}: no. {number}', { title, number: lot.number })}
      save={action}
      onCancel={onClose}
    >
      <h3>{say('{title}: no. {number}', { title, number: lot.number })}</h3>
      <Group align="flex-start">
        <AmountInput of={unit} label={say('Amount')} w={130} autoFocus {...form.field('amount')} />
        <TextInput label={why} w={300} {...form.field('reason')} />
      </Group>
    </Form>
  )
}
