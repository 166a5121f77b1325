import type { MorningView } from '../../../main/api/views.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { clockWords, nearWords } from '../../parts/time.ts'
import { Line } from './Line.tsx'
import styles from './Morning.module.css'

/** From when each curing car may be touched, topped and driven, by its profile. */
export function Cures({ sheet }: { sheet: MorningView }) {
  const when = (at: number) =>
    at >= sheet.fromAt && at < sheet.toAt
      ? clockWords(at, sheet.zone)
      : nearWords(at, sheet.zone, sheet.fromAt)
  const moment = (label: string, at: number) => (
    <span className={at <= sheet.nowAt ? pieces.kept : pieces.late}>
      {label} from {when(at)}
    </span>
  )
  return (
    <Card
      className={styles.card}
      title="Curing"
      about="by each product’s profile"
      empty={sheet.cures.length === 0 ? 'No cure reaches a milestone today.' : null}
    >
      {sheet.cures.map(cure => (
        <Line key={`${cure.jobId}-${cure.marks.coatEndAt}`} time={when(cure.touchAt)} car={cure}>
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
