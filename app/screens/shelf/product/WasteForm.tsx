import { Group, Select, TextInput } from '@mantine/core'
import type { LotView, ShelfProductView, ShelfUnit, StockChangeView } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import type { DiscardReason } from '../../../../main/domain/shelf/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import { AmountInput } from '../../../parts/shelf/AmountInput.tsx'
import { WasteNotes } from '../../../parts/shelf/WasteNotes.tsx'
import { discardChoices } from '../words.ts'

interface Props {
  product: ShelfProductView
  unit: ShelfUnit
  lot: LotView
  onDone(view: StockChangeView): void
  onClose(): void
}

/** Throws away what one bottle holds, or some of it, and says what was the matter: from that the shelf learns. */
export function WasteForm({ product, unit, lot, onDone, onClose }: Props) {
  const form = useForm({
    saved: {
      amount: lot.onHand,
      discard: (lot.state === 'expired' ? 'expired' : 'other') as DiscardReason,
      reason: '',
    },
    saving: trpc.shelf.waste.mutationOptions(),
    send: value => ({ ...value, productId: product.id, lotId: lot.id }),
    done: onDone,
  })
  return (
    <Form
      form={form}
      label={say('Thrown away: no. {number}', { number: lot.number })}
      save={say('Throw it away')}
      onCancel={onClose}
    >
      <h3>{say('Thrown away: no. {number}', { number: lot.number })}</h3>
      <Group align="flex-start">
        <AmountInput of={unit} label={say('Amount')} w={130} autoFocus {...form.field('amount')} />
        <Select
          label={say('What was wrong with it')}
          w={190}
          data={discardChoices}
          {...form.choice('discard')}
        />
        <TextInput label={say('More about it')} w={220} {...form.field('reason')} />
      </Group>
      <WasteNotes productIds={[product.id]} />
    </Form>
  )
}
