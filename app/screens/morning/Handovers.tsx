import type { MorningView } from '../../../main/api/views.ts'
import { clockWords, nearWords } from '../../parts/time.ts'
import { Card, Line } from './Card.tsx'
import styles from './Morning.module.css'

export function Handovers({ sheet }: { sheet: MorningView }) {
  return (
    <Card title="Going home" empty={sheet.handovers.length === 0 ? 'No car goes home today.' : null}>
      {sheet.handovers.map(car => (
        <Line
          key={car.jobId}
          time={clockWords(car.handoverAt, sheet.zone)}
          jobId={car.jobId}
          plate={car.plate}
        >
          {car.customerName}
          {car.phone && `, ${car.phone}`} ·{' '}
          <span className={car.leftAt === null && (car.late || car.uncovered) ? styles.no : styles.may}>
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
