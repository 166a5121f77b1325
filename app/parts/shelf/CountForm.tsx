import { Button, Group, Select, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { LotView, ShelfUnit, StockChangeView } from '../../../main/api/views.ts'
import { useSaving } from '../../data/saving.ts'
import { trpc } from '../../data/trpc.ts'
import { Form } from '../Form.tsx'
import { FormFoot } from '../FormFoot.tsx'
import { faultsOf } from '../faults.ts'
import { OptionalDecimalInput } from '../inputs.tsx'
import { unitText } from './amounts.ts'

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
  const [lotId, setLotId] = useState(first ?? lots[0]?.id ?? null)
  const [counted, setCounted] = useState<number | null>(null)
  const [grossG, setGrossG] = useState<number | null>(null)
  const [reason, setReason] = useState('counted')
  const saving = useSaving(trpc.shelf.count.mutationOptions())
  const faults = faultsOf(saving.error)
  const count = () => {
    if (lotId === null) return
    const found = counted !== null ? { counted } : grossG !== null ? { weighed: { grossG } } : {}
    saving.save({ productId: product.id, lotId, ...found, reason }, onDone)
  }
  return (
    <Form error={saving.error} label={`Count ${product.name}`} onSave={count}>
      <Group align="flex-start" gap="sm">
        <Select
          label="Bottle"
          w={340}
          data={lots.map(lot => ({ value: lot.id, label: lot.words }))}
          value={lotId}
          allowDeselect={false}
          onChange={setLotId}
          error={faults.at('lotId')}
        />
        <OptionalDecimalInput
          label="It holds"
          w={120}
          autoFocus
          unit={unitText(product.unit)}
          value={counted}
          disabled={grossG !== null}
          onChange={setCounted}
          error={faults.at('counted')}
        />
        {product.unit !== 'piece' && (
          <OptionalDecimalInput
            label="or it weighs, with its cap"
            w={190}
            unit="g"
            value={grossG}
            disabled={counted !== null}
            onChange={setGrossG}
            error={faults.under('weighed')}
          />
        )}
        <TextInput
          label="Why"
          w={220}
          value={reason}
          onChange={event => setReason(event.currentTarget.value)}
          error={faults.at('reason')}
        />
      </Group>
      <FormFoot faults={faults} busy={saving.busy} label="Save the count">
        <Button variant="default" onClick={onClose}>
          Leave it
        </Button>
      </FormFoot>
    </Form>
  )
}
