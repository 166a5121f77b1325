import { celsiusOf, fahrenheitOf } from '../../../../main/domain/measure/index.ts'
import { useShop } from '../../../data/shop.ts'
import { DecimalInput } from '../../../parts/inputs.tsx'

interface Props {
  'aria-label': string
  valueC: number
  onChange(valueC: number): void
  error?: string | undefined
}

const toTenths = (value: number) => Math.round(value * 10) / 10

/** A temperature in the shop's measure, kept in °C. */
export function TemperatureInput({ valueC, onChange, ...rest }: Props) {
  const us = useShop().units === 'us'
  return (
    <DecimalInput
      {...rest}
      unit={us ? '°F' : '°C'}
      w={96}
      least={-150}
      most={500}
      value={toTenths(us ? fahrenheitOf(valueC) : valueC)}
      onChange={value => onChange(us ? celsiusOf(value) : value)}
    />
  )
}
