import { Group } from '@mantine/core'
import { Link } from '@tanstack/react-router'
import { useEffect, useRef, useState } from 'react'
import type { CloseProductView } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import { RowButton } from '../../parts/RowButton.tsx'
import { AdviceNumbers } from '../../parts/shelf/AdviceNumbers.tsx'
import { AdviceWords } from '../../parts/shelf/AdviceWords.tsx'
import { BottleBar } from '../../parts/shelf/BottleBar.tsx'
import { CountForm } from '../../parts/shelf/CountForm.tsx'
import { ProjectionChart } from '../../parts/shelf/ProjectionChart.tsx'
import styles from './CloseOfDay.module.css'

/** What a scan or a button asked to count. */
export interface Counting {
  productId: string
  lotId: string | null
}

interface Props {
  product: CloseProductView
  currency: string
  counting: Counting | null
  count(counting: Counting | null): void
  tell(words: string[]): void
}

/** One product: what stands there, what it will be, what to do about it; its numbers and a count on demand. */
export function ShelfRow({ product, currency, counting, count, tell }: Props) {
  const row = useRef<HTMLDivElement>(null)
  const button = useRef<HTMLButtonElement>(null)
  const [numbers, setNumbers] = useState(false)
  const { id, name, unit, onHand, lots, projection, advice } = product
  const open = counting?.productId === id
  useEffect(() => {
    if (open) row.current?.scrollIntoView({ block: 'nearest' })
  }, [open])
  const close = () => {
    count(null)
    button.current?.focus()
  }
  return (
    <div ref={row} className={styles.product} data-rank={product.rank}>
      <div>
        <Link to="/shelf/$section/$id" params={{ section: 'product', id }} className={styles.name}>
          {name}
        </Link>
        <small>{standsIn(amountText(onHand, unit), lots.length, Boolean(product.openLot))}</small>
        <Group gap={4} mt={2}>
          <RowButton
            ref={button}
            does={say('Count')}
            of={name}
            variant="subtle"
            size="compact-xs"
            aria-expanded={open}
            disabled={lots.length === 0}
            onClick={() => count(open ? null : { productId: id, lotId: null })}
          />
          {advice.facts && (
            <RowButton
              does={say('Numbers')}
              of={say('of {name}||the numbers', { name })}
              variant="subtle"
              size="compact-xs"
              aria-expanded={numbers}
              onClick={() => setNumbers(!numbers)}
            />
          )}
        </Group>
      </div>
      <BottleBar name={name} unit={unit} lots={lots} />
      <div className={styles.chart}>
        <ProjectionChart
          name={name}
          unit={unit}
          onHand={product.usable}
          projection={projection}
          leadDays={advice.facts?.coverDays ?? null}
        />
      </div>
      <div>
        <AdviceWords advice={advice} />
        {projection.runsDry && <small className={styles.dry}>{projection.runsDry.words}</small>}
      </div>
      {open && (
        <div className={styles.whole}>
          <CountForm
            key={counting.lotId}
            product={product}
            lots={lots}
            lotId={counting.lotId}
            onClose={close}
            onDone={({ words }) => {
              tell(words)
              close()
            }}
          />
        </div>
      )}
      {numbers && advice.facts && (
        <div className={styles.whole}>
          <AdviceNumbers facts={advice.facts} unit={unit} currency={currency} />
        </div>
      )}
    </div>
  )
}

/** How much stands there, in how many bottles, and whether one of them is open. */
function standsIn(amount: string, lots: number, open: boolean): string {
  if (lots === 0) return amount
  return open
    ? say('{amount} in {lots} {lots, plural, one {bottle} other {bottles}}, one open', { amount, lots })
    : say('{amount} in {lots} {lots, plural, one {bottle} other {bottles}}', { amount, lots })
}
