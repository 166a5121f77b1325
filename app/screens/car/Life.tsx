import { Alert } from '@mantine/core'
import type { CarView, LifeView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { fullDateWords } from '../../parts/time.ts'
import { LifeChart } from './LifeChart.tsx'

const takenFrom: Readonly<Record<LifeView['exposureClass'], string>> = {
  gentle: say('Taken from cars of gentle exposure; what is seen on the car itself decides.'),
  ordinary: say('Taken from cars of ordinary exposure; what is seen on the car itself decides.'),
  harsh: say('Taken from cars of harsh exposure; what is seen on the car itself decides.'),
}

/** How long what is on the car lasts, by everything seen so far. */
export function Life({ car }: { car: CarView }) {
  const { life, trouble } = car
  if (!life && !trouble && car.singleLooks === 0) return null
  return (
    <Card
      title={say('How long it lasts')}
      about={
        life &&
        say('{productName}, laid {laidOn}', {
          productName: life.productName,
          laidOn: fullDateWords(life.laidOn),
        })
      }
    >
      <div className={pieces.column}>
        {trouble && (
          <Alert color="orange" variant="outline" title={say('The inspections contradict each other')}>
            {trouble}
          </Alert>
        )}
        {life && (
          <>
            <LifeChart life={life} plate={car.plate} />
            <details>
              <summary>{say('Why')}</summary>
              {life.sentences.map(words => (
                <p key={words}>{words}</p>
              ))}
              <p className={pieces.soft}>{takenFrom[life.exposureClass]}</p>
            </details>
          </>
        )}
        {car.singleLooks > 0 && (
          <p className={pieces.soft}>
            {say(
              '{singleLooks, plural, one {One look} other {{singleLooks} looks}} at it without a second after the wash: what seemed gone may only have been clogged, so no life is learned from that.',
              { singleLooks: car.singleLooks },
            )}
          </p>
        )}
      </div>
    </Card>
  )
}
