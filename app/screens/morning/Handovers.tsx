import type { MorningView } from '../../../main/api/views.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { clockWords, nearWords } from '../../parts/time.ts'
import { Line } from './Line.tsx'
import styles from './Morning.module.css'

export function Handovers({ sheet }: { sheet: MorningView }) {
  return (
    <Card
      className={styles.card}
      title="Going home"
      empty={sheet.handovers.length === 0 ? 'No car goes home today.' : null}
    >
      {sheet.handovers.map(car => (
        <Line key={car.jobId} time={clockWords(car.handoverAt, sheet.zone)} car={car}>
          {car.customerName}
          {car.phone && `, ${car.phone}`} ·{' '}
          <span className={car.leftAt === null && (car.late || car.uncovered) ? pieces.late : pieces.kept}>
            {car.leftAt !== null
              ? `left ${clockWords(car.leftAt, sheet.zone)}`
              : car.late
                ? `late: promised ${nearWords(car.promisedAt, sheet.zone, sheet.nowAt)}`
                : car.uncovered
                  ? 'somebody is missing'
                  : 'promise kept'}
          </span>
          <span className={styles.step}>{car.words}</span>
        </Line>
      ))}
    </Card>
  )
}
