/** Fields for the values this trade writes in its own ways. */
import type { TextInputProps } from '@mantine/core'
import { formatMoney, majorOf, readMoney } from '../../main/domain/money/index.ts'
import { parsePhone, showPhone } from '../../main/domain/vehicle/index.ts'
import { useShop } from '../data/shop.ts'
import { durationText, readDuration } from './durationText.ts'
import { ReadInput } from './ReadInput.tsx'
import { readWall, wallText } from './wallText.ts'

type Rest = Omit<TextInputProps, 'value' | 'onChange' | 'error'> & { error?: string | undefined }

interface Valued<T> extends Rest {
  value: T
  onChange(value: T): void
}

/** Whole minutes, typed as "90", "1 h 30" or "2 d". */
export function DurationInput(props: Valued<number>) {
  return (
    <ReadInput
      {...props}
      read={text => readDuration(text) ?? undefined}
      show={durationText}
      remedy="Write a duration such as 45, 1 h 30 or 2 d."
    />
  )
}

/** The same, or nothing at all. */
export function OptionalDurationInput(props: Valued<number | null>) {
  return (
    <ReadInput
      {...props}
      read={text => (text.trim() === '' ? null : (readDuration(text) ?? undefined))}
      show={minutes => (minutes === null ? '' : durationText(minutes))}
      remedy="Write a duration such as 45, 1 h 30 or 2 d, or leave it empty."
    />
  )
}

/** A time of day in minutes after midnight. */
export function WallInput(props: Valued<number>) {
  return (
    <ReadInput
      {...props}
      read={text => readWall(text) ?? undefined}
      show={wallText}
      remedy="Write a time such as 08:30."
    />
  )
}

/** An amount in the shop's currency, in minor units. */
export function MoneyInput(props: Valued<number>) {
  const { currency } = useShop()
  const read = (text: string) => {
    try {
      return readMoney(text, currency, navigator.language)
    } catch {
      return undefined
    }
  }
  return (
    <ReadInput
      {...props}
      inputMode="decimal"
      read={read}
      show={minor => (Number.isSafeInteger(minor) ? formatMoney(minor, currency, navigator.language) : '')}
      remedy={`Write an amount such as ${majorOf(125_000, currency)}.`}
    />
  )
}

/** A phone number: kept as typed, shown as the shop's country writes it once it is left. */
export function PhoneInput({ value, onChange, ...rest }: Valued<string>) {
  const { country } = useShop()
  return (
    <ReadInput
      {...rest}
      type="tel"
      value={value}
      onChange={onChange}
      read={text => (text.trim() === '' || parsePhone(text, country) ? text : undefined)}
      show={text => {
        const phone = parsePhone(text, country)
        return phone ? showPhone(phone.e164, country) : text
      }}
      remedy="This is no phone number; type it with its area code, or with + and the country code."
    />
  )
}

/** A date of the calendar, `YYYY-MM-DD`. */
export function DateField(props: Valued<string>) {
  return (
    <ReadInput
      {...props}
      type="date"
      read={text => (text === '' ? undefined : text)}
      show={date => date}
      remedy="Give a whole date."
    />
  )
}

/** The unit at the end of a field, with the room its word needs. */
const unitAtEnd = (unit: string | undefined) =>
  unit
    ? { rightSection: <span aria-hidden="true">{unit}</span>, rightSectionWidth: unit.length > 2 ? 52 : 34 }
    : {}

/** A plain number with its unit, from the keyboard's own decimals. */
export function DecimalInput({ unit, ...props }: Valued<number> & { unit?: string }) {
  return (
    <ReadInput
      {...props}
      inputMode="decimal"
      {...unitAtEnd(unit)}
      read={text => {
        const plain = text.trim().replace(',', '.')
        return plain !== '' && Number.isFinite(Number(plain)) ? Number(plain) : undefined
      }}
      show={String}
      remedy="Write a number."
    />
  )
}

/** The same, or nothing at all. */
export function OptionalDecimalInput({ unit, ...props }: Valued<number | null> & { unit?: string }) {
  return (
    <ReadInput
      {...props}
      inputMode="decimal"
      {...unitAtEnd(unit)}
      read={text => {
        const plain = text.trim().replace(',', '.')
        if (plain === '') return null
        return Number.isFinite(Number(plain)) ? Number(plain) : undefined
      }}
      show={value => (value === null ? '' : String(value))}
      remedy="Write a number, or leave it empty."
    />
  )
}
