import { Link } from '@tanstack/react-router'
import type { ShelfWarning } from '../../../main/api/views.ts'
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

/** What else wants a look, each with where to do something about it. What runs dry stands with the shelf above. */
export function Warnings({ warnings: all }: { warnings: ShelfWarning[] }) {
  const sheets = all.filter(each => each.kind === 'sheet')
  const others = all.filter(each => each.kind !== 'sheet' && each.kind !== 'runsDry')
  const warnings = [...others, ...(sheets.length > 2 ? [joined(sheets)] : sheets)]
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

/** Missing data sheets are one errand, not one line each. */
function joined(sheets: ShelfWarning[]): ShelfWarning {
  const productIds = sheets.flatMap(each => each.productIds)
  const words = `${sheets.length} products on the shelf have no current data sheet here.`
  return { kind: 'sheet', productIds, orderId: null, words }
}

function Where({ warning }: { warning: ShelfWarning }) {
  if (warning.orderId !== null)
    return (
      <Link to="/shelf/$section/$id" params={{ section: 'orders', id: warning.orderId }}>
        Open the order
      </Link>
    )
  if (warning.productIds.length !== 1 || warning.kind === 'storage' || warning.kind === 'flammable')
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
