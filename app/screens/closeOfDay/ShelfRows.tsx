import { Button } from '@mantine/core'
import { useState } from 'react'
import type { CloseOfDayView } from '../../../main/api/views.ts'
import styles from './CloseOfDay.module.css'
import { type Counting, ShelfRow } from './ShelfRow.tsx'

interface Props {
  view: CloseOfDayView
  counting: Counting | null
  count(counting: Counting | null): void
}

/** The shelf: products with a worry at once, the others on demand or when one of them is scanned. */
export function ShelfRows({ view, counting, count }: Props) {
  const [all, setAll] = useState(false)
  const [said, setSaid] = useState<string[]>([])
  const worries = view.products.filter(product => product.rank < 2)
  const shown = all
    ? view.products
    : view.products.filter(product => product.rank < 2 || product.id === counting?.productId)
  const calm = view.products.length - worries.length
  return (
    <section className={styles.part} aria-labelledby="close-shelf">
      <h2 id="close-shelf">
        The shelf{' '}
        <span>
          {worries.length === 0
            ? 'nothing runs short'
            : `${worries.length} of ${view.products.length} products want a look`}
        </span>
      </h2>
      <div role="status" className={styles.said}>
        {said.map(words => (
          <p key={words}>✓ {words}</p>
        ))}
      </div>
      {view.products.length === 0 ? (
        <p className={styles.empty}>
          No product is counted yet. Open a product on the Shelf, say how it is counted, and receive what
          stands there: from then on the booked jobs tell when it runs dry.
        </p>
      ) : (
        <div className={styles.card}>
          {shown.map(product => (
            <ShelfRow
              key={product.id}
              product={product}
              currency={view.currency}
              counting={counting}
              count={count}
              say={setSaid}
            />
          ))}
          {calm > 0 && (
            <div className={styles.more}>
              <Button variant="subtle" size="compact-sm" aria-expanded={all} onClick={() => setAll(!all)}>
                {all ? 'Only those with a worry' : `${calm} more with nothing to do`}
              </Button>
            </div>
          )}
        </div>
      )}
    </section>
  )
}
