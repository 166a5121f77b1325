import type { CureParts } from '../../../main/api/views.ts'
import { usualGapLimitMin } from '../../../main/domain/cure/index.ts'
import { say } from '../../../main/domain/language/index.ts'
import { durationWords } from '../../parts/time.ts'
import styles from './Cure.module.css'

const parts = [
  [
    'measuredMin',
    'measured',
    say('measured'),
    say('by readings at most {minutes} minutes apart (common practice)', { minutes: usualGapLimitMin }),
  ],
  ['assumedMin', 'assumed', say('assumed'), say('no reading: the colder of what is known is taken')],
  ['projectedMin', 'projected', say('projected'), say('still to come, at the bay’s usual temperature')],
] as const

/** How the time from the coat to its earliest handover is known: a bar of three parts, each also in words. */
export function PartsBar({ until }: { until: CureParts }) {
  const whole = until.measuredMin + until.assumedMin + until.projectedMin
  if (whole <= 0) return null
  return (
    <div>
      <div className={styles.bar} aria-hidden="true">
        {parts.map(([key, name]) => (
          <span key={key} className={styles[name]} style={{ width: `${(100 * until[key]) / whole}%` }} />
        ))}
      </div>
      <ul className={styles.parts}>
        {parts.map(([key, name, label, words]) => (
          <li key={key}>
            <span className={styles[name]} aria-hidden="true" /> {durationWords(Math.round(until[key]))}{' '}
            {label} <small>{words}</small>
          </li>
        ))}
      </ul>
    </div>
  )
}
