/** Fields for the values this trade writes in its own ways. */

import type { TextInputProps } from '@mantine/core'
import { decimalNow, localeNow, say } from '../../main/domain/language/index.ts'
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

/** How a value is written: read, shown again, and what to say about text that cannot be read. */
export interface Way<T> {
  read(text: string): T | undefined
  show(value: T): string
  remedy: string
}

/** The same for a value that may also be nothing at all. */
export function orNothing<T>({ read, show, remedy }: Way<T>): Way<T | null> {
  return {
    read: text => (text.trim() === '' ? null : read(text)),
    show: value => (value === null ? '' : show(value)),
    remedy: say('{remedy}, or leave it empty.', { remedy: remedy.slice(0, -1) }),
  }
}

const duration: Way<number> = {
  read: text => readDuration(text) ?? undefined,
  show: durationText,
  remedy: say('Write a duration such as 45, 1 h 30 or 2 d.'),
}

/** Whole minutes, typed as "90", "1 h 30" or "2 d". */
export const DurationInput = (props: Valued<number>) => <ReadInput {...props} {...duration} />

/** The same, or nothing at all. */
export const OptionalDurationInput = (props: Valued<number | null>) => (
  <ReadInput {...props} {...orNothing(duration)} />
)

const wall = (): Way<number> => ({
  read: text => readWall(text) ?? undefined,
  show: wallText,
  remedy: say('Write a time such as {time}.', { time: wallText(510) }),
})

/** A time of day in minutes after midnight. */
export const WallInput = (props: Valued<number>) => <ReadInput {...props} {...wall()} />

/** The same, or nothing at all. */
export const OptionalWallInput = (props: Valued<number | null>) => (
  <ReadInput {...props} {...orNothing(wall())} />
)

/** Ten thousand million of the smallest unit: more is a slip of the finger, and sums of it could not be kept exactly. */
const mostMinor = 10_000_000_000

const amount = (currency: string): Way<number> => ({
  read: text => {
    try {
      const minor = readMoney(text, currency, localeNow())
      return Math.abs(minor) <= mostMinor ? minor : undefined
    } catch {
      return undefined
    }
  },
  show: minor => (Number.isSafeInteger(minor) ? formatMoney(minor, currency, localeNow()) : ''),
  remedy: say('Write an amount such as {majorOf}.', { majorOf: decimalNow(majorOf(125_000, currency)) }),
})

/** An amount in the shop's currency, in minor units. */
export function MoneyInput(props: Valued<number>) {
  return <ReadInput {...props} inputMode="decimal" {...amount(useShop().currency)} />
}

/** The same, or nothing at all. */
export function OptionalMoneyInput(props: Valued<number | null>) {
  return <ReadInput {...props} inputMode="decimal" {...orNothing(amount(useShop().currency))} />
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
      remedy={say('This is no phone number; type it with its area code, or with + and the country code.')}
    />
  )
}

/** The unit at the end of a field, with the room its word needs. */
export const unitAtEnd = (unit: string | undefined) =>
  unit
    ? { rightSection: <span aria-hidden="true">{unit}</span>, rightSectionWidth: unit.length > 2 ? 52 : 34 }
    : {}

type Numbered<T> = Valued<T> & NumberLimits & { unit?: string }

const number = (limits: NumberLimits): Way<number> => ({
  read: text => readNumber(text, limits),
  show: decimalNow,
  remedy: numberRemedy(limits),
})

/** A plain number with its unit, within limits, from the keyboard's own decimals. */
export function DecimalInput({ unit, least, most, whole, ...props }: Numbered<number>) {
  const way = number({ least, most, whole })
  return <ReadInput {...props} inputMode="decimal" {...unitAtEnd(unit)} {...way} />
}

/** The same, or nothing at all. */
export function OptionalDecimalInput({ unit, least, most, whole, ...props }: Numbered<number | null>) {
  const way = orNothing(number({ least, most, whole }))
  return <ReadInput {...props} inputMode="decimal" {...unitAtEnd(unit)} {...way} />
}

/** A decimal that is kept as its digits, "8.25": typed and shown with the mark of the language. */
export function DecimalTextInput({ least, most, ...props }: Valued<string> & NumberLimits) {
  const { read, remedy } = number({ least, most })
  return (
    <ReadInput
      {...props}
      inputMode="decimal"
      read={text => {
        const value = read(text)
        return value === undefined ? undefined : String(value)
      }}
      show={decimalNow}
      remedy={remedy}
    />
  )
}
