import { Group, Select, TextInput } from '@mantine/core'
import type { LotView, ShelfUnit, StockChangeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useForm } from '../../data/form.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../form/Form.tsx'
import { OptionalAmountInput } from './AmountInput.tsx'

interface Props {
  product: { id: string; name: string; unit: ShelfUnit }
  lots: readonly LotView[]
  /** Counting begins with this bottle. */
  lotId?: string | null
  onDone(view: StockChangeView): void
  onClose(): void
}

/** What a bottle really holds, by eye or by weight; the difference goes into the ledger with its reason. */
export function CountForm({ product, lots, lotId: first, onDone, onClose }: Props) {
  const form = useForm({
    saved: {
      lotId: first ?? lots[0]?.id ?? '',
      counted: null as number | null,
      grossG: null as number | null,
      reason: say('counted'),
    },
    saving: trpc.shelf.count.mutationOptions(),
    send: ({ lotId, counted, grossG, reason }) => ({
      productId: product.id,
      lotId,
      reason,
      ...(counted !== null ? { counted } : grossG !== null ? { weighed: { grossG } } : {}),
    }),
    done: onDone,
  })
  const { counted, grossG } = form.value
  return (
    <Form
      form={form}
      label={say('Count {name}', { name: product.name })}
      save={say('Save the count')}
      onCancel={onClose}
    >
      <Group align="flex-start" gap="sm">
        <Select
          label={say('Bottle')}
          w={340}
          data={lots.map(lot => ({ value: lot.id, label: lot.words }))}
          {...form.choice('lotId')}
        />
        <OptionalAmountInput
          of={product.unit}
          label={say('It holds')}
          w={120}
          autoFocus
          disabled={grossG !== null}
          {...form.field('counted')}
        />
        {product.unit !== 'piece' && (
          <OptionalAmountInput
            of="g"
            label={say('or it weighs, with its cap')}
            w={190}
            disabled={counted !== null}
            {...form.field('grossG')}
            error={form.faults.under('weighed')}
          />
        )}
        <TextInput label={say('Why')} w={220} {...form.field('reason')} />
      </Group>
    </Form>
  )
}
