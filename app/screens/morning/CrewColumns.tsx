import type { MorningView } from '../../../main/api/views.ts'
import { Card } from '../../parts/Card.tsx'
import { clockWords } from '../../parts/time.ts'
import { Line } from './Line.tsx'
import styles from './Morning.module.css'

const stateWords = { planned: '', running: ' · running', done: ' · done ✓' }

/** Who does what, in order. */
export function CrewColumns({ sheet }: { sheet: MorningView }) {
  return (
    <div className={styles.crew}>
      {sheet.crew.map(person => (
        <Card
          className={styles.card}
          key={person.id}
          title={person.name}
          about={
            person.present.length === 0
              ? 'away today'
              : person.present
                  .map(span => `${clockWords(span.from, sheet.zone)}–${clockWords(span.to, sheet.zone)}`)
                  .join(', ')
          }
          empty={person.steps.length === 0 ? 'No step today.' : null}
        >
          {person.steps.map(step => (
            <Line
              key={`${step.jobId}-${step.position}`}
              time={clockWords(step.fromAt, sheet.zone)}
              car={step}
            >
              {step.helps && 'Helps: '}
              {step.name} in {step.bayName}, until {clockWords(step.toAt, sheet.zone)}
              {step.productName && ` · ${step.productName}`}
              {step.with.length > 0 && ` · with ${step.with.join(', ')}`}
              {stateWords[step.state]}
            </Line>
          ))}
        </Card>
      ))}
    </div>
  )
}
