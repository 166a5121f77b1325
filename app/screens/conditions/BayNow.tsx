import type { BayConditionsView, ConditionsView } from '../../../main/api/views.ts'
import { useShop } from '../../data/shop.ts'
import { degrees } from '../../parts/degrees.ts'
import { durationWords, nearWords } from '../../parts/time.ts'
import styles from './Conditions.module.css'

interface Props {
  bay: BayConditionsView
  view: ConditionsView
  chosen: boolean
  onChoose(): void
}

const sourceWords = { typed: 'typed in', imported: 'from a file', sensor: 'by a sensor' } as const

/** One bay as it was last read; choosing it shows its days below. */
export function BayNow({ bay, view, chosen, onChoose }: Props) {
  const { units } = useShop()
  const { last } = bay
  const age = last ? view.nowAt - last.at : 0
  return (
    <button type="button" className={styles.bay} aria-pressed={chosen} onClick={onChoose}>
      <h2>{bay.bayName}</h2>
      {last ? (
        <>
          <b>{degrees(last.airC, units)}</b>{' '}
          <span className={styles.soft}>
            {last.humidityPercent === null
              ? 'humidity not measured'
              : `${Math.round(last.humidityPercent)} %`}
          </span>
          <dl>
            <dt>Dew point</dt>
            <dd>{degrees(last.dewC, units)}</dd>
            <dt>Coldest panel to coat</dt>
            <dd>{degrees(bay.leastPanelC, units)}</dd>
            <dt>Panel</dt>
            <dd>{degrees(last.panelC, units)}</dd>
            <dt>Read</dt>
            <dd className={age > 60 ? styles.warn : undefined}>
              {age > 60 ? '⚠ ' : ''}
              {age < 1
                ? 'just now'
                : age < 48 * 60
                  ? `${durationWords(age)} ago`
                  : nearWords(last.at, view.zone, view.nowAt)}
              , {sourceWords[last.source]}
            </dd>
          </dl>
        </>
      ) : (
        <span className={styles.soft}>
          Not read yet. Its cures are taken to run at{' '}
          {bay.usualC === null ? 'their profile’s temperature' : degrees(bay.usualC, units)}, and are marked
          as assumed.
        </span>
      )}
    </button>
  )
}
