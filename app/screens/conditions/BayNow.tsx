import type { BayConditionsView, ConditionsView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { useShop } from '../../data/shop.ts'
import { degrees } from '../../parts/degrees.ts'
import { Facts } from '../../parts/Facts.tsx'
import pieces from '../../parts/pieces.module.css'
import { durationWords, nearWords } from '../../parts/time.ts'
import styles from './Conditions.module.css'

interface Props {
  bay: BayConditionsView
  view: ConditionsView
  chosen: boolean
  onChoose(): void
}

const sourceWords = {
  typed: say('typed in'),
  imported: say('from a file'),
  sensor: say('by a sensor'),
} as const

/** One bay as it was last read; choosing it shows its days below. */
export function BayNow({ bay, view, chosen, onChoose }: Props) {
  const { units } = useShop()
  const { last } = bay
  return (
    <button type="button" className={styles.bay} aria-pressed={chosen} onClick={onChoose}>
      <h2>{bay.bayName}</h2>
      {last ? (
        <>
          <b>{degrees(last.airC, units)}</b>{' '}
          <span className={pieces.soft}>
            {last.humidityPercent === null
              ? say('humidity not measured')
              : `${Math.round(last.humidityPercent)} %`}
          </span>
          <Facts
            of={{
              [say('Dew point')]: degrees(last.dewC, units),
              [say('Coldest panel to coat')]: degrees(bay.leastPanelC, units),
              [say('Panel')]: degrees(last.panelC, units),
              [say('Read||when')]: <Age last={last} view={view} />,
            }}
          />
        </>
      ) : (
        <span className={pieces.soft}>
          {bay.usualC === null
            ? say(
                'Not read yet. Its cures are taken to run at their profile’s temperature, and are marked as assumed.',
              )
            : say('No reading yet. Cures here are assumed to run at {usualC} and marked so.', {
                usualC: degrees(bay.usualC, units),
              })}
        </span>
      )}
    </button>
  )
}

function Age({ last, view }: { last: NonNullable<BayConditionsView['last']>; view: ConditionsView }) {
  const age = view.nowAt - last.at
  const long =
    age < 48 * 60 ? say('{age} ago', { age: durationWords(age) }) : nearWords(last.at, view.zone, view.nowAt)
  return (
    <span className={age > 60 ? pieces.late : undefined}>
      {age > 60 && '⚠ '}
      {age < 1 ? say('just now') : long}, {sourceWords[last.source]}
    </span>
  )
}
