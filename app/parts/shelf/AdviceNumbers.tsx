import type { AdviceFacts, ShelfUnit } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import type { ReasonCode } from '../../../main/domain/shelf/index.ts'
import { money } from '../money.ts'
import { CoverCurve } from './CoverCurve.tsx'
import { SizeBars } from './SizeBars.tsx'
import styles from './shelf.module.css'

/** What each sentence is about. */
const names: Record<ReasonCode, string> = {
  position: say('What is left'),
  cover: say('Must last'),
  demand: say('Unforeseen use'),
  'safety-stock': say('Safety stock'),
  textbook: say('By the textbook'),
  'order-point': say('Order point'),
  lasts: say('Lasts'),
  size: say('Size of order'),
  'price-break': say('Price break'),
  'expiry-cap': say('Before its date'),
  'wait-by-dates': say('Before its date'),
  'beyond-expiry': say('Past its date'),
  join: say('Joins an order'),
  'no-history': say('History'),
}

interface Props {
  facts: AdviceFacts
  unit: ShelfUnit
  currency: string
}

/** Every number behind an advice with its sentence, and the two pictures it rests on. */
export function AdviceNumbers({ facts, unit, currency }: Props) {
  return (
    <div className={styles.numbers}>
      <dl className={styles.sentences}>
        {facts.sentences.map(({ name, words }) => (
          <div key={name}>
            <dt>{names[name as ReasonCode] ?? name}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
      {facts.within.length > 1 && <CoverCurve facts={facts} unit={unit} />}
      {facts.sizes.length > 0 && (
        <SizeBars sizes={facts.sizes} show={minor => money(Math.round(minor), currency)} />
      )}
    </div>
  )
}
