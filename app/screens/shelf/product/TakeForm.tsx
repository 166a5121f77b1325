import { Button, Group, TextInput } from '@mantine/core'
import { useState } from 'react'
import type { LotView, ShelfProductView, ShelfUnit, StockChangeView } from '../../../../main/api/views.ts'
import { useSaving } from '../../../data/saving.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/Form.tsx'
import { FormFoot } from '../../../parts/FormFoot.tsx'
import { faultsOf } from '../../../parts/faults.ts'
import { DecimalInput } from '../../../parts/inputs.tsx'
import { unitText } from '../../../parts/shelf/amounts.ts'

export type TakeKind = 'use' | 'waste' | 'returnToSupplier'

const words: Record<TakeKind, { title: string; action: string; why: string }> = {
  use: { title: 'Used outside a booked step', action: 'Take it', why: 'What for' },
  waste: { title: 'Thrown away', action: 'Throw it away', why: 'Why' },
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

/** Takes something from one bottle with its reason: all of it where it is thrown away, unless somebody says less. */
export function TakeForm({ kind, product, unit, lot, onDone, onClose }: Props) {
  const [amount, setAmount] = useState(kind === 'use' ? 0 : lot.onHand)
  const [reason, setReason] = useState(kind === 'waste' && lot.state === 'expired' ? 'past its date' : '')
  const saving = useSaving(trpc.shelf[kind].mutationOptions())
  const faults = faultsOf(saving.error)
  const { title, action, why } = words[kind]
  return (
    <Form
      error={saving.error}
      label={`${title}: no. ${lot.number}`}
      onSave={() => saving.save({ productId: product.id, lotId: lot.id, amount, reason }, onDone)}
    >
      <h3>
        {title}: no. {lot.number}
      </h3>
      <Group align="flex-start">
        <DecimalInput
          label="Amount"
          w={130}
          autoFocus
          unit={unitText(unit)}
          value={amount}
          onChange={setAmount}
          error={faults.at('amount')}
        />
        <TextInput
          label={why}
          w={300}
          value={reason}
          onChange={event => setReason(event.currentTarget.value)}
          error={faults.at('reason')}
        />
      </Group>
      <FormFoot faults={faults} busy={saving.busy} label={action}>
        <Button variant="default" onClick={onClose}>
          Leave it
        </Button>
      </FormFoot>
    </Form>
  )
}
