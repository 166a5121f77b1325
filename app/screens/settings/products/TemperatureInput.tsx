import { useShop } from '../../../data/shop.ts'
import { celsiusTyped, degreeSign, degreesShown } from '../../../parts/degrees.ts'
import { DecimalInput } from '../../../parts/inputs.tsx'

interface Props {
  'aria-label': string
  /** In °C, whatever is shown. */
  value: number
  onChange(value: number): void
  error?: string | undefined
}

/** A temperature in the shop's measure, kept in °C. */
export function TemperatureInput({ value, onChange, ...rest }: Props) {
  const { units } = useShop()
  return (
    <DecimalInput
      {...rest}
      unit={degreeSign(units)}
      w={96}
      least={-150}
      most={500}
      value={degreesShown(value, units)}
      onChange={typed => onChange(celsiusTyped(typed, units))}
    />
  )
}
