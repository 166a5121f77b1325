import type { AdviceFacts, ShelfProductView, ShelfUnit } from '../../../../main/api/views.ts'
import { say } from '../../../../main/domain/language/index.ts'
import { useShop } from '../../../data/shop.ts'
import { Card } from '../../../parts/Card.tsx'
import pieces from '../../../parts/pieces.module.css'
import { AdviceNumbers } from '../../../parts/shelf/AdviceNumbers.tsx'
import { ProjectionChart } from '../../../parts/shelf/ProjectionChart.tsx'
import styles from '../Shelf.module.css'

/** What will stand there day by day, with deliveries and the day to order; what to do about it in one sentence. */
export function Outlook({ product, unit }: { product: ShelfProductView; unit: ShelfUnit }) {
  const { advice, projection } = product
  if (!projection || !advice) return null
  return (
    <Card aria-label={say('Outlook')}>
      <p className={styles.advice} data-kind={advice.kind}>
        <b>{advice.words[0]}</b>{' '}
        {projection.runsDry && <span className={pieces.late}>{projection.runsDry.words}</span>}
      </p>
      <ProjectionChart
        name={product.name}
        unit={unit}
        onHand={product.usable}
        projection={projection}
        leadDays={advice.facts?.coverDays ?? null}
        orderDays={orderDays(advice.facts)}
        height={16}
      />
      {projection.expiries.map(expiry => (
        <p key={expiry.date} className={pieces.soft}>
          {expiry.words}
        </p>
      ))}
      <Behind advice={advice} unit={unit} />
    </Card>
  )
}

/** Every reason and number behind the sentence. */
function Behind({ advice, unit }: { advice: NonNullable<ShelfProductView['advice']>; unit: ShelfUnit }) {
  const { currency } = useShop()
  const rest = advice.words.slice(1)
  if (!advice.facts && rest.length === 0) return null
  return (
    <details className={styles.behind}>
      <summary>{say('Why')}</summary>
      {advice.facts ? (
        <AdviceNumbers facts={advice.facts} unit={unit} currency={currency} />
      ) : (
        rest.map(words => <p key={words}>{words}</p>)
      )}
    </details>
  )
}

/** Open days until what is left after the bookings no longer lasts until a delivery; null where nothing says so. */
function orderDays(facts: AdviceFacts | null): number | null {
  if (!facts || facts.usePerDay <= 0) return null
  return Math.max(0, Math.ceil((facts.position - facts.orderPoint) / facts.usePerDay))
}
