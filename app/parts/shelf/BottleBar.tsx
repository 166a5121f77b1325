import type { CSSProperties } from 'react'
import type { LotView, ShelfUnit } from '../../../main/api/views.ts'
import { say } from '../../../main/domain/language/index.ts'
import { amountText } from '../../../main/domain/shelf/index.ts'
import { monthWords } from './amounts.ts'
import styles from './shelf.module.css'

interface Props {
  name: string
  unit: ShelfUnit
  lots: readonly LotView[]
}

/** The bottles of a product side by side, each as long as what is in it; the one to take next first. */
export function BottleBar({ name, unit, lots }: Props) {
  const full = lots.filter(lot => lot.onHand > 0)
  const total = full.reduce((sum, lot) => sum + lot.onHand, 0)
  if (total === 0) return <p className={styles.none}>{say('none on the shelf')}</p>
  const words = full.map(lot => lot.words).join('; ')
  return (
    <ul className={styles.bottles} aria-label={say('Bottles of {name}: {words}', { name, words })}>
      {full.map(lot => (
        <li key={lot.id} style={{ flexGrow: lot.onHand / total }} title={lot.words}>
          <span className={styles.bottle} data-state={lot.state} />
          <small aria-hidden="true" style={{ '--letters': captionOf(lot, unit).length } as CSSProperties}>
            {captionOf(lot, unit)}
          </small>
        </li>
      ))}
    </ul>
  )
}

function captionOf(lot: LotView, unit: ShelfUnit): string {
  if (lot.state === 'expired') return say('✕ past its date')
  if (lot.state === 'open') return say('open, {onHand}', { onHand: amountText(lot.onHand, unit) })
  return lot.lastOn ? monthWords(lot.lastOn) : amountText(lot.onHand, unit)
}
