import type { ShelfProductView, ShelfUnit, StockChangeView } from '../../../../main/api/views.ts'
import { say, unitsNow } from '../../../../main/domain/language/index.ts'
import { amountText, concentrateFor, keptAmount, unitsOf } from '../../../../main/domain/shelf/index.ts'
import { useForm } from '../../../data/form.ts'
import { trpc } from '../../../data/trpc.ts'
import { Form } from '../../../parts/form/Form.tsx'
import pieces from '../../../parts/pieces.module.css'
import { AmountInput } from '../../../parts/shelf/AmountInput.tsx'
import { HazardMark } from '../../../parts/shelf/HazardMark.tsx'

interface Props {
  product: ShelfProductView
  madeFrom: NonNullable<ShelfProductView['madeFrom']>
  unit: ShelfUnit
  onDone(view: StockChangeView): void
  onClose(): void
}

/** A batch is mixed: how much of the concentrate and of water it takes stands beside what is asked for. */
export function MixForm({ product, madeFrom, unit, onDone, onClose }: Props) {
  const form = useForm({
    saved: { amount: unitsNow() === 'us' ? keptAmount(32, unit) : 1_000 },
    saving: trpc.shelf.mix.mutationOptions(),
    send: ({ amount }) => ({ productId: product.id, amount }),
    done: onDone,
  })
  const made = Math.round(form.value.amount * 100)
  const taken = made > 0 ? concentrateFor(made, madeFrom) : 0
  return (
    <Form
      form={form}
      label={say('Mix {name}', { name: product.name })}
      save={say('It is mixed')}
      onCancel={onClose}
    >
      <h3>{say('Mix a batch')}</h3>
      <AmountInput of={unit} label={say('How much')} w={130} autoFocus {...form.field('amount')} />
      <p>
        {say('{taken} of {concentrateName}', {
          taken: amountText(unitsOf(taken), unit),
          concentrateName: madeFrom.concentrateName,
        })}{' '}
        <HazardMark productId={madeFrom.concentrateId} />{' '}
        {say('into {made} of water.', { made: amountText(unitsOf(made - taken), unit) })}
      </p>
      <p className={pieces.soft}>
        {say(
          'Water first, then the concentrate, with the protection its data sheet asks for (common practice). Never mix two products. Label the bottle at once.',
        )}
      </p>
    </Form>
  )
}
