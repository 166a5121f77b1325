import type { MorningView } from '../../../main/api/views.ts'
import { clockWords, nearWords } from '../../parts/time.ts'
import { Card, Line } from './Card.tsx'
import styles from './Morning.module.css'

/** From when each curing car may be touched, topped and driven, by its profile. */
export function Cures({ sheet }: { sheet: MorningView }) {
  const when = (at: number) =>
    at >= sheet.fromAt && at < sheet.toAt
      ? clockWords(at, sheet.zone)
      : nearWords(at, sheet.zone, sheet.fromAt)
  const moment = (label: string, at: number) => (
    <span className={at <= sheet.nowAt ? styles.may : styles.no}>
      {label} from {when(at)}
    </span>
  )
  return (
    <Card
      title="Curing"
      about="by each product’s profile"
      empty={sheet.cures.length === 0 ? 'No cure reaches a milestone today.' : null}
    >
      {sheet.cures.map(cure => (
        <Line
          key={`${cure.jobId}-${cure.marks.coatEndAt}`}
          time={when(cure.touchAt)}
          jobId={cure.jobId}
          plate={cure.plate}
        >
          {cure.bayName}, {cure.productName} {cure.marks.actual ? 'laid' : 'due'} {when(cure.marks.coatEndAt)}
          <span className={styles.marks}>
            {moment('▲ touch', cure.touchAt)}
            {cure.topperAt !== null && moment('◆ topper', cure.topperAt)}
            {moment('● drive', cure.driveAt)}
            <span>advised {when(cure.advisedAt)}</span>
          </span>
          {cure.words}
        </Line>
      ))}
    </Card>
  )
}
