import { say } from '../../../../main/domain/language/index.ts'
import { DecimalInput } from '../../../parts/inputs.tsx'
import { FigureRow } from './FigureRow.tsx'
import type { FigureProps } from './figureProps.ts'
import styles from './Products.module.css'
import { TemperatureInput } from './TemperatureInput.tsx'

/** The air a coat may be laid in; outside it a coat step warns and wants a reason. */
export function ConditionFigures({ fields, sourced }: FigureProps) {
  const temperature = fields.within('temperature')
  const humidity = fields.within('humidity')
  const percent = { unit: '%', most: 100, w: 90 }
  return (
    <fieldset className={styles.figures}>
      <legend>{say('Air to lay it in')}</legend>
      <FigureRow label={say('Temperature, from and to')} {...sourced('temperature')}>
        <TemperatureInput aria-label={say('Least temperature')} {...temperature.field('minC')} />
        <TemperatureInput aria-label={say('Greatest temperature')} {...temperature.field('maxC')} />
      </FigureRow>
      <FigureRow label={say('Relative humidity, from and to')} {...sourced('humidity')}>
        <DecimalInput
          aria-label={say('Least humidity, percent')}
          {...percent}
          {...humidity.field('minPercent')}
        />
        <DecimalInput
          aria-label={say('Greatest humidity, percent')}
          {...percent}
          {...humidity.field('maxPercent')}
        />
      </FigureRow>
    </fieldset>
  )
}
