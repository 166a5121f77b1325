/** Fields for the values this trade writes in its own ways. */
import type { TextInputProps } from '@mantine/core'
import { formatMoney, majorOf, readMoney } from '../../main/domain/money/index.ts'
import { parsePhone, showPhone } from '../../main/domain/vehicle/index.ts'
import { useShop } from '../data/shop.ts'
import { durationText, readDuration } from './durationText.ts'
import { type NumberLimits, numberRemedy, readNumber } from './numberText.ts'
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

/** The same, or nothing at all. */
export function OptionalWallInput(props: Valued<number | null>) {
  return (
    <ReadInput
      {...props}
      read={text => (text.trim() === '' ? null : (readWall(text) ?? undefined))}
      show={minutes => (minutes === null ? '' : wallText(minutes))}
      remedy="Write a time such as 14:00, or leave it empty."
    />
  )
}

/** Ten thousand million of the smallest unit: more is a slip of the finger, and sums of it could not be kept exactly. */
const mostMinor = 10_000_000_000

function readPrice(text: string, currency: string): number | undefined {
  try {
    const minor = readMoney(text, currency, navigator.language)
    return Math.abs(minor) <= mostMinor ? minor : undefined
  } catch {
    return undefined
  }
}

/** An amount in the shop's currency, in minor units. */
export function MoneyInput(props: Valued<number>) {
  const { currency } = useShop()
  return (
    <ReadInput
      {...props}
      inputMode="decimal"
      read={text => readPrice(text, currency)}
      show={minor => (Number.isSafeInteger(minor) ? formatMoney(minor, currency, navigator.language) : '')}
      remedy={`Write an amount such as ${majorOf(125_000, currency)}.`}
    />
  )
}

/** The same, or nothing at all. */
export function OptionalMoneyInput(props: Valued<number | null>) {
  const { currency } = useShop()
  return (
    <ReadInput
      {...props}
      inputMode="decimal"
      read={text => (text.trim() === '' ? null : readPrice(text, currency))}
      show={minor => (minor === null ? '' : formatMoney(minor, currency, navigator.language))}
      remedy={`Write an amount such as ${majorOf(25_000, currency)}, or leave it empty.`}
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

type Numbered<T> = Valued<T> & NumberLimits & { unit?: string }

/** A plain number with its unit, within limits, from the keyboard's own decimals. */
export function DecimalInput({ unit, least, most, whole, ...props }: Numbered<number>) {
  const limits = { least, most, whole }
  return (
    <ReadInput
      {...props}
      inputMode="decimal"
      {...unitAtEnd(unit)}
      read={text => readNumber(text, limits)}
      show={String}
      remedy={numberRemedy(limits)}
    />
  )
}

/** The same, or nothing at all. */
export function OptionalDecimalInput({ unit, least, most, whole, ...props }: Numbered<number | null>) {
  const limits = { least, most, whole }
  return (
    <ReadInput
      {...props}
      inputMode="decimal"
      {...unitAtEnd(unit)}
      read={text => (text.trim() === '' ? null : readNumber(text, limits))}
      show={value => (value === null ? '' : String(value))}
      remedy={`${numberRemedy(limits).slice(0, -1)}, or leave it empty.`}
    />
  )
}
