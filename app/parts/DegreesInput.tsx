import { useShop } from '../data/shop.ts'
import { celsiusTyped, degreeSign, degreesShown } from './degrees.ts'
import { OptionalDecimalInput } from './inputs.tsx'

interface Props {
  label: string
  description?: string
  /** In °C, whatever is shown. */
  value: number | null
  onChange(value: number | null): void
  error?: string | undefined
  required?: boolean
}

/** A temperature in the shop's measure, kept in °C; empty where nobody measured. */
export function DegreesInput({ value, onChange, ...rest }: Props) {
  const { units } = useShop()
  return (
    <OptionalDecimalInput
      {...rest}
      unit={degreeSign(units)}
      w={150}
      least={-150}
      most={500}
      value={value === null ? null : degreesShown(value, units)}
      onChange={typed => onChange(typed === null ? null : celsiusTyped(typed, units))}
    />
  )
}
