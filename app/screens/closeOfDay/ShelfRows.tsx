import { useState } from 'react'
import type { CloseOfDayView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { Card } from '../../parts/Card.tsx'
import pieces from '../../parts/pieces.module.css'
import { RowButton } from '../../parts/RowButton.tsx'
import { Said } from '../../parts/Said.tsx'
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
    <Card
      className={styles.part}
      title={say('The shelf')}
      about={
        worries.length === 0
          ? say('nothing runs short')
          : say('{worries} of {products} products need a look', {
              worries: worries.length,
              products: view.products.length,
            })
      }
    >
      <Said words={said} />
      {view.products.length === 0 ? (
        <p className={pieces.empty}>
          {say(
            'No product is counted yet. Open a product on the Shelf, say how it is counted, and receive what stands there: from then on the booked jobs tell when it runs dry.',
          )}
        </p>
      ) : (
        <div className={pieces.divided}>
          {shown.map(product => (
            <ShelfRow
              key={product.id}
              product={product}
              currency={view.currency}
              counting={counting}
              count={count}
              tell={setSaid}
            />
          ))}
          {calm > 0 && (
            <div>
              <RowButton
                does={all ? say('Only those that need a look') : say('{calm} more, nothing to do', { calm })}
                variant="subtle"
                m={6}
                aria-expanded={all}
                onClick={() => setAll(!all)}
              />
            </div>
          )}
        </div>
      )}
    </Card>
  )
}
