import { Button } from '@mantine/core'
import type { ProposedOrderView } from '../../../main/api/views.ts'
import { money } from '../../parts/money.ts'
import { amountText } from '../../parts/shelf/amounts.ts'
import { dateWords } from '../../parts/time.ts'
import styles from '../shelf/orders/Orders.module.css'

interface Props {
  order: ProposedOrderView
  currency: string
  busy: boolean
  write(): void
}

/** What would be ordered from one supplier and why; a press makes it a draft to look through and send. */
export function ProposedOrder({ order, currency, busy, write }: Props) {
  const action = order.draftId ? 'Add to its draft' : 'Write this order'
  return (
    <div className={styles.order}>
      <header>
        <h3>
          {order.supplierName} <small>proposed</small>
        </h3>
        <span>
          {money(order.totalMinor, currency)}
          <small>
            {order.carriageMinor > 0 && ` with ${money(order.carriageMinor, currency)} carriage`} · sent now,
            here {dateWords(order.expectedOn)}, nine in ten by {dateWords(order.lateFromOn)}
          </small>
        </span>
        <Button loading={busy} aria-label={`${action}: ${order.supplierName}`} onClick={write}>
          {action}
        </Button>
      </header>
      <ul>
        {order.lines.map(line => (
          <li key={line.offerId}>
            <b>
              {line.packs} × {line.containersPerPack > 1 && `${line.containersPerPack} × `}
              {line.sizeLabel}
            </b>{' '}
            {line.productName} <small>{amountText(line.packs * line.packAmount, line.unit)}</small>{' '}
            <span className={styles.end}>{money(line.lineMinor, currency)}</span>
            <small className={styles.why}>{line.why[0]}</small>
          </li>
        ))}
      </ul>
      {order.notes.map(note => (
        <p key={note}>{note}</p>
      ))}
    </div>
  )
}
