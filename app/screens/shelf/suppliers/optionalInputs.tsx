import type { TextInputProps } from '@mantine/core'
import { formatMoney, majorOf, readMoney } from '../../../../main/domain/money/index.ts'
import { useShop } from '../../../data/shop.ts'
import { ReadInput } from '../../../parts/ReadInput.tsx'
import { readWall, wallText } from '../../../parts/wallText.ts'

interface Props extends Omit<TextInputProps, 'value' | 'onChange' | 'error'> {
  value: number | null
  onChange(value: number | null): void
  error?: string | undefined
}

/** A time of day in minutes after midnight, or nothing for all day. */
export function OptionalWallInput(props: Props) {
  return (
    <ReadInput
      {...props}
      placeholder="all day"
      read={text => (text.trim() === '' ? null : (readWall(text) ?? undefined))}
      show={minutes => (minutes === null ? '' : wallText(minutes))}
      remedy="Write a time such as 14:00, or leave it empty."
    />
  )
}

/** An amount in the shop's currency, or nothing for never. */
export function OptionalMoneyInput(props: Props) {
  const { currency } = useShop()
  const read = (text: string) => {
    if (text.trim() === '') return null
    try {
      return readMoney(text, currency, navigator.language)
    } catch {
      return undefined
    }
  }
  return (
    <ReadInput
      {...props}
      placeholder="never"
      inputMode="decimal"
      read={read}
      show={minor => (minor === null ? '' : formatMoney(minor, currency, navigator.language))}
      remedy={`Write an amount such as ${majorOf(25_000, currency)}, or leave it empty.`}
    />
  )
}
