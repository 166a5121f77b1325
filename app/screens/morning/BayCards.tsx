import type { MorningView } from '../../../main/api/views.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { clockWords } from '../../parts/time.ts'
import { Line } from './Line.tsx'
import styles from './Morning.module.css'

/** What stands in each bay through the day. */
export function BayCards({ sheet }: { sheet: MorningView }) {
  const clock = (at: number) => (at <= sheet.fromAt ? 'from night' : clockWords(at, sheet.zone))
  return (
    <div className={styles.bays}>
      {sheet.bays.map(bay => (
        <Card
          className={styles.card}
          key={bay.id}
          title={bay.name}
          about={bay.capabilities.join(', ')}
          empty={bay.cars.length + bay.closures.length === 0 ? 'free all day' : null}
        >
          {bay.closures.map(closure => (
            <p key={closure.fromAt} className={pieces.soft}>
              closed {clock(closure.fromAt)} to {clockWords(Math.min(closure.toAt, sheet.toAt), sheet.zone)}
              {closure.reason && `: ${closure.reason}`}
            </p>
          ))}
          {bay.cars.map(car => (
            <Line key={`${car.jobId}-${car.fromAt}`} time={clock(car.fromAt)} car={car}>
              {car.vehicleWords}
              {car.lines.map(line => (
                <span key={`${line.at}-${line.words}`} className={styles.step}>
                  <i>{line.at < sheet.fromAt ? '' : clockWords(line.at, sheet.zone)}</i> {line.words}
                </span>
              ))}
            </Line>
          ))}
        </Card>
      ))}
    </div>
  )
}
