import { say } from '../../main/domain/language/index.ts'
import { convert } from '../../main/domain/measure/index.ts'
import { useShop } from '../data/shop.ts'
import { OptionalDecimalInput } from './inputs.tsx'

interface Props {
  label: string
  description?: string
  /** In micrometres, whatever is shown. */
  value: number | null
  onChange(value: number | null): void
  error?: string | undefined
  /** In micrometres. */
  least: number
  most: number
}

/** A mil is 25.4 µm, so what a gauge in mils shows lies this far apart. */
const hundredths = (mil: number) => Math.round(mil * 100) / 100

/** A thickness in the shop's measure, kept in micrometres; empty where nobody measured. */
export function ThicknessInput({ value, onChange, least, most, ...rest }: Props) {
  const { units } = useShop()
  if (units === 'metric')
    return <OptionalDecimalInput {...rest} {...{ value, onChange, least, most }} unit={say('µm')} />
  const milOf = (um: number) => hundredths(convert(um, 'um', 'mil'))
  return (
    <OptionalDecimalInput
      {...rest}
      unit={say('mil')}
      least={Math.ceil(convert(least, 'um', 'mil') * 100) / 100}
      most={Math.floor(convert(most, 'um', 'mil') * 100) / 100}
      value={value === null ? null : milOf(value)}
      onChange={typed => {
        // Left as it was shown, it stays what it was.
        if (value === null || typed !== milOf(value))
          onChange(typed === null ? null : convert(typed, 'mil', 'um'))
      }}
    />
  )
}
