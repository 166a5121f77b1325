import type { MorningView } from '../../../main/api/views.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { clockWords } from '../../parts/time.ts'
import { Line } from './Line.tsx'
import styles from './Morning.module.css'

export function Arrivals({ sheet }: { sheet: MorningView }) {
  return (
    <Card
      className={styles.card}
      title="Arriving"
      empty={sheet.arrivals.length === 0 ? 'Nobody is due.' : null}
    >
      {sheet.arrivals.map(car => (
        <Line key={car.jobId} time={clockWords(car.dueAt, sheet.zone)} car={car}>
          {car.customerName}
          {car.phone && `, ${car.phone}`} · to {car.bayName} · {car.treatments.join(', ')}
          <span className={car.arrivedAt === null && car.dueAt < sheet.nowAt ? pieces.late : pieces.kept}>
            {car.arrivedAt !== null
              ? ` arrived ${clockWords(car.arrivedAt, sheet.zone)}`
              : car.dueAt < sheet.nowAt
                ? ' not here yet'
                : ''}
          </span>
        </Line>
      ))}
      {sheet.moves.map(move => (
        <Line key={`${move.jobId}-${move.at}`} time={clockWords(move.at, sheet.zone)} car={move}>
          moves from {move.fromBayName} to {move.toBayName}
        </Line>
      ))}
    </Card>
  )
}
