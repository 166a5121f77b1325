import type { ProductValueView } from '../../../../main/api/views.ts'
import { money } from '../../../parts/money.ts'
import { amountText } from '../../../parts/shelf/amounts.ts'
import styles from '../Shelf.module.css'

/** What a product on the shelf is worth, two ways, and what 100 ml cost in each size. */
export function ValueCard({ value, currency }: { value: ProductValueView | null; currency: string }) {
  if (!value)
    return <p className={styles.empty}>Its worth is known once something was received at a price.</p>
  const { unit } = value
  const hundred = unit === 'piece' ? '100 pieces' : `100 ${unit}`
  return (
    <div className={styles.card}>
      <h2>Worth of {amountText(value.onHand, unit)}</h2>
      <dl>
        <dt>By weighted average</dt>
        <dd>{money(value.averageMinor, currency)}</dd>
        <dt>First in, first out</dt>
        <dd>{money(value.fifoMinor, currency)}</dd>
        {value.per100Minor !== null && (
          <>
            <dt>{hundred} on average</dt>
            <dd>{money(Math.round(value.per100Minor), currency)}</dd>
          </>
        )}
      </dl>
      {value.sizes.length > 0 && (
        <>
          <h3>Price of {hundred} by size, cheapest first</h3>
          <ul className={styles.plain}>
            {value.sizes.map(size => (
              <li key={`${size.sizeLabel} ${size.supplierName} ${size.words}`}>{size.words}</li>
            ))}
          </ul>
        </>
      )}
    </div>
  )
}
