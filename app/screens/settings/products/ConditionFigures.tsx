import { DecimalInput } from '../../../parts/inputs.tsx'
import { FigureRow } from './FigureRow.tsx'
import type { FigureProps } from './figureProps.ts'
import styles from './Products.module.css'
import { TemperatureInput } from './TemperatureInput.tsx'

/** The air a coat may be laid in; outside it a coat step warns and wants a reason. */
export function ConditionFigures({ profile, put, at, sourced }: FigureProps) {
  const { temperature, humidity } = profile
  return (
    <fieldset className={styles.figures}>
      <legend>Air to lay it in</legend>
      <FigureRow label="Temperature, from and to" {...sourced('temperature')}>
        <TemperatureInput
          aria-label="Least temperature"
          valueC={temperature.minC}
          onChange={minC => put({ temperature: { ...temperature, minC } })}
          error={at('temperature.minC')}
        />
        <TemperatureInput
          aria-label="Greatest temperature"
          valueC={temperature.maxC}
          onChange={maxC => put({ temperature: { ...temperature, maxC } })}
          error={at('temperature.maxC')}
        />
      </FigureRow>
      <FigureRow label="Relative humidity, from and to" {...sourced('humidity')}>
        <DecimalInput
          aria-label="Least humidity, percent"
          unit="%"
          most={100}
          w={90}
          value={humidity.minPercent}
          onChange={minPercent => put({ humidity: { ...humidity, minPercent } })}
          error={at('humidity.minPercent')}
        />
        <DecimalInput
          aria-label="Greatest humidity, percent"
          unit="%"
          most={100}
          w={90}
          value={humidity.maxPercent}
          onChange={maxPercent => put({ humidity: { ...humidity, maxPercent } })}
          error={at('humidity.maxPercent')}
        />
      </FigureRow>
    </fieldset>
  )
}
