import { Link } from '@tanstack/react-router'
import type { ShelfWarning } from '../../../main/services/shelfViews.ts'
import styles from './CloseOfDay.module.css'

const kindWords: Record<ShelfWarning['kind'], string> = {
  expired: '✕ past its date',
  expiresSoon: 'date near',
  late: '⚑ late',
  runsDry: '⚑ runs dry',
  storage: '⚠ storage',
  flammable: '⚠ flammable',
  sheet: 'data sheet',
}

/** What else wants a look, each with where to do something about it. */
export function Warnings({ warnings }: { warnings: ShelfWarning[] }) {
  if (warnings.length === 0) return null
  return (
    <section className={styles.part} aria-labelledby="close-warnings">
      <h2 id="close-warnings">Also</h2>
      <ul className={`${styles.card} ${styles.warnings}`}>
        {warnings.map(warning => (
          <li key={`${warning.kind} ${warning.words}`}>
            <b>{kindWords[warning.kind]}</b>
            <span>
              {warning.words} <Where warning={warning} />
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

function Where({ warning }: { warning: ShelfWarning }) {
  if (warning.orderId !== null)
    return (
      <Link to="/shelf/$section/$id" params={{ section: 'orders', id: warning.orderId }}>
        Open the order
      </Link>
    )
  if (warning.kind === 'storage' || warning.kind === 'flammable')
    return (
      <Link to="/shelf/$section" params={{ section: 'safety' }}>
        Chemical safety
      </Link>
    )
  const [first] = warning.productIds
  return first ? (
    <Link to="/shelf/$section/$id" params={{ section: 'product', id: first }}>
      Open the product
    </Link>
  ) : null
}
