import type { MorningView } from '../../../main/api/views.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { clockWords } from '../../parts/time.ts'
import { Line } from './Line.tsx'
import styles from './Morning.module.css'

/** The day's milestones one after the other: what may be done with which curing car from when. */
export function Moments({ sheet }: { sheet: MorningView }) {
  return (
    <Card
      className={styles.card}
      title="Milestones"
      about="in the order they come"
      empty={sheet.moments.length === 0 ? 'No curing car reaches a milestone today.' : null}
    >
      {sheet.moments.map(moment => (
        <Line
          key={`${moment.jobId}-${moment.at}-${moment.what}`}
          time={clockWords(moment.at, sheet.zone)}
          car={moment}
        >
          {moment.bayName}, {moment.productName}
          <span className={styles.marks}>
            <span className={moment.at <= sheet.nowAt ? pieces.kept : pieces.late}>{moment.what}</span>
            <span>{moment.measured ? 'by its clock' : '≈ as planned'}</span>
          </span>
        </Line>
      ))}
    </Card>
  )
}
