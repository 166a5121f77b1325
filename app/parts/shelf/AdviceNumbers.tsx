import type { AdviceFacts, ShelfUnit } from '../../../main/api/views.ts'
import type { ReasonCode } from '../../../main/domain/shelf/index.ts'
import { money } from '../money.ts'
import { CoverCurve } from './CoverCurve.tsx'
import { SizeBars } from './SizeBars.tsx'
import styles from './shelf.module.css'

/** What each sentence is about. */
const names: Record<ReasonCode, string> = {
  position: 'What is left',
  cover: 'Must last',
  demand: 'Unforeseen use',
  'safety-stock': 'Safety stock',
  textbook: 'By the textbook',
  'order-point': 'Order point',
  lasts: 'Lasts',
  size: 'Size of order',
  'price-break': 'Price break',
  'expiry-cap': 'Before its date',
  'beyond-expiry': 'Past its date',
  join: 'Joins an order',
  'no-history': 'History',
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
