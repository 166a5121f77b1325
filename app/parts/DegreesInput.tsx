import { useShop } from '../data/shop.ts'
import { celsiusTyped, degreeSign, degreesShown } from './degrees.ts'
import { OptionalDecimalInput } from './inputs.tsx'

interface Props {
  label: string
  description?: string
  valueC: number | null
  onChange(valueC: number | null): void
  error?: string | undefined
  required?: boolean
}

/** A temperature in the shop's measure, kept in °C; empty where nobody measured. */
export function DegreesInput({ valueC, onChange, ...rest }: Props) {
  const { units } = useShop()
  return (
    <OptionalDecimalInput
      {...rest}
      unit={degreeSign(units)}
      w={150}
      value={valueC === null ? null : degreesShown(valueC, units)}
      onChange={value => onChange(value === null ? null : celsiusTyped(value, units))}
    />
  )
}
