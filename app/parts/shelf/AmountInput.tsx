import type { TextInputProps } from '@mantine/core'
import type { ShelfUnit } from '../../../main/api/views.ts'
import { orNothing, unitAtEnd, type Way } from '../inputs.tsx'
import type { NumberLimits } from '../numberText.ts'
import { ReadInput } from '../ReadInput.tsx'
import { unitText } from './amounts.ts'
import { amountRemedy, amountShown, readAmount } from './amountTyped.ts'

interface Props<T>
  extends Omit<TextInputProps, 'value' | 'onChange' | 'error'>,
    Pick<NumberLimits, 'least' | 'most'> {
  /** What it is kept in, whatever is shown; the limits are of it too. */
  of: ShelfUnit
  value: T
  onChange(value: T): void
  error?: string | undefined
}

const way = (of: ShelfUnit, limits: NumberLimits): Way<number> => ({
  read: text => readAmount(text, of, limits),
  show: amount => amountShown(amount, of),
  remedy: amountRemedy(of, limits),
})

/** An amount of stock in the shop's measure. */
export const AmountInput = ({ least, most, ...props }: Props<number>) => (
  <AmountField {...props} own={way(props.of, { least, most })} />
)

/** The same, or nothing at all. */
export const OptionalAmountInput = ({ least, most, ...props }: Props<number | null>) => (
  <AmountField {...props} own={orNothing(way(props.of, { least, most }))} />
)

function AmountField<T>({ of, own, onChange, ...rest }: Props<T> & { own: Way<T> }) {
  return (
    <ReadInput
      {...rest}
      inputMode="decimal"
      {...unitAtEnd(unitText(of))}
      {...own}
      // Left as it was shown, it stays what it was: a field shows hundredths.
      onChange={typed => own.show(typed) !== own.show(rest.value) && onChange(typed)}
    />
  )
}
